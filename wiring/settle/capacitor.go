package settle

import (
	"math"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// newCapacitor: a capacitor is open to direct current. How it charges follows from the
// point, see [Point.Charging].
func newCapacitor(e *wiring.Capacitor, c *compiler) model { return &inert{c.unit(e)} }

// Charging is how a capacitor comes to its final voltage: v(t) = Final + (v0 - Final)
// exp(-t / Tau), with Tau = Ohms times farads (R C charging law).
type Charging struct {
	Final quantity.Volt   // of its first node against its second
	Ohms  quantity.Ohm    // the network as the capacitor sees it (Thevenin)
	Tau   quantity.Second // time constant
}

// Charging says how a capacitor charges, or runs down, towards a point, if nothing
// switches on the way: the network is taken as it stands at the end. ok is false if
// nothing joins the capacitor's ends.
func (p *Point) Charging(c *wiring.Capacitor) (charging Charging, ok bool) {
	ohms, ok := p.Thevenin(c.A, c.B)
	if !ok {
		return Charging{}, false
	}
	return Charging{
		Final: p.Across(c.A, c.B),
		Ohms:  ohms,
		Tau:   quantity.Second(float64(ohms) * float64(c.Farads)),
	}, true
}

// At is the voltage a time after it was `from`.
func (c Charging) At(from quantity.Volt, after quantity.Second) quantity.Volt {
	if c.Tau <= 0 {
		return c.Final
	}
	return c.Final + (from-c.Final)*quantity.Volt(math.Exp(-float64(after/c.Tau)))
}

// Until is the time from one voltage to another. ok is false if it never gets there.
func (c Charging) Until(from, to quantity.Volt) (after quantity.Second, ok bool) {
	left := float64((to - c.Final) / (from - c.Final))
	if from == to {
		return 0, true
	}
	if !(left > 0) || left > 1 {
		return 0, false
	}
	return -c.Tau * quantity.Second(math.Log(left)), true
}

// First is the current into the capacitor when its voltage is `from`.
func (c Charging) First(from quantity.Volt) quantity.Ampere {
	return quantity.Ampere(float64(c.Final-from) / float64(c.Ohms))
}
