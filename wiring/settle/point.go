package settle

import (
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// Point is the operating point of a harness in a state. It does not change once it has
// been returned. With an Outcome other than Settled its figures are those of the last
// network that was solved.
type Point struct {
	Outcome Outcome
	State   *wiring.State
	Why     string           // what is wrong, in a sentence; empty when settled and nothing is to say
	Rounds  int              // how often the network was solved with one memory
	Cycle   []wiring.Element // Chatters: the elements that alternate
	Swings  []Swing          // Chatters: what those with a threshold see
	// OrderMatters says that elements race each other and the outcome depends on which of
	// them acts first. The point is the one in which the nearest to its threshold acts first.
	OrderMatters bool
	Residual     Residual

	net *Network
}

// Swing is the voltage that an element with a threshold sees in the course of a cycle.
type Swing struct {
	Element   wiring.Element
	Low, High quantity.Volt
}

// Residual says how exactly the point solves its network. Both are relative.
type Residual struct {
	KCL   float64 // largest sum of currents at a node, against the largest current there
	Power float64 // power delivered less power consumed, against power delivered
}

// ReferenceNode is the node that voltages are counted from: the point pack-, else the
// negative of the source with the highest voltage; NoNode without either.
func (p *Point) ReferenceNode() wiring.NodeID { return wiring.NoNode }

// Volts is the voltage of a node against the reference node; 0 for a floating node.
func (p *Point) Volts(n wiring.NodeID) quantity.Volt { return 0 }

// Floating reports whether nothing joins the node to the reference node.
func (p *Point) Floating(n wiring.NodeID) bool { return false }

// Across is the voltage of a against b. Between two nodes that nothing joins it is 0.
func (p *Point) Across(a, b wiring.NodeID) quantity.Volt { return 0 }

// Joined reports whether branches that are not open join two nodes, so that there is a
// definite voltage between them.
func (p *Point) Joined(a, b wiring.NodeID) bool { return false }

// Against is the node that a reading at n is taken against: the reference node, for a node
// of an isolated side the negative of the supply that feeds it, and NoNode for a node that
// floats without any supply.
func (p *Point) Against(n wiring.NodeID) wiring.NodeID { return wiring.NoNode }

// Reading is what a 10 Mohm meter shows between the node and Against(n).
func (p *Point) Reading(n wiring.NodeID) quantity.Volt { return 0 }

// WireAmps is the current in a wire from From to To. For a cord, pole counts the pairs of
// [wiring.Wire.Joins]; for any other wire it is 0.
func (p *Point) WireAmps(w *wiring.Wire, pole int) quantity.Ampere { return 0 }

// WireOhms is the resistance that the wire was solved with, and whether all its pieces
// are of known size and length, so that its drop means something.
func (p *Point) WireOhms(w *wiring.Wire) (ohms quantity.Ohm, known bool) { return 0, false }

// ElementAmps is the current through an element from its first node to its second, as the
// element lists them: positive into a load's A. A source that delivers therefore has
// negative amperes. For a converter and a charger it is the current delivered out of
// OutA or A. For a switch it is the largest current, by magnitude, of any of its ways.
// Links, capacitors and mains have none.
func (p *Point) ElementAmps(e wiring.Element) quantity.Ampere { return 0 }

// InputAmps is the current that a converter takes at InA; 0 for other elements.
func (p *Point) InputAmps(e wiring.Element) quantity.Ampere { return 0 }

// TerminalAmps is the current that flows from the wires of a terminal into its part.
func (p *Point) TerminalAmps(t *wiring.Terminal) quantity.Ampere { return 0 }

// Watts is the power that an element takes in; negative if it delivers. For a converter
// it is what it loses.
func (p *Point) Watts(e wiring.Element) quantity.Watt { return 0 }

// Holds reports the state of an element: a sense is true, a coil energised, a driver or
// contact closed, a converter or charger running, a load on, a fuse whole, a diode
// conducting, a source in circuit, a mains live, a switch closed in at least one way.
// Resistors, links and capacitors always hold.
func (p *Point) Holds(e wiring.Element) bool { return false }

// On reports whether a part is on: the load listed first in its kind is on; without loads
// its first converter or charger runs, else its first coil is energised. A part without
// any of these is never on.
func (p *Point) On(part *wiring.Part) bool { return false }

// Traction reports whether any part whose kind moves the cart is on.
func (p *Point) Traction() bool { return false }

// Opened lists the fuses that opened and the sources that tripped, in that order of time.
func (p *Point) Opened() []wiring.Element { return nil }

// Overloaded lists the converters and chargers in their current limit whose loads found no
// answer inside their working bands.
func (p *Point) Overloaded() []wiring.Element { return nil }

// Limiting lists the converters and chargers that hold their current rather than their
// voltage.
func (p *Point) Limiting() []wiring.Element { return nil }

// Holding evaluates a condition. A nil condition always holds.
func (p *Point) Holding(c *wiring.Condition) bool { return false }

// Unmet lists what keeps a condition from holding; nothing if it holds.
func (p *Point) Unmet(c *wiring.Condition) []Unmet { return nil }

// Unmet is one leaf of a condition that is not as the condition needs it.
type Unmet struct {
	Name    string            // "U1.interlock", "S1.key"
	Want    bool              // Element ought to hold, or ought not to
	Element wiring.Element    // nil for a control
	Control *wiring.Control   // nil for an element
	Needs   string            // Control: the position that is needed, or to be left
	Volts   quantity.Volt     // what a sense, coil, converter sees
	At      *wiring.Condition // the leaf itself
}
