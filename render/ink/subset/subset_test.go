package subset

import (
	"bytes"
	"encoding/binary"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"

	"github.com/lugwright/lugwright/render/ink"
)

const sample = "W37 GNYE 16 AWG é≤Ωµ½"

func cut(t *testing.T, f ink.Face, s string) []byte {
	t.Helper()
	b, err := TrueType(f.TrueType(), []rune(s))
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// An independent reader of TrueType (x/image/font/sfnt) must find in the subset the same
// outline and width for every character as in the whole font.
func TestGlyphsAreUnchanged(t *testing.T) {
	for _, f := range ink.Faces() {
		whole, err := sfnt.Parse(f.TrueType())
		if err != nil {
			t.Fatal(err)
		}
		small, err := sfnt.Parse(cut(t, f, sample))
		if err != nil {
			t.Fatalf("%v: %v", f, err)
		}
		for _, r := range sample {
			if diff := cmp.Diff(read(t, whole, r), read(t, small, r)); diff != "" {
				t.Errorf("%v: %q differs: %s", f, r, diff)
			}
		}
		var buf sfnt.Buffer
		if g, _ := small.GlyphIndex(&buf, 'Z'); g != 0 {
			t.Errorf("%v: the subset has a glyph that was not asked for", f)
		}
	}
}

type glyph struct {
	Advance  fixed.Int26_6
	Segments []sfnt.Segment
}

func read(t *testing.T, f *sfnt.Font, r rune) glyph {
	t.Helper()
	var buf sfnt.Buffer
	ppem := fixed.I(int(f.UnitsPerEm()))
	g, err := f.GlyphIndex(&buf, r)
	if err != nil || g == 0 {
		t.Fatalf("%q: glyph %d, %v", r, g, err)
	}
	advance, err := f.GlyphAdvance(&buf, g, ppem, font.HintingNone)
	if err != nil {
		t.Fatal(err)
	}
	segments, err := f.LoadGlyph(&buf, g, ppem, nil)
	if err != nil {
		t.Fatal(err)
	}
	return glyph{advance, slices.Clone(segments)}
}

func TestSubsetIsSmallAndRepeatable(t *testing.T) {
	all := ""
	for r := rune(' '); r < 0x180; r++ {
		all += string(r)
	}
	b := cut(t, ink.Regular, sample)
	if len(b) > 10000 {
		t.Errorf("%d characters take %d bytes", len([]rune(sample)), len(b))
	}
	if latin := cut(t, ink.Regular, all); len(latin) > 60000 {
		t.Errorf("Latin takes %d bytes", len(latin))
	}
	backwards := []rune(sample + sample)
	slices.Reverse(backwards)
	if !bytes.Equal(b, cut(t, ink.Regular, string(backwards))) {
		t.Error("the order of the characters changes the file")
	}
}

// The numbers that are told must be those that an independent reader finds.
func TestNumbersOfGlyphs(t *testing.T) {
	for _, face := range ink.Faces() {
		f, err := Cut(face.TrueType(), []rune(sample+"✓"))
		if err != nil {
			t.Fatal(err)
		}
		parsed, err := sfnt.Parse(f.File)
		if err != nil {
			t.Fatal(err)
		}
		var buf sfnt.Buffer
		for _, r := range sample {
			want, err := parsed.GlyphIndex(&buf, r)
			if got, ok := f.Glyphs[r]; err != nil || !ok || got != uint16(want) {
				t.Errorf("%v: %q is glyph %d, want %d (%v)", face, r, got, want, err)
			}
		}
		if _, ok := f.Glyphs['✓']; ok {
			t.Errorf("%v has a number for a character that the face lacks", face)
		}
		box, err := parsed.Bounds(&buf, fixed.I(f.UnitsPer), font.HintingNone)
		want := [4]int16{int16(box.Min.X / 64), int16(-box.Max.Y / 64), int16(box.Max.X / 64), int16(-box.Min.Y / 64)}
		if err != nil || f.Box != want {
			t.Errorf("%v: box %v, want %v (%v)", face, f.Box, want, err)
		}
	}
}

// A font file's words add up to a constant (OpenType, head.checkSumAdjustment).
func TestChecksum(t *testing.T) {
	b := cut(t, ink.Bold, sample)
	if sum := checksum(b); sum != 0xb1b0afba {
		t.Errorf("the words add up to %#x", sum)
	}
	for i := range int(binary.BigEndian.Uint16(b[4:])) {
		r := b[12+16*i:]
		if at := binary.BigEndian.Uint32(r[8:]); at%4 != 0 {
			t.Errorf("table %q begins at %d", r[:4], at)
		}
	}
}

func TestNothingAndUnknownCharacters(t *testing.T) {
	for _, s := range []string{"", "✓", "\U0001f50b", "\u202e"} {
		f, err := sfnt.Parse(cut(t, ink.Regular, s))
		if err != nil {
			t.Fatalf("%q: %v", s, err)
		}
		if n := f.NumGlyphs(); n != 1 {
			t.Errorf("%q: %d glyphs", s, n)
		}
	}
}

// FuzzDamaged cuts fonts with flipped bytes: an error or a font, never a panic.
func FuzzDamaged(f *testing.F) {
	good, err := TrueType(ink.Regular.TrueType(), []rune(sample))
	if err != nil {
		f.Fatal(err)
	}
	f.Add(uint16(4), byte(0xff), uint16(0))
	f.Add(uint16(300), byte(1), uint16(40))
	f.Fuzz(func(t *testing.T, at uint16, flip byte, shorten uint16) {
		b := slices.Clone(good)
		b[int(at)%len(b)] ^= flip
		b = b[:len(b)-int(shorten)%len(b)]
		_, _ = TrueType(b, []rune(sample))
	})
}
