package position_test

import (
	"testing"

	"github.com/lugwright/lugwright/wiring/path/pathtest"
	"github.com/lugwright/lugwright/wiring/position"
	"github.com/lugwright/lugwright/wiring/settle"
)

// threeRockers has three switches in a row.
const threeRockers = `
G1 source + - 52.8
F1 fuse in out 5
S1 switch switch off,on on:in,out
S2 switch switch off,on on:in,out
S3 switch switch off,on on:in,out
E1 load + - 500
W1 G1.+ F1.in
W2 F1.out S1.in
W3 S1.out S2.in
W4 S2.out S3.in
W5 S3.out E1.+
W6 E1.- G1.-
`

// anyOn breaks wherever so many controls are away from rest.
func anyOn(moved int) *position.Property {
	return &position.Property{ID: "moved", Judge: func(c *position.Cart, p *settle.Point) []position.Violation {
		if len(position.Moved(c.Harness, p.State)) != moved {
			return nil
		}
		return []position.Violation{{Subject: "S1", Says: "moved"}}
	}}
}

func TestCheckOfAPart(t *testing.T) {
	c := position.NewCart(pathtest.Harness(t, threeRockers), nil)
	for _, test := range []struct {
		name    string
		most    int64
		part    bool
		moved   int
		verdict position.Verdict
		looked  int64
		why     string
	}{
		{"all of them", 8, true, 9, position.Holds, 8, ""},
		{"too many, and a part is not asked for", 7, false, 1, position.Unproved, 0, "there are 8 positions to settle, and the limit is 7"},
		{"a part finds what few controls break", 5, true, 1, position.Broken, 5, ""},
		{"a part proves nothing", 7, true, 3, position.Unproved, 7, "of 8 positions only those with up to 2 controls away from rest were all looked at"},
		{"and counts only whole numbers of controls", 5, true, 3, position.Unproved, 5, "of 8 positions only those with up to 1 control away from rest were all looked at"},
	} {
		t.Run(test.name, func(t *testing.T) {
			r, err := position.Check(t.Context(), c, anyOn(test.moved), position.CheckOptions{Part: test.part, Options: position.Options{Most: test.most}})
			if err != nil || r.Verdict != test.verdict || r.Looked != test.looked || r.Why != test.why {
				t.Errorf("%v, %d looked at, %q, %v; want %v, %d, %q", r.Verdict, r.Looked, r.Why, err, test.verdict, test.looked, test.why)
			}
		})
	}
}

// TestPartIsShared settles each position of a part once for two properties that ask for it.
func TestPartIsShared(t *testing.T) {
	c := position.NewCart(pathtest.Harness(t, threeRockers), nil)
	settled := int64(0)
	count := func(done, total int64) { settled = done }
	o := position.CheckOptions{Part: true, Options: position.Options{Most: 4, Progress: count}}
	rs, err := position.CheckAll(t.Context(), c, []*position.Property{anyOn(1), anyOn(2)}, o)
	if err != nil || rs[0].Verdict != position.Broken || rs[1].Verdict != position.Unproved || settled != 4 {
		t.Errorf("%v, %v, %d settled, %v", rs[0].Verdict, rs[1].Verdict, settled, err)
	}
}
