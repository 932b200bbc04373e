package proof

import (
	"testing"

	"github.com/google/go-cmp/cmp"
)

// Each limit is missed by the first figure beyond it, and by none before.
func TestTableNamesWhatIsMissed(t *testing.T) {
	good := Soft{Wires: 20, Crossings: 3, Bends: 20, MostBends: 8, Leaders: 2, Turned: 2, NearForeign: 2, Fill: 0.5, Smallest: 2.5}
	for _, c := range []struct {
		name   string
		change func(s *Soft)
	}{
		{"", func(*Soft) {}},
		{"crossings", func(s *Soft) { s.Crossings = 4 }},
		{"bends", func(s *Soft) { s.Bends = 21 }},
		{"bends of one wire", func(s *Soft) { s.MostBends = 9 }},
		{"leaders", func(s *Soft) { s.Leaders = 3 }},
		{"turned labels", func(s *Soft) { s.Turned = 3 }},
		{"labels nearer to another wire", func(s *Soft) { s.NearForeign = 3 }},
		{"fill", func(s *Soft) { s.Fill = 0.49 }},
		{"fill", func(s *Soft) { s.Fill = 0.91 }},
		{"lettering", func(s *Soft) { s.Smallest = 2.34 }},
	} {
		s := good
		c.change(&s)
		var missed, want []string
		for _, r := range s.Table() {
			if r.Missed {
				missed = append(missed, r.Name)
			}
		}
		if c.name != "" {
			want = []string{c.name}
		}
		if diff := cmp.Diff(want, missed); diff != "" {
			t.Errorf("%s: %s", c.name, diff)
		}
	}
}
