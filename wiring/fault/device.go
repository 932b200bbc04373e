package fault

import (
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/settle"
)

// through is the resistance of a part that has failed short: a value of our own.
const through quantity.Ohm = 0.01

// name is an element as a person calls it: outputs and inputs of a device by their own names.
func name(e wiring.Element) string {
	switch e.(type) {
	case *wiring.Driver, *wiring.Sense:
		return e.Base().Ref()
	}
	return called(e)
}

// isDevice reports whether a load is what its part is there for: what a battery's own
// electronics take is not.
func isDevice(e *wiring.Load) bool {
	for _, o := range e.Part.Elements {
		if _, ok := o.(*wiring.Source); ok {
			return false
		}
	}
	return true
}

// opened makes a mode of elements that carry nothing any more.
func opened[T wiring.Element](m Mode, words string, applies func(T) bool) *Mode {
	m.Find = func(c *Cart) []Fault {
		return each(c, func(e T, f *Fault) bool {
			f.Name = name(e) + words
			f.Defects = []settle.Defect{settle.OpenElement(e)}
			return applies == nil || applies(e)
		})
	}
	return &m
}

// closed makes a mode of elements that conduct whatever works them.
func closed[T wiring.Element](m Mode, words string) *Mode {
	m.Find = func(c *Cart) []Fault {
		return each(c, func(e T, f *Fault) bool {
			f.Name = name(e) + words
			f.Defects = []settle.Defect{settle.ClosedElement(e)}
			return true
		})
	}
	return &m
}

// frozen makes a mode of elements whose state stays.
func frozen[T wiring.Element](m Mode, words string, state bool, applies func(T) bool) *Mode {
	m.Find = func(c *Cart) []Fault {
		return each(c, func(e T, f *Fault) bool {
			f.Name = name(e) + words
			f.Defects = []settle.Defect{settle.Stuck(e, state)}
			return applies == nil || applies(e)
		})
	}
	return &m
}

func coilOpen() *Mode {
	return opened[*wiring.Coil](Mode{
		ID: "coil-open", Title: "coil open", Class: Occasional,
		Why: "a winding that burnt through, often after too much voltage",
	}, " coil open", nil)
}

func contactWelded() *Mode {
	return closed[*wiring.Contact](Mode{
		ID: "contact-welded", Title: "contact welded", Class: Occasional,
		Why: "closed on to empty capacitors without pre-charge, or opened under load",
	}, " contact welded")
}

func contactOpen() *Mode {
	return opened[*wiring.Contact](Mode{
		ID: "contact-open", Title: "contact stuck open", Class: Occasional,
		Why: "burnt or fouled contacts: it clicks, and nothing comes through",
	}, " contact stuck open", nil)
}

func driverOpen() *Mode {
	return opened[*wiring.Driver](Mode{
		ID: "driver-open", Title: "output dead", Class: Rare,
		Why: "an electronic output that failed open",
	}, " output dead", nil)
}

func driverShorted() *Mode {
	return closed[*wiring.Driver](Mode{
		ID: "driver-shorted", Title: "output shorted", Class: Rare,
		Why: "an electronic output that failed short, as transistors mostly do",
	}, " output shorted")
}

// inputs of controllers and other devices; the enable of a converter has a mode of its own.
func isInput(s *wiring.Sense) bool { return !s.AC && !enables(s) }

func inputDead() *Mode {
	return frozen(Mode{
		ID: "input-dead", Title: "input dead", Class: Rare,
		Why: "a pin pushed back in its plug, or an input destroyed by too much voltage",
	}, " input dead", false, isInput)
}

func inputStuck() *Mode {
	return frozen(Mode{
		ID: "input-stuck", Title: "input stuck on", Class: Rare,
		Why: "an input that failed, or moisture in its plug",
	}, " input stuck on", true, isInput)
}

func diodeOpen() *Mode {
	return opened[*wiring.Diode](Mode{
		ID: "diode-open", Title: "diode open", Class: Rare,
		Why: "a diode that carried too much, or a leg that broke",
	}, " open", nil)
}

func diodeShorted() *Mode {
	return &Mode{
		ID: "diode-shorted", Title: "diode shorted", Class: Occasional,
		Why: "fitted the wrong way round once, or struck by more than its reverse voltage",
		Find: func(c *Cart) []Fault {
			return each(c, func(e *wiring.Diode, f *Fault) bool {
				f.Name = called(e) + " shorted"
				f.Defects = []settle.Defect{settle.Bridge(e.A, e.B, through)}
				return true
			})
		},
	}
}

func resistorOpen() *Mode {
	return opened(Mode{
		ID: "resistor-open", Title: "resistor open", Class: Occasional,
		Why: "a pre-charge resistor that had to feed a load, or lost its leg to vibration",
	}, " open", func(e *wiring.Resistor) bool { return len(e.Part.Elements) == 1 })
}

func loadOpen() *Mode {
	return opened[*wiring.Load](Mode{
		ID: "consumer-dead", Title: "consumer dead", Class: Occasional,
		Why: "the device itself: lamp, motor, display",
	}, " itself dead", isDevice)
}

func loadShorted() *Mode {
	return &Mode{
		ID: "consumer-shorted", Title: "consumer shorted", Class: Rare,
		Why: "water in a device, a pinched lead inside it",
		Find: func(c *Cart) []Fault {
			return each(c, func(e *wiring.Load, f *Fault) bool {
				f.Name = called(e) + " shorted inside"
				f.Defects = []settle.Defect{settle.Bridge(e.A, e.B, through)}
				return isDevice(e)
			})
		},
	}
}
