package position_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/position"
)

// The products: three positions of the direction switch and of the plug of an AC inlet (out,
// in, and in a dead outlet), two of everything else. A plug in a dead outlet does what one
// does that is out.
func TestPositionsOfTheExamples(t *testing.T) {
	tests := []struct {
		name           string
		controls       int
		full, distinct int64
	}{
		{"tern-point-14", 9, 1152, 768},
		{"tern-point-shuttle-3", 7, 192, 192},
		{"tern-point-truck-1", 13, 18432, 12288},
	}
	for _, tt := range tests {
		all := position.All(example(t, tt.name))
		if len(all.Axes()) != tt.controls || all.Count() != tt.full || all.Distinct().Count() != tt.distinct {
			t.Errorf("%s: %d controls, %d positions, %d distinct, want %d, %d, %d", tt.name,
				len(all.Axes()), all.Count(), all.Distinct().Count(), tt.controls, tt.full, tt.distinct)
		}
	}
}

// Of S1 two positions close the same contact; of S2 one position is asked for by a
// condition; nothing reads S3.
func TestPositionsThatReadAlikeCountOnce(t *testing.T) {
	h := bench(t, `
		G1 source + - 12
		S1 switch lever a,b,c,d b:in,out c:in,out d:in,other
		S2 switch mode x,y,z
		S3 switch spare off,on
		E1 load + - 10
		W1 G1.+ S1.in
		W2 S1.out E1.+
		W3 E1.- G1.-`)
	mode := control(t, h, "S2.mode")
	for _, e := range h.Part("E1").Elements {
		e.(*wiring.Load).When = &wiring.Condition{Op: wiring.Not, Of: []*wiring.Condition{{Op: wiring.Set, Control: mode, Position: "y"}}}
	}
	var got []string
	for _, a := range position.All(h).Distinct().Axes() {
		got = append(got, a.Control.Name)
		got = append(got, a.Positions...)
	}
	want := []string{"lever", "a", "b", "d", "mode", "x", "y"}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}

func TestNarrowedSpaces(t *testing.T) {
	h := example(t, "tern-point-14")
	all := position.All(h)
	key, plug := control(t, h, "S1.key"), control(t, h, "X1.plug")
	on, err := all.Fix(key, "on")
	if err != nil {
		t.Fatal(err)
	}
	if on.Count() != all.Count()/2 || all.Count() != 1152 {
		t.Errorf("%d positions with the key on, of %d", on.Count(), all.Count())
	}
	last := on.At(on.Count() - 1)
	if last.Position(key) != "on" || len(position.Moved(h, last)) != 9 {
		t.Errorf("the last position is %s", last.Name)
	}
	if name := on.At(0).Name; name != "S1.key on" {
		t.Errorf("the first position is %s", name)
	}
	only := all.Only([]*wiring.Control{plug})
	if only.Count() != 3 || only.At(2).Name != "X1.plug dead" {
		t.Errorf("%d positions of the plug, the last %s", only.Count(), only.At(2).Name)
	}
	if _, err := all.Fix(key, "sideways"); err == nil || err.Error() != `S1.key has no position "sideways"` {
		t.Errorf("a position that there is not: %v", err)
	}
}
