package rules

import (
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/rule"
)

// faultThrough passes what lets a fault current of a supply through: all metal, fuses
// among it, in any position in which the supply can be on; electronic switches other than
// those of a drive; diodes; and resistors too small to matter. What comes to a battery's
// post from elsewhere is left there: the battery itself drives more.
func faultThrough(p *rule.Pass, s *path.Supply) path.Through {
	posts := map[wiring.NodeID]bool{}
	for _, b := range p.Supplies() {
		if b.Battery() && b != s {
			posts[b.Plus] = true
		}
	}
	t := path.Through{Sorts: path.Conducting | path.Resistor, Ohms: negligible}
	return t.Only(func(e *path.Edge) bool {
		return whileOn(s, e) && (e.Sort != path.Driver || !p.Controller(e.Part()))
	}).Until(p.Negative).Until(func(n wiring.NodeID) bool { return posts[n] && !s.Battery() })
}

// negligible is a resistance through which a battery still drives what burns a wire: the
// field of a series motor, a shunt.
const negligible = quantity.Ohm(0.1)

// whileOn reports whether a hand switch can be closed while the supply is on: a charge
// inlet's reed is open while its charger is plugged in.
func whileOn(s *path.Supply, e *path.Edge) bool {
	if e.Sort != path.Switch {
		return true
	}
	control, position := onlyWhile(s.Element)
	return control != e.Control() || e.ClosedIn(position)
}

// onlyWhile is the position of a control that a supply waits for, where it waits for one.
func onlyWhile(el wiring.Element) (*wiring.Control, string) {
	var when *wiring.Condition
	switch el := el.(type) {
	case *wiring.Source:
		when = el.When
	case *wiring.Charger:
		when = el.When
	case *wiring.Converter:
		when = el.When
	}
	if when == nil || when.Op != wiring.Set {
		return nil, ""
	}
	return when.Control, when.Position
}
