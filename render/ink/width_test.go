package ink

import (
	"math"
	"testing"

	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
	"pgregory.net/rapid"
)

// The capital height of the three faces is 1480 of 2048 units in their OS/2 tables; the
// letter H has exactly that height in each file, which this reads from its outline.
func TestCapitalHeightIsThatOfTheLetterH(t *testing.T) {
	for _, f := range Faces() {
		parsed, err := sfnt.Parse(f.TrueType())
		if err != nil {
			t.Fatal(err)
		}
		var buf sfnt.Buffer
		g, err := parsed.GlyphIndex(&buf, 'H')
		if err != nil {
			t.Fatal(err)
		}
		size := Em(f, 2.5) // millimetres
		bounds, _, err := parsed.GlyphBounds(&buf, g, fixed.Int26_6(math.Round(size*64*1000)), font.HintingNone)
		if err != nil {
			t.Fatal(err)
		}
		if got := -float64(bounds.Min.Y) / 64 / 1000; math.Abs(got-2.5) > 0.001 {
			t.Errorf("%v: H is %.4f mm high, want 2.5", f, got)
		}
	}
}

// Go Mono sets every character 1229 of 2048 units wide (its hhea and hmtx tables).
func TestWidthIsTheSumOfAdvances(t *testing.T) {
	const capital = 1480.0 / 2048 // one em is one millimetre
	for _, c := range []struct {
		s    string
		face Face
		want float64
	}{
		{"", Regular, 0},
		{"ab", Regular, Width("a", Regular, capital) + Width("b", Regular, capital)},
		{"AV", Regular, Width("A", Regular, capital) + Width("V", Regular, capital)}, // a pair that kerning would close
		{"iiii", Mono, 4 * 1229.0 / 2048},
		{"WWWW", Mono, 4 * 1229.0 / 2048},
		{"Ω≤µ", Mono, 3 * 1229.0 / 2048},
	} {
		if got := Width(c.s, c.face, capital); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("Width(%q, %v) = %v, want %v", c.s, c.face, got, c.want)
		}
	}
}

func TestWidthGrowsWithTextAndHeight(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := rapid.SampledFrom(Faces()).Draw(t, "face")
		a, b := rapid.String().Draw(t, "a"), rapid.String().Draw(t, "b")
		whole, parts := Width(a+b, f, 2.5), Width(a, f, 2.5)+Width(b, f, 2.5)
		if math.Abs(whole-parts) > 1e-9*(1+whole) {
			t.Fatalf("Width(%q+%q) = %v, parts give %v", a, b, whole, parts)
		}
		if double := Width(a, f, 5); math.Abs(double-2*Width(a, f, 2.5)) > 1e-9*(1+double) {
			t.Fatalf("%q is not twice as wide at twice the height", a)
		}
	})
}

func TestCovers(t *testing.T) {
	for _, f := range Faces() {
		for _, r := range "AZaz09Ωµ°²≥≤→±–−…éß�" {
			if !Covers(f, r) {
				t.Errorf("%v lacks %q", f, r)
			}
		}
		for _, r := range []rune{'✓', '☐', '⚠', '⏚', '\n', 0, -1, 0x10ffff, 0x1f50b} {
			if Covers(f, r) {
				t.Errorf("%v claims %q", f, r)
			}
		}
	}
}

func TestTextBox(t *testing.T) {
	long, up, down := Width("W37", Bold, 2.5), Ascent(Bold, 2.5), Descent(Bold, 2.5)
	base := Text{At: Point{100, 50}, String: "W37", Capital: 2.5, Face: Bold}
	for _, c := range []struct {
		anchor Anchor
		turned bool
		want   Rect
	}{
		{Start, false, Rect{Point{100, 50 - up}, Point{100 + long, 50 + down}}},
		{Middle, false, Rect{Point{100 - long/2, 50 - up}, Point{100 + long/2, 50 + down}}},
		{End, false, Rect{Point{100 - long, 50 - up}, Point{100, 50 + down}}},
		{Start, true, Rect{Point{100 - up, 50 - long}, Point{100 + down, 50}}},
		{Middle, true, Rect{Point{100 - up, 50 - long/2}, Point{100 + down, 50 + long/2}}},
		{End, true, Rect{Point{100 - up, 50}, Point{100 + down, 50 + long}}},
	} {
		text := base
		text.Anchor, text.Turned = c.anchor, c.turned
		got := text.Box()
		for i, d := range []float64{got.Min.X - c.want.Min.X, got.Min.Y - c.want.Min.Y, got.Max.X - c.want.Max.X, got.Max.Y - c.want.Max.Y} {
			if math.Abs(d) > 1e-9 {
				t.Errorf("anchor %d turned %v: side %d is off by %v", c.anchor, c.turned, i, d)
			}
		}
	}
}

func TestUnknownFaceIsRegular(t *testing.T) {
	if Width("abc", Face(9), 2.5) != Width("abc", Regular, 2.5) {
		t.Error("an unknown face is not measured as Regular")
	}
	if got := Face(9).String(); got != "Face(9)" {
		t.Errorf("unknown face is called %q", got)
	}
}

func BenchmarkWidth(b *testing.B) {
	for b.Loop() {
		Width("W37 GNYE 16 AWG", Regular, 2.5)
	}
}
