package kind

import (
	"fmt"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/source"
)

// waitable reports whether a condition may name an element of the type: a sense (true), a
// coil (energised), a driver (closed), a converter or charger (running).
func waitable(t *elementType) bool {
	switch t {
	case &senseType, &coilType, &driverType, &converterType, &chargerType:
		return true
	}
	return false
}

const conditionForms = "{all: […]}, {any: […]}, {not: …} or {CONTROL: POSITION}"

// checkCondition reports what is wrong with a condition as it is written.
func (r *reader) checkCondition(spec *elementSpec, n *source.Node, key string) {
	switch n.Kind {
	case source.Scalar:
		named := r.named(n.Text)
		if named == nil || !waitable(named.typ) {
			r.fault(n, fmt.Sprintf("%s names %s, which is no sense, coil, driver, converter or charger of this kind%s",
				key, n.Text, source.DidYouMean(n.Text, r.elementNames(waitable))))
			return
		}
		r.checkStep(spec, named, n)
	case source.Map:
		r.checkOperator(spec, n, key)
	case source.List:
		r.fault(n, key+" is a name, or one of "+conditionForms, "If all of these must hold: {all: […]}")
	}
}

func (r *reader) checkOperator(spec *elementSpec, n *source.Node, key string) {
	if len(n.Entries) != 1 {
		r.fault(n, key+" has one operator: "+conditionForms)
		return
	}
	e := n.Entries[0]
	switch e.Key.Text {
	case "all", "any":
		items := r.items(e.Value, e.Key.Text, "[run, key]")
		if e.Value.Kind == source.List && len(items) == 0 {
			r.fault(e.Value, e.Key.Text+" of nothing: name at least one")
		}
		for _, item := range items {
			r.checkCondition(spec, item, key)
		}
	case "not":
		r.checkCondition(spec, e.Value, key)
	default:
		r.checkSetting(e)
	}
}

// checkSetting reports a control or a position that the kind does not have.
func (r *reader) checkSetting(e source.Entry) {
	if _, ok := r.d.control(e.Key.Text); !ok {
		r.fault(e.Key, "no control "+e.Key.Text+" in this kind"+
			source.DidYouMean(e.Key.Text, append(r.d.controlNames(), "all", "any", "not")))
		return
	}
	if r.text(e.Value, e.Key.Text) != "" {
		r.checkPosition(e.Key.Text, e.Value)
	}
}

// when makes the condition of a parameter; nil if it is not given. What it names is
// resolved when all elements are made, so that elements may name later ones.
func (a *args) when(name string) *wiring.Condition {
	n, _ := a.param(name)
	if n == nil {
		return nil
	}
	c := &wiring.Condition{}
	a.later(func() bool { return a.resolve(n, c) })
	return c
}

// resolve fills c from what is written at n, which has been checked. It fails if an
// element is named that could not be made.
func (a *args) resolve(n *source.Node, c *wiring.Condition) bool {
	if n.Kind == source.Scalar {
		c.Op, c.Element = wiring.Holds, a.named(n.Text)
		return c.Element != nil
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
		c.Op, c.Control, c.Position = wiring.Set, a.b.control(e.Key.Text), e.Value.Text
		return c.Control != nil
	}
	c.Of = make([]*wiring.Condition, len(of))
	for i, item := range of {
		c.Of[i] = &wiring.Condition{}
		if !a.resolve(item, c.Of[i]) {
			return false
		}
	}
	return true
}

// named is an element by its name, or the one of this repetition where that is repeated.
func (a *args) named(name string) wiring.Element {
	if e, ok := a.b.elements[name]; ok {
		return e
	}
	return a.b.elements[numbered(name, a.number)]
}
