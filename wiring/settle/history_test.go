package settle

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"github.com/lugwright/lugwright/wiring"
)

// A solenoid that holds itself once it was started is open on the way up and closed on
// the way back: the cart has two answers to "key off".
func TestHistoryShowsTwoAnswers(t *testing.T) {
	b := newBench()
	b.battery("G1", 12, 0.01)
	coil := b.relay("K1", 90, 8, 2)
	pack := b.lever("G1", "pack", "on", "off")
	b.part("G1").Elements[0].(*wiring.Source).When = stands(pack, "on")
	key := b.key("S1")
	b.wire("G1.+", "S1.in", 0.01)
	b.wire("S1.out", "K1.86", 0.01)
	b.wire("G1.+", "K1.30", 0.01)
	b.wire("K1.87", "K1.86", 0.01)
	b.wire("K1.85", "G1.-", 0.01)
	b.h.States = []*wiring.State{
		{Name: "driving", Set: map[*wiring.Control]string{key: "on"}},
		{Name: "key off"},
		{Name: "pack off", Set: map[*wiring.Control]string{pack: "off"}},
		{Name: "working"},
	}
	steps, err := Compile(b.h).History(t.Context(), Day(b.h), Options{})
	if err != nil {
		t.Fatal(err)
	}
	type row struct {
		State       string
		Cold, After bool
		Differs     []string
	}
	var got []row
	for _, s := range steps {
		got = append(got, row{s.State.Name, s.Cold.Holds(coil), s.After.Holds(coil), refs(s.Differs)})
	}
	all := []string{"K1.coil", "K1.make", "K1.break"}
	want := []row{
		{"pack off", false, false, nil},
		{"key off", false, false, nil},
		{"driving", true, true, nil},
		{"key off", false, true, all},
		{"pack off", false, false, nil},
	}
	if d := cmp.Diff(want, got); d != "" {
		t.Error(d)
	}
}
