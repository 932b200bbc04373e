package kind

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"github.com/lugwright/lugwright/wiring/source"
)

func TestGivenMerges(t *testing.T) {
	tests := []struct {
		name   string
		layers []string
		want   map[string]string
	}{
		{"the last wins", []string{"amps: 1 A", "amps: 2 A\nvolts: 5 V"}, map[string]string{"amps": "2 A", "volts": "5 V"}},
		{"maps key by key", []string{"fuses: {1: 1 A, 2: 2 A}", "fuses: {2: 5 A, 3: none}"}, map[string]string{"fuses": "{1: 1 A, 2: 5 A, 3: none}"}},
		{"what was said last stands last", []string{"fuses: {1..3: 1 A, 2: 2 A}", "fuses: {1..3: 5 A}"}, map[string]string{"fuses": "{2: 2 A, 1..3: 5 A}"}},
		{"a value in place of a map", []string{"fuses: {1: 1 A}", "fuses: none"}, map[string]string{"fuses": "none"}},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			g := given(t, test.layers...)
			got := map[string]string{}
			for _, e := range g.ratings {
				got[e.Key.Text] = plain(e.Value)
			}
			if diff := cmp.Diff(test.want, got); diff != "" {
				t.Error(diff)
			}
		})
	}
}

// Layers are shared between jobs: merging leaves their nodes as they are.
func TestGivenKeepsLayers(t *testing.T) {
	low, high := tree(t, "fuses: {1: 1 A}"), tree(t, "fuses: {1: 2 A, 2: 2 A}")
	var g Given
	for _, layer := range []*source.Node{low, high} {
		g.Set(layer.Entries[0].Key, layer.Entries[0].Value)
	}
	if got := plain(low.Entries[0].Value) + plain(high.Entries[0].Value); got != "{1: 1 A}{1: 2 A, 2: 2 A}" {
		t.Errorf("layers are now %s", got)
	}
}

func plain(n *source.Node) string {
	if n.Kind != source.Map {
		return n.Text
	}
	s := "{"
	for i, e := range n.Entries {
		if i > 0 {
			s += ", "
		}
		s += e.Key.Text + ": " + plain(e.Value)
	}
	return s + "}"
}
