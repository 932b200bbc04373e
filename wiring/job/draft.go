package job

import (
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/colour"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/kind"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/source"
)

// still is the index of a layer that no layer has: what goes there has not gone.
const still = MostLayers + 2

// draftPart is one device while layers are being applied. A designation may belong to
// several of them, one after the other.
type draftPart struct {
	part   *wiring.Part
	kind   *source.Node // the value of its `kind`
	given  kind.Given
	origin *layer
	born   int        // the layer that defines it
	gone   int        // the layer that removed or replaced it, or still
	heir   *draftPart // what replaced it
	goneAt diag.Span
	built  bool // false: its kind is not known, so nothing can be said of its terminals
}

// live reports whether the part is there when a layer's wires are read.
func (d *draftPart) live(layer int) bool { return d.born <= layer && layer < d.gone }

// endState says what has become of an end of a wire.
type endState uint8

const (
	unsaid  endState = iota
	landed           // on a terminal, which may be gone by now
	capped           // insulated and tied back
	absent           // on a point that this cart does not have
	unmet            // on a point that a layer loaded alone needs
	unknown          // something was written that could not be understood, and was reported
)

// draftEnd is one end of a wire while layers are being applied.
type draftEnd struct {
	state    endState
	terminal *wiring.Terminal
	point    string // through which it was written
	at       diag.Span
	layer    int
}

// side is an end of a wire: from or to.
type side uint8

const (
	from side = iota
	to
)

func (s side) other() side { return 1 - s }

func (s side) String() string { return [...]string{"from", "to"}[s] }

// field is one value of a wire and the layer that wrote it.
type field[T any] struct {
	value T
	layer int
	set   bool
}

// conductor is the colour, size and length of one piece.
type conductor struct {
	colour colour.Colour
	size   quantity.Size
	auto   bool
	length quantity.Amount
}

// vague reports whether colour or size is missing.
func (c conductor) vague() bool { return !c.colour.Known() || !c.size.Known() && !c.auto }

// extension is one piece of an `extend`.
type extension struct {
	conductor
	side side
	at   diag.Span
}

// draftWire is one wire while layers are being applied.
type draftWire struct {
	wire   *wiring.Wire
	end    [2]draftEnd
	cut    conductor
	cutBy  int // the highest layer that said colour, size or length of the wire that is cut
	hasCut bool
	extend field[[]extension]
	lug    [2]field[string]
	joint  string
	origin *layer
	isLaid bool // both ends once landed or were capped
	gone   bool
}

// name is the wire as messages speak of it.
func (w *draftWire) name() string {
	if w.wire.Number != "" {
		return w.wire.Number
	}
	for _, e := range w.end {
		if e.state == landed && e.terminal.Form.Type == wiring.Lead {
			return e.terminal.Ref()
		}
	}
	return "?"
}

// route is "U1.interlock to F4.out".
func (w *draftWire) route() string { return w.end[from].String() + " to " + w.end[to].String() }

func (e draftEnd) String() string {
	switch e.state {
	case landed:
		return e.terminal.Ref()
	case capped:
		return "capped"
	case absent, unmet:
		return e.point
	}
	return "nowhere"
}

// isLead reports whether the end is a lead that a device comes with.
func (e draftEnd) isLead() bool { return e.state == landed && e.terminal.Form.Type == wiring.Lead }

// droppedWire is a wire that a layer took away.
type droppedWire struct {
	wire *draftWire
	by   *layer
	at   diag.Span
}

// group is a named list for `remove`.
type group struct {
	name  string
	layer *layer
	items []*source.Node
}

// point is a named terminal.
type point struct {
	name     string
	terminal *wiring.Terminal // nil: none
	broken   bool             // it was written wrongly, and that was reported
	layer    int              // that defined it last
	moved    bool
	at       diag.Span
}

// touched notes that a layer changed something.
func touched(list []*wiring.Layer, origin, by *layer) []*wiring.Layer {
	if origin == by || len(list) > 0 && list[len(list)-1] == by.Layer {
		return list
	}
	return append(list, by.Layer)
}
