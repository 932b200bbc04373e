package settle

import "github.com/lugwright/lugwright/wiring"

// inert is an element without branches: a link, which merges its nodes when the network
// is compiled; a capacitor; anything unknown.
type inert struct{ unit }

func newLink(e *wiring.Link, c *compiler) model      { return &inert{c.unit(e)} }
func newUnknown(e wiring.Element, c *compiler) model { return &inert{c.unit(e)} }

func (*inert) behave(*solving)     {}
func (*inert) holds(*solving) bool { return true }
