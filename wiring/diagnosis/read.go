package diagnosis

import (
	"fmt"
	"strings"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// ParseReading reads "K1.out@driving=0.2 V": a place, the state of the cart, what the meter
// showed. A place is a terminal, against its negative; a wire, from end to end; or
// "G1.+>K1.out", from a post to a terminal. Without a state it is the one that the case is
// in. The error says what is wrong and what to write instead.
func (c *Case) ParseReading(s string) (Reading, error) {
	place, value, ok := strings.Cut(s, "=")
	if !ok {
		return Reading{}, fmt.Errorf("%q is no reading: write PLACE@STATE=VOLTS, such as %q", s, "K1.out@driving=0.2V")
	}
	volts, err := parseVolts(value)
	if err != nil {
		return Reading{}, err
	}
	where, stateName, named := strings.Cut(place, "@")
	state := c.standing()
	if named {
		if state = c.Table.state(stateName); state == nil {
			return Reading{}, fmt.Errorf("%q: the cart has no state %q; it has %s", s, strings.TrimSpace(stateName), c.Table.stateNames())
		}
	}
	if state == nil {
		return Reading{}, fmt.Errorf("%q: say in which state it was read, such as %q; the cart has %s", s, strings.TrimSpace(where)+"@"+c.Table.States[0].Name+"="+value, c.Table.stateNames())
	}
	m, err := c.Table.measurement(strings.TrimSpace(where), state)
	if err != nil {
		return Reading{}, err
	}
	return Reading{m, volts}, nil
}

// parseVolts reads a voltage, with or without its unit, and with a sign if need be.
func parseVolts(s string) (quantity.Volt, error) {
	s = strings.TrimSpace(s)
	sign := quantity.Volt(1)
	if rest, negative := strings.CutPrefix(s, "-"); negative {
		s, sign = rest, -1
	}
	if s != "" && strings.Trim(s, "0123456789.") == "" {
		s += " V"
	}
	a, err := quantity.Parse(s, quantity.Voltage)
	if err != nil {
		return 0, err
	}
	return sign * quantity.Volt(a.Value), nil
}

func (t *Table) state(name string) *wiring.State {
	for _, s := range t.States {
		if strings.EqualFold(s.Name, strings.TrimSpace(name)) {
			return s
		}
	}
	return nil
}

func (t *Table) stateNames() string {
	var names []string
	for _, s := range t.States {
		names = append(names, s.Name)
	}
	return strings.Join(names, ", ")
}

// measurement finds a measurement by its place. What is not among those that are asked for
// can be read all the same, if it is a terminal.
func (t *Table) measurement(where string, state *wiring.State) (Measurement, error) {
	for _, m := range t.measurements {
		if m.State == state && strings.EqualFold(m.Where(), where) {
			return m, nil
		}
	}
	if post, spot, ok := strings.Cut(where, ">"); ok {
		return Measurement{}, fmt.Errorf("%s does not feed %s in %s on a healthy cart: read each against its negative", post, spot, state.Name)
	}
	h := t.Cart.Harness
	if terminal := h.Terminal(where); terminal != nil {
		for _, m := range t.measurements {
			if m.State == state && m.Spot != nil && m.Post == nil && m.Spot.Terminal == terminal {
				return m, nil
			}
		}
		return Measurement{}, fmt.Errorf("%s is no place to measure: no single wire lands there", terminal.Ref())
	}
	if w := h.Wire(where); w != nil {
		return Measurement{}, fmt.Errorf("%s is a cord or does not land at both ends: read its terminals instead", w.Name())
	}
	return Measurement{}, &PlaceError{where}
}

// PlaceError says that a cart has no terminal or wire of a name.
type PlaceError struct{ Place string }

func (e *PlaceError) Error() string { return "the cart has no terminal or wire " + e.Place }
