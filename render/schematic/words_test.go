package schematic

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"github.com/lugwright/lugwright/render/ink"
	"github.com/lugwright/lugwright/render/symbol"
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/colour"
	"github.com/lugwright/lugwright/wiring/quantity"
)

func pieceOf(base, tracer colour.Code, awg int) wiring.Piece {
	p := wiring.Piece{Colour: colour.Colour{Base: base, Tracer: tracer}}
	if awg > 0 {
		p.Size = quantity.Gauge(awg)
	}
	return p
}

// A label always says number, colour and size, and both of each where they change; what is
// not known is a box to write in.
func TestWireWords(t *testing.T) {
	for _, c := range []struct {
		name   string
		pieces []wiring.Piece
		want   string // the first way to write it
	}{
		{"one piece", []wiring.Piece{pieceOf("RD", "", 2)}, "W37 RD 2 AWG"},
		{"tracer", []wiring.Piece{pieceOf("YE", "RD", 18)}, "W37 YE/RD 18 AWG"},
		{"extended", []wiring.Piece{pieceOf("GN", "", 18), pieceOf("GN", "WH", 18)}, "W37 GN 18 AWG + GN/WH 18 AWG"},
		{"same again", []wiring.Piece{pieceOf("RD", "", 10), pieceOf("RD", "", 10)}, "W37 RD 10 AWG"},
		{"other size", []wiring.Piece{pieceOf("RD", "", 10), pieceOf("RD", "", 12)}, "W37 RD 10 AWG + RD 12 AWG"},
		{"no colour", []wiring.Piece{pieceOf("", "", 16)}, "W37 ▯ 16 AWG"},
		{"nothing known", []wiring.Piece{{}}, "W37 ▯ ▯"},
		{"no piece", nil, "W37"},
	} {
		w := &wiring.Wire{Number: "W37", Pieces: c.pieces}
		all := wireWords(w)
		if got := all[0].Lines[0]; got != c.want || len(all[0].Lines) != 1 {
			t.Errorf("%s: %q, want %q", c.name, all[0].Lines, c.want)
		}
		for _, way := range all {
			for _, line := range way.Lines {
				if textWidth(line, ink.Regular) > way.Width+1e-9 {
					t.Errorf("%s: %q is wider than its block", c.name, line)
				}
			}
		}
	}
}

func TestShortWayNamesOneSizeOnce(t *testing.T) {
	w := &wiring.Wire{Number: "W37", Pieces: []wiring.Piece{pieceOf("GN", "", 18), pieceOf("GN", "WH", 18)}}
	var lines [][]string
	for _, way := range wireWords(w) {
		lines = append(lines, way.Lines)
	}
	want := [][]string{
		{"W37 GN 18 AWG + GN/WH 18 AWG"}, {"W37 GN + GN/WH 18 AWG"}, {"W37", "GN + GN/WH 18 AWG"}, {"W37 GN + GN/WH", "18 AWG"},
		{"W37 GN 18 AWG +", "GN/WH 18 AWG"}, {"W37", "GN 18 AWG +", "GN/WH 18 AWG"},
	}
	if diff := cmp.Diff(want, lines); diff != "" {
		t.Error(diff)
	}
}

func TestCordNamesItsPoles(t *testing.T) {
	ac := &wiring.Terminal{Form: wiring.Form{Type: wiring.Port}, Poles: []wiring.Pole{{Name: "L"}, {Name: "N"}, {Name: "PE"}}}
	data := &wiring.Terminal{Form: wiring.Form{Type: wiring.Port}}
	for _, c := range []struct {
		w    wiring.Wire
		want string
	}{
		{wiring.Wire{Number: "W56", From: wiring.End{Terminal: ac}, Pieces: []wiring.Piece{pieceOf("BK", "", 14)}}, "W56 cord BK 14 AWG, L N PE"},
		{wiring.Wire{Number: "W56", From: wiring.End{Terminal: ac}}, "W56 cord, L N PE"},
		{wiring.Wire{Number: "W68", From: wiring.End{Terminal: data}}, "W68 data cord"},
	} {
		if got := wireWords(&c.w)[0].Lines[0]; got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}

func TestTitleIsWhatThePartIsHere(t *testing.T) {
	for _, c := range []struct{ part, kind, want string }{
		{"lights", "Rocker switch", "lights"},
		{"", "Main solenoid, four terminals", "Main solenoid"},
		{"", "LFP pack with its own protection, display port and radio port", "LFP pack"},
		{"", "Controller for a separately excited motor", "Controller"},
		{"", "Horn", "Horn"},
	} {
		if got := (&wiring.Part{Title: c.part, Kind: &wiring.Kind{Title: c.kind}}).Short(); got != c.want {
			t.Errorf("%q of %q: %q, want %q", c.part, c.kind, got, c.want)
		}
	}
}

func TestMinusIsWrittenAsOne(t *testing.T) {
	for name, want := range map[string]string{"coil-": "coil−", "lock-a": "lock-a", "-": "−", "G1.-": "G1.−", "+": "+", "": ""} {
		if got := minus(name); got != want {
			t.Errorf("%q: %q, want %q", name, got, want)
		}
	}
}

// Copper of AWG sizes by the definition of the gauge (ASTM B258: 0.127 mm at 36, 11.684 mm
// at 4/0, 39 equal ratios between), computed by hand.
func TestCopper(t *testing.T) {
	for _, c := range []struct {
		size quantity.Size
		want float64
	}{
		{quantity.Gauge(18), 0.823}, {quantity.Gauge(10), 5.26}, {quantity.Gauge(2), 33.6}, {quantity.Gauge(-3), 107.2},
		{quantity.Size{System: quantity.MM2, Number: 35}, 35}, {quantity.Size{System: quantity.KCMIL, Number: 250}, 126.7}, {quantity.Size{}, 0},
	} {
		if got := copper(c.size); got < c.want*0.995 || got > c.want*1.005 {
			t.Errorf("%v: %.3f mm2, want %.3f", c.size, got, c.want)
		}
	}
}

// A broad cable is touched where a thin wire in the same place is not.
func TestTouchesPath(t *testing.T) {
	box := symbol.Box{X0: 0.3, X1: 1.3, Y0: 2, Y1: 3}
	down := []symbol.Cell{{X: 0, Y: 0}, {X: 0, Y: 5}}
	for thick, want := range map[float64]bool{0.1: false, 0.5: false, 0.7: true} {
		if got := touchesPath(box, down, thick); got != want {
			t.Errorf("a line of %v units: touched %v, want %v", thick, got, want)
		}
	}
}
