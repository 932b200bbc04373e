package kind

import "github.com/lugwright/lugwright/wiring/source"

// Given is what layers wrote for one part, lowest layer first: ratings by name, and what
// this unit's leads differ in. The zero Given is ready for use.
type Given struct {
	ratings []source.Entry
	leads   []source.Entry
}

// Set adds a rating. A later one of the same name replaces an earlier one; maps, such as
// `fuses: {1: 10 A}`, are merged key by key, and the value `none` unsets a channel.
func (g *Given) Set(key, value *source.Node) {}

// SetLeads adds the value of a part's `leads` key; it is merged key by key with what
// lower layers said: `leads: {enable: {colour: GN, length: 20 in}}`.
func (g *Given) SetLeads(value *source.Node) {}
