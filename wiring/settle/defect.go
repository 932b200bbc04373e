package settle

import (
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// Defect is one thing that is wrong with a cart and not with its drawing. Make it with one
// of the functions below and settle with it by [Network.With].
type Defect struct {
	kind    defectKind
	wire    *wiring.Wire
	element wiring.Element
	a, b    wiring.NodeID
	ohms    float64
}

type defectKind uint8

const (
	wireOpen defectKind = iota + 1
	wireResistance
	elementOpen
	elementClosed
	elementTrue
	elementFalse
	joint
)

// OpenWire is a wire, or all poles of a cord, that is broken.
func OpenWire(w *wiring.Wire) Defect { return Defect{kind: wireOpen, wire: w} }

// BadJoint is a wire with so much more resistance: a lug that is loose or corroded.
func BadJoint(w *wiring.Wire, more quantity.Ohm) Defect {
	return Defect{kind: wireResistance, wire: w, ohms: float64(more)}
}

// Bridge is a resistance between two nodes that the drawing does not have: a wire on the
// neighbouring terminal, a chafed wire on the negative.
func Bridge(a, b wiring.NodeID, ohms quantity.Ohm) Defect {
	return Defect{kind: joint, a: a, b: b, ohms: float64(ohms)}
}

// OpenElement is an element that carries nothing: a blown fuse, a dead lamp, a source that
// has switched itself off.
func OpenElement(e wiring.Element) Defect { return Defect{kind: elementOpen, element: e} }

// ClosedElement is a contact, switch, driver or fuse that is closed, whatever works it: a
// welded contact, a bridged fuse.
func ClosedElement(e wiring.Element) Defect { return Defect{kind: elementClosed, element: e} }

// Stuck is a sense, coil, driver, converter or charger that stays true, or false.
func Stuck(e wiring.Element, state bool) Defect {
	if state {
		return Defect{kind: elementTrue, element: e}
	}
	return Defect{kind: elementFalse, element: e}
}

// With returns the network with defects. The network itself stays as it is.
func (n *Network) With(defects ...Defect) *Network {
	return compile(n.harness, append(n.defects[:len(n.defects):len(n.defects)], defects...))
}

// forcing is what defects make of a model.
type forcing struct{ kind defectKind }

// memory is what a defect makes of a model's memory.
func (f forcing) memory(next bool) bool {
	switch f.kind {
	case elementTrue:
		return true
	case elementFalse, elementOpen:
		return false
	}
	return next
}

// apply is what a defect makes of a model's branches.
func (f forcing) apply(s *solving, m model) {
	u := m.itself()
	for i := u.first; i < u.first+u.count; i++ {
		switch f.kind {
		case elementOpen:
			s.set(i, law{})
		case elementClosed:
			if ohms, ok := closedOhms(m); ok {
				s.set(i, ohmic(ohms))
			}
		}
	}
}

// closedOhms is the resistance of what can be closed.
func closedOhms(m model) (ohms float64, ok bool) {
	switch m := m.(type) {
	case *fuse:
		return m.ohms, true
	case *switched:
		return m.ohms, true
	case *contact:
		return m.ohms, true
	case *driver:
		return m.ohms, true
	}
	return 0, false
}

// apply puts defects into the network.
func (c *compiler) apply(defects []Defect) {
	c.defects = defects
	for _, d := range defects {
		switch d.kind {
		case wireOpen, wireResistance:
			c.spoilWire(d)
		case joint:
			c.branch(d.a, d.b)
			c.bridges = append(c.bridges, ohmic(d.ohms))
		default:
			c.force(d)
		}
	}
}

func (c *compiler) spoilWire(d Defect) {
	w, ok := c.wireOf[d.wire]
	if !ok {
		return
	}
	for i := c.wireFirst[w]; i < c.wireFirst[w+1]; i++ {
		if d.kind == wireOpen {
			c.wireLaws[i] = law{}
		} else if c.wireLaws[i].conducts() {
			c.wireLaws[i] = ohmic(1/c.wireLaws[i].siemens + d.ohms)
		}
	}
}

func (c *compiler) force(d Defect) {
	id, ok := c.modelOf[d.element]
	if !ok {
		return
	}
	if c.forced == nil {
		c.forced = make([]forcing, len(c.models))
	}
	c.forced[id] = forcing{d.kind}
}
