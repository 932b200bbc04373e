package wirepen

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"github.com/lugwright/lugwright/render/ink"
	"github.com/lugwright/lugwright/wiring/colour"
)

func palettes() map[string]Palette {
	return map[string]Palette{"screen": colour.Code.Screen, "print": colour.Code.Print}
}

func codes() []colour.Code {
	var all []colour.Code
	for _, c := range colour.Codes() {
		all = append(all, c)
		if c.HasShades() {
			all = append(all, "L"+c, "D"+c)
		}
	}
	return all
}

// greyAt returns the grey at a distance along the line and across it.
func greyAt(r *ink.Recorder, along, across float64) uint8 {
	grey := uint8(255)
	for _, m := range r.Marks {
		if math.Abs(across) >= m.Style.Width/2 || !inMark(m.Style, along) {
			continue
		}
		grey = m.Style.Stroke.Grey()
	}
	return grey
}

func inMark(s ink.Style, along float64) bool {
	if len(s.Dash) == 0 {
		return true
	}
	period := s.Dash[0] + s.Dash[1]
	return math.Mod(along+s.Offset, period) < s.Dash[0]
}

func drawn(c colour.Colour, area float64, show Palette) *ink.Recorder {
	page := ink.NewRecorder(100, 100)
	New(c, area, show).Draw(page, ink.At(10, 50), ink.At(90, 50))
	return page
}

// On a grey printer every wire must stand out from the paper, and every tracer from its
// base, whatever the colours.
func TestEveryColourSurvivesGrey(t *testing.T) {
	for palette, show := range palettes() {
		for _, base := range codes() {
			for _, tracer := range append(codes(), "") {
				if tracer == base {
					continue
				}
				page := drawn(colour.Colour{Base: base, Tracer: tracer}, 1, show)
				darkest, lightest := uint8(255), uint8(0)
				for along := 0.05; along < 8; along += 0.1 {
					middle := greyAt(page, along, 0)
					darkest, lightest = min(darkest, middle), max(lightest, middle)
					seen := false // something dark across the line here, or just beside it
					for across := 0.0; across < 1; across += 0.05 {
						seen = seen || greyAt(page, along, across) < 200
					}
					if !seen {
						t.Fatalf("%s %s/%s: nothing to be seen at %.2f mm", palette, base, tracer, along)
					}
				}
				if tracer != "" && int(lightest)-int(darkest) < leastGrey {
					t.Errorf("%s %s/%s: greys from %d to %d: the tracer is lost", palette, base, tracer, darkest, lightest)
				}
			}
		}
	}
}

func TestTracerIsTheSecondColour(t *testing.T) {
	for _, c := range []struct {
		c      colour.Colour
		second colour.Code
	}{{colour.Colour{Base: "BK", Tracer: "YE"}, "YE"}, {colour.Colour{Base: "RD", Tracer: "BU"}, "BU"}, {colour.Colour{Base: "WH", Tracer: "RD"}, "RD"}} {
		page := drawn(c.c, 1, colour.Code.Screen)
		last := page.Marks[len(page.Marks)-1]
		if *last.Style.Stroke != inkOf(c.second.Screen()) || len(last.Style.Dash) == 0 {
			t.Errorf("%v: the last layer is %+v", c.c, last.Style)
		}
	}
	earth := drawn(colour.Colour{Base: colour.ProtectiveEarth}, 1, colour.Code.Print)
	stripe, _ := colour.ProtectiveEarth.Stripe()
	if last := earth.Marks[len(earth.Marks)-1]; *last.Style.Stroke != inkOf(stripe) {
		t.Error("protective earth has no yellow")
	}
	if n := len(drawn(colour.Colour{}, 1, colour.Code.Print).Marks); n != 1 {
		t.Errorf("a wire of no stated colour has %d layers", n)
	}
}

func TestOutlineWhereThePaperSwallowsTheLine(t *testing.T) {
	for code, want := range map[colour.Code]bool{"WH": true, "YE": true, "PK": true, "BK": false, "RD": false, "BU": false, "GNYE": true} {
		page := drawn(colour.Colour{Base: code}, 1, colour.Code.Screen)
		if got := *page.Marks[0].Style.Stroke == edge(); got != want {
			t.Errorf("%s: edged %v, want %v", code, got, want)
		}
	}
}

// The pens are those of ISO 128, and a thicker conductor is never a thinner line.
func TestWidthGrowsInStandardSteps(t *testing.T) {
	iso := map[float64]bool{0.5: true, 0.7: true, 1.0: true, 1.4: true}
	rapid.Check(t, func(t *rapid.T) {
		a, b := rapid.Float64Range(0, 200).Draw(t, "a"), rapid.Float64Range(0, 200).Draw(t, "b")
		if !iso[Width(a)] {
			t.Fatalf("%v mm2 is %v mm wide", a, Width(a))
		}
		if a <= b && Width(a) > Width(b) {
			t.Fatalf("%v mm2 is wider than %v mm2", a, b)
		}
	})
	// areas of 18, 16, 14, 10, 8, 6, 4, 2 and 4/0 AWG by ASTM B258
	for area, want := range map[float64]float64{0: 0.5, 0.823: 0.5, 1.31: 0.5, 2.08: 0.7, 5.26: 0.7, 8.37: 1, 13.3: 1, 21.2: 1.4, 33.6: 1.4, 107: 1.4} {
		if got := Width(area); got != want {
			t.Errorf("%v mm2 is %v mm wide, want %v", area, got, want)
		}
	}
}

func TestDrawNeedsTwoPoints(t *testing.T) {
	page := ink.NewRecorder(100, 100)
	New(colour.Colour{Base: "RD"}, 1, colour.Code.Print).Draw(page, ink.At(1, 1))
	if len(page.Marks) > 0 {
		t.Error("a line of one point was drawn")
	}
}
