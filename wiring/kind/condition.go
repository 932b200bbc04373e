package kind

import (
	"fmt"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/source"
)

// conditionTypes are the elements that a condition may name: a sense (true), a coil
// (energised), a driver (closed), a converter or charger (running).
var conditionTypes = map[string]bool{
	"sense": true, "coil": true, "driver": true, "converter": true, "charger": true,
}

// when makes the condition of a parameter; nil if it is not given. What it names is
// resolved when all elements are made, so that elements may name later ones.
func (a *args) when(name string) *wiring.Condition {
	n, _ := a.param(name)
	if n == nil {
		return nil
	}
	c := &wiring.Condition{}
	a.later(func() { a.resolve(n, c) })
	return c
}

// resolve fills c from what is written at n, which has been checked.
func (a *args) resolve(n *source.Node, c *wiring.Condition) {
	if n.Kind == source.Scalar {
		c.Op, c.Element = wiring.Holds, a.b.elements[n.Text]
		return
	}
	if len(n.Entries) != 1 {
		return
	}
	e := n.Entries[0]
	of := e.Value.Items
	switch e.Key.Text {
	case "all":
		c.Op = wiring.All
	case "any":
		c.Op = wiring.Any
	case "not":
		c.Op, of = wiring.Not, []*source.Node{e.Value}
	default:
		c.Op, c.Position = wiring.Set, e.Value.Text
		for _, control := range a.b.part.Controls {
			if control.Name == e.Key.Text {
				c.Control = control
			}
		}
		return
	}
	for _, item := range of {
		sub := &wiring.Condition{}
		a.resolve(item, sub)
		c.Of = append(c.Of, sub)
	}
}

// checkCondition reports what is wrong with a condition as it is written.
func (r *reader) checkCondition(n *source.Node, key string) {
	switch n.Kind {
	case source.Scalar:
		for _, spec := range r.d.elements {
			if spec.name == n.Text && conditionTypes[spec.typ.name] {
				return
			}
		}
		r.fault(n, fmt.Sprintf("%s names %s, which is no sense, coil, driver, converter or charger of this kind%s",
			key, n.Text, source.DidYouMean(n.Text, r.conditionNames())))
	case source.Map:
		r.checkOperator(n, key)
	default:
		r.fault(n, key+" is a name, or one of {all: […]}, {any: […]}, {not: …} and {CONTROL: POSITION}")
	}
}

func (r *reader) checkOperator(n *source.Node, key string) {
	if len(n.Entries) != 1 {
		r.fault(n, key+" has one operator: {all: […]}, {any: […]}, {not: …} or {CONTROL: POSITION}")
		return
	}
	e := n.Entries[0]
	switch e.Key.Text {
	case "all", "any":
		if len(e.Value.Items) == 0 {
			r.fault(e.Value, e.Key.Text+" needs a list")
		}
		for _, item := range e.Value.Items {
			r.checkCondition(item, key)
		}
	case "not":
		r.checkCondition(e.Value, key)
	default:
		r.checkPosition(e.Key, e.Value)
	}
}

// checkPosition reports a control or a position that the kind does not have.
func (r *reader) checkPosition(control, position *source.Node) {
	var names []string
	for _, c := range r.d.controls {
		names = append(names, c.name)
		if c.name != control.Text {
			continue
		}
		for _, p := range c.positions {
			if p == position.Text {
				return
			}
		}
		r.fault(position, fmt.Sprintf("the control %s has no position %s%s", c.name, position.Text,
			source.DidYouMean(position.Text, c.positions)))
		return
	}
	r.fault(control, "no control "+control.Text+" in this kind"+source.DidYouMean(control.Text, names))
}

func (r *reader) conditionNames() []string {
	var names []string
	for _, spec := range r.d.elements {
		if conditionTypes[spec.typ.name] {
			names = append(names, spec.name)
		}
	}
	return names
}
