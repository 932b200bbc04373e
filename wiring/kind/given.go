package kind

import (
	"slices"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/source"
)

// Given is what layers wrote for one part, lowest layer first: ratings by name, and what
// this unit's leads differ in. The zero Given is ready for use.
type Given struct {
	ratings []source.Entry
	leads   []source.Entry
}

// Set adds a rating. A later one of the same name replaces an earlier one; maps, such as
// `fuses: {1: 10 A}`, are merged key by key, and the value `none` unsets a channel. What
// was said last stands last.
func (g *Given) Set(key, value *source.Node) {
	g.ratings = merge(g.ratings, source.Entry{Key: key, Value: value})
}

// SetLeads adds the value of a part's `leads` key; it is merged key by key with what
// lower layers said: `leads: {enable: {colour: GN, length: 20 in}}`.
func (g *Given) SetLeads(value *source.Node) {
	if value.Kind != source.Map {
		return // the layer's reader has said so
	}
	for _, e := range value.Entries {
		if e.Value.Kind != source.Null {
			g.leads = merge(g.leads, e)
		}
	}
}

// rating finds what was given for a rating.
func (g *Given) rating(name string) (source.Entry, bool) {
	for _, e := range g.ratings {
		if e.Key.Text == name {
			return e, true
		}
	}
	return source.Entry{}, false
}

// merge adds an entry to a list, or into the one of the same key if both are maps. The
// nodes of the files stay as they are.
func merge(list []source.Entry, e source.Entry) []source.Entry {
	for i, old := range list {
		if wiring.Fold(old.Key.Text) != wiring.Fold(e.Key.Text) {
			continue
		}
		if old.Value.Kind == source.Map && e.Value.Kind == source.Map {
			both := *old.Value
			both.Entries = slices.Clone(old.Value.Entries)
			both.Span = e.Value.Span
			for _, inner := range e.Value.Entries {
				both.Entries = merge(both.Entries, inner)
			}
			e.Value = &both
		}
		return append(slices.Delete(slices.Clone(list), i, i+1), e)
	}
	return append(list[:len(list):len(list)], e)
}
