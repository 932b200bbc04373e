package path_test

import (
	"testing"

	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/path/pathtest"
	"github.com/lugwright/lugwright/wiring/quantity"
)

func TestProtection(t *testing.T) {
	const chain = `
G1 source + - 52.8
F1 fuse in out 200
F2 fuse in out 30
F3 fuse in out 5
W1 G1.+ F1.in
W2 F1.out F2.in
W3 F2.out F3.in
W4 F3.out E1.+
`
	for _, c := range []struct {
		name, text, at string
		limit          quantity.Ampere
		want           quantity.Ampere
		by             string
	}{
		{"before any fuse", chain, "F1.in", path.Unlimited, path.Unlimited, ""},
		{"the smallest of three", chain, "E1.+", path.Unlimited, 5, "F3.fuse1"},
		{"between", chain, "F3.in", path.Unlimited, 30, "F2.fuse1"},
		{"a source that gives less than the fuse is rated", chain, "E1.+", 3, 3, "F3.fuse1"},
		{"a small source before any fuse", chain, "F1.in", 3, 3, ""},
		{"not reached", chain, "G1.-", path.Unlimited, 0, ""},
		{"bypassed", chain + "W5 F3.in F3.out\n", "E1.+", path.Unlimited, 30, "F2.fuse1"},
		{"bypassed the long way round", chain + "W5 G1.+ X1\nW6 X1 X2\nW7 X2 X3\nW8 X3 X4\nW9 X4 E1.+\n", "E1.+", path.Unlimited, path.Unlimited, ""},
		{"a larger fuse in parallel", chain + "F4 fuse in out 20\nW5 F3.in F4.in\nW6 F4.out E1.+\n", "E1.+", path.Unlimited, 20, "F4.fuse1"},
		{"back-fed from behind", chain + "F5 fuse in out 100\nW5 G1.+ F5.in\nW6 F5.out E1.+\n", "F3.in", path.Unlimited, 30, "F2.fuse1"},
	} {
		t.Run(c.name, func(t *testing.T) {
			h := pathtest.Harness(t, c.text)
			p := path.New(h).Protection(path.Through{Sorts: path.Metal}, pathtest.Node(t, h, "G1.+"), c.limit)
			amps, fuse := p.At(pathtest.Node(t, h, c.at))
			by := ""
			if fuse != nil {
				by = fuse.Ref()
			}
			if amps != c.want || by != c.by {
				t.Errorf("%v by %q, want %v by %q", amps, by, c.want, c.by)
			}
		})
	}
}

func TestProtectionTellsThePath(t *testing.T) {
	h := pathtest.Harness(t, `
G1 source + - 52.8
F1 fuse in out 5
W1 G1.+ F1.in
W2 F1.out E1.+
W3 G1.+ X1
W4 X1 E1.+
`)
	p := path.New(h).Protection(path.Through{Sorts: path.Metal}, pathtest.Node(t, h, "G1.+"), path.Unlimited)
	got, _ := p.To(pathtest.Node(t, h, "E1.+"))
	if got.String() != "G1.+ - W3 - X1 - W4 - E1" {
		t.Errorf("path %s", got)
	}
}
