package rules_test

import (
	"context"
	"testing"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/colour"
	"github.com/lugwright/lugwright/wiring/path/pathtest"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/rule"
	"github.com/lugwright/lugwright/wiring/rules"
)

// TestColourOfEveryPiece asks for the colour of a joined piece. Files cannot leave it out;
// a harness that a program builds can.
func TestColourOfEveryPiece(t *testing.T) {
	h := pathtest.Harness(t, "X1 link s s\nX2 link s s\nW1 X1 X2\n")
	red := wiring.Piece{Kind: wiring.CutPiece, Colour: colour.Colour{Base: "RD"}, Size: quantity.Gauge(18)}
	for _, c := range []struct {
		name   string
		pieces []wiring.Piece
		want   string
	}{
		{"one piece of unknown colour is a box to fill in, no more", []wiring.Piece{{Kind: wiring.CutPiece}}, ""},
		{"both known", []wiring.Piece{red, {Kind: wiring.ExtendPiece, Colour: colour.Colour{Base: "BU"}}}, ""},
		{"second unknown", []wiring.Piece{red, {Kind: wiring.ExtendPiece, Size: quantity.Gauge(18)}}, "W1 is joined of 2 pieces, and piece 2 has no colour"},
	} {
		t.Run(c.name, func(t *testing.T) {
			h.Wires[0].Pieces = c.pieces
			result, err := rule.Run(context.Background(), h, []*rule.Rule{rules.Find("colour-clear")}, rule.Options{Known: rules.IDs()})
			if err != nil {
				t.Fatal(err)
			}
			got := ""
			for _, f := range result.Findings {
				got += f.Message
			}
			if got != c.want {
				t.Errorf("says %q, want %q", got, c.want)
			}
		})
	}
}
