package sizing

import (
	"fmt"

	"github.com/lugwright/lugwright/wiring/handbook"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// Run is what a conductor and its fuse are wanted for. Zero means not stated.
type Run struct {
	Amps       quantity.Ampere  // for as long as it is on; needed
	Loop       quantity.Metre   // of copper, there and back; 0: the drop is not counted
	Volts      quantity.Volt    // of the circuit, nominal
	Highest    quantity.Volt    // that the circuit comes to; 0: Volts × 3.65 / 3.2, an LFP pack at the end of its charge
	Drop       quantity.Ratio   // of Volts that may be lost on the loop; 0: any
	Insulation quantity.Celsius // its rating; 0: the 75 C column is taken, as for common PVC
	Ambient    quantity.Celsius // where it lies; 0: 30 C, that of the table
	Bundle     int              // conductors in its bundle that carry current
	Sheathed   bool             // runs inside a sheath: may be a gauge thinner
	Copper     Copper           // by which its resistance is reckoned

	Style string          // of the fuse: "blade"; empty: chosen by voltage and current
	Fuse  quantity.Ampere // rating, if there is a fuse already; 0: chosen
	Size  quantity.Size   // conductor, if it lies already; zero: chosen
	Limit quantity.Ampere // of a supply that feeds it without a fuse, which the conductor must carry; 0: there is a fuse
}

// unstatedInsulation is the column that counts where nothing is said: the common cheap
// PVC. Our own choice, the same as that of the rules.
const unstatedInsulation = quantity.Celsius(75)

// tableAmbient is the ambient of the ampacity table.
const tableAmbient = quantity.Celsius(30)

// fullShare is the end of charge of an LFP cell over its nominal voltage, 3.65 V / 3.2 V.
const fullShare = 3.65 / 3.2

func (r Run) insulation() quantity.Celsius {
	if r.Insulation == 0 {
		return unstatedInsulation
	}
	return r.Insulation
}

func (r Run) ambient() quantity.Celsius {
	if r.Ambient == 0 {
		return tableAmbient
	}
	return r.Ambient
}

// highest is the highest voltage of the circuit.
func (r Run) highest() quantity.Volt {
	if r.Highest > 0 {
		return r.Highest
	}
	return quantity.Volt(float64(r.Volts) * fullShare)
}

// limit is how many volts may be lost; 0: any.
func (r Run) limit() quantity.Volt { return quantity.Volt(float64(r.Drop) * float64(r.Volts)) }

// Error says why nothing can be chosen.
type Error struct{ Why string }

// Error returns the reason.
func (e *Error) Error() string { return e.Why }

func failf(format string, args ...any) error { return &Error{fmt.Sprintf(format, args...)} }

// check refuses figures that no run has.
func (r Run) check() error {
	switch {
	case !(r.Amps > 0):
		return failf("no current is stated")
	case r.Loop < 0 || r.Volts < 0 || r.Bundle < 0 || r.Fuse < 0:
		return failf("a length, voltage, rating or number below 0")
	case r.Drop < 0 || r.Drop >= 1:
		return failf("a drop of %v is no share that may be lost", r.Drop)
	case r.Drop > 0 && r.Volts == 0:
		return failf("the drop is a share of a voltage, and none is stated")
	case r.Fuse > 0 && r.Fuse < r.Amps:
		return failf("a fuse of %v opens at %v", r.Fuse, r.Amps)
	}
	return nil
}

// Copper says by which figures the resistance of a run is reckoned. The zero Copper is
// annealed copper of 100 % IACS at 20 C.
type Copper struct {
	At       quantity.Celsius // conductor temperature of annealed copper; 0: 20 C
	Aircraft bool             // the largest resistances of AC 43.13-1B Table 11-9 instead
	K        float64          // ohm circular mils a foot instead: 12.9 near 75 C, 10.75 on boats
}

// String names the figures: "annealed copper at 20 C".
func (c Copper) String() string {
	switch {
	case c.Aircraft:
		return "AC 43.13-1B Table 11-9"
	case c.K > 0:
		return fmt.Sprintf("the trade's rule, K = %g", c.K)
	}
	return fmt.Sprintf("annealed copper at %v", c.temperature())
}

func (c Copper) temperature() quantity.Celsius {
	if c.At == 0 {
		return 20
	}
	return c.At
}

// ohms is the resistance of a length of a size; an error where the figures lack the size.
func (c Copper) ohms(t *handbook.Tables, size quantity.Size, length quantity.Metre) (quantity.Ohm, error) {
	if c.Aircraft {
		w, ok := t.FAAWire(size)
		if !ok {
			return 0, failf("AC 43.13-1B Table 11-9 has no %v", size)
		}
		return w.Most.Of(length), nil
	}
	if c.K > 0 {
		area, err := t.Area(size)
		if err != nil {
			return 0, err
		}
		return handbook.CircularMilResistance(c.K, length, handbook.CircularMils(area)), nil
	}
	return t.Resistance(size, length, c.temperature())
}
