package path_test

import (
	"testing"

	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/path/pathtest"
)

func TestJoined(t *testing.T) {
	for _, c := range []struct {
		name, text, a, b string
		want             string // empty: apart
	}{
		{"changeover switch keeps its throws apart", `
S1 switch switch up,down up:c,1 down:c,2
W1 G1.+ S1.1
W2 G2.+ S1.2
`, "G1.+", "G2.+", ""},
		{"two switches join them", `
S1 switch switch up,down up:c,1 down:c,2
S2 switch switch off,on on:1,2
W1 G1.+ S1.1
W2 G2.+ S1.2
W3 S1.c S2.1
W4 S2.2 S1.2
`, "G1.+", "G2.+", "G1 - W1 - S1 - W3 - S2 - W4 - S1.2 - W2 - G2"},
		{"contacts of one coil, one open at rest and one closed", `
K1 coil 86 85
K1 contact 30 87
K1 contact 30 87a rest
W1 G1.+ K1.87
W2 G2.+ K1.87a
`, "G1.+", "G2.+", ""},
		{"contacts of two coils", `
K1 coil 86 85
K1 contact 30 87
K2 coil 86 85
K2 contact 30 87a rest
W1 G1.+ K1.87
W2 G2.+ K2.87a
W3 K1.30 K2.30
`, "G1.+", "G2.+", "G1 - W1 - K1.contact2 - W3 - K2.contact2 - W2 - G2"},
		{"a bridge does not shoot through", `
U1 driver B+ F1
U1 driver F1 B-
`, "U1.B+", "U1.B-", ""},
		{"one driver", `
U1 driver B+ F1
U1 driver F1 B-
`, "U1.B+", "U1.F1", "U1.B+ - U1.driver1 - U1.F1"},
		{"one pair closed in two positions", `
S1 switch direction neutral,forward,reverse forward:1,2 reverse:1,2
S2 switch direction neutral,forward,reverse forward:1,2
W1 S1.2 S2.1
`, "S1.1", "S2.2", "S1.1 - S1 - W1 - S2 - S2.2"},
		{"two poles of one control, never closed together", `
S1 switch direction neutral,forward,reverse forward:1,2 reverse:3,4
W1 S1.2 S1.3
`, "S1.1", "S1.4", ""},
		{"a detour round the changeover", `
S1 switch switch up,down up:c,1 down:c,2
W1 G1.+ S1.1
W2 S1.2 G2.+
W3 G1.+ X1
W4 X1 X2
W5 X2 X3
W6 X3 G2.+
`, "G1.+", "G2.+", "G1 - W3 - X1 - W4 - X2 - W5 - X3 - W6 - G2"},
	} {
		t.Run(c.name, func(t *testing.T) {
			h := pathtest.Harness(t, c.text)
			p, ok := path.New(h).Joined(path.Through{Sorts: path.Conducting}, pathtest.Node(t, h, c.a), pathtest.Node(t, h, c.b))
			if ok != (c.want != "") {
				t.Fatalf("joined: %v by %v", ok, p)
			}
			if ok && p.String() != c.want {
				t.Errorf("path\n got %s\nwant %s", p, c.want)
			}
		})
	}
}
