package settle

import "github.com/lugwright/lugwright/wiring"

// model is how an element behaves: what branches it has, and what law each of them
// follows, given the memory, the positions of the controls and the piece of its
// characteristic on which each bend stands.
type model interface {
	itself() *unit
	// behave sets the laws of the model's branches and says which of its bends count.
	behave(s *solving)
	// holds says what [Point.Holds] does.
	holds(s *solving) bool
}

// remembering is a model with one bit of memory.
type remembering interface {
	model
	// next is the memory that follows from the network as solved.
	next(s *solving) bool
	// margin says how far beyond its threshold is what the model watches, relative to the
	// threshold; 0 where it watches no voltage.
	margin(s *solving) float64
}

// watching is a model that remembers by the voltage it sees.
type watching interface {
	remembering
	sees(s *solving) float64
}

// breakable is a model that opens for good when it carries too much.
type breakable interface {
	model
	// strain is the current as a share of the most that it carries for good.
	strain(s *solving) float64
}

// delivering is a model of a supply: it has an output in one branch.
type delivering interface {
	model
	// supplying reports whether it is in circuit now, and output is its branch.
	supplying(s *solving) bool
	output() int32
}

// unit is what all models have.
type unit struct {
	element wiring.Element
	id      int32 // index in Network.models, and of its bit of memory
	first   int32 // first of its branches
	count   int32 // how many it has
}

func (u *unit) itself() *unit { return u }

// newModel is the list of all elements.
func (c *compiler) newModel(e wiring.Element) model {
	switch e := e.(type) {
	case *wiring.Resistor:
		return newResistor(e, c)
	case *wiring.Link:
		return newLink(e, c)
	case *wiring.Fuse:
		return newFuse(e, c)
	case *wiring.Switch:
		return newSwitch(e, c)
	case *wiring.Coil:
		return newCoil(e, c)
	case *wiring.Contact:
		return newContact(e, c)
	case *wiring.Diode:
		return newDiode(e, c)
	case *wiring.Capacitor:
		return newCapacitor(e, c)
	case *wiring.Source:
		return newSource(e, c)
	case *wiring.Mains:
		return newMains(e, c)
	case *wiring.Charger:
		return newCharger(e, c)
	case *wiring.Converter:
		return newConverter(e, c)
	case *wiring.Load:
		return newLoad(e, c)
	case *wiring.Sense:
		return newSense(e, c)
	case *wiring.Driver:
		return newDriver(e, c)
	}
	return newUnknown(e, c)
}
