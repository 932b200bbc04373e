package settle

import "github.com/lugwright/lugwright/wiring"

// condition is a [wiring.Condition] of a compiled network. nil always holds.
type condition struct {
	op       wiring.ConditionOp
	model    int32
	control  int32
	position string
	of       []*condition
}

// condition compiles a condition. All models must be there already. A condition on what
// the harness does not have never holds.
func (c *compiler) condition(w *wiring.Condition) *condition {
	if w == nil {
		return nil
	}
	k := &condition{op: w.Op, position: w.Position, model: -1, control: -1}
	if w.Element != nil {
		if id, ok := c.modelOf[w.Element]; ok {
			k.model = id
		}
	}
	if w.Control != nil {
		k.control = c.control(w.Control)
	}
	for _, of := range w.Of {
		k.of = append(k.of, c.condition(of))
	}
	return k
}

// true evaluates the condition with the memory as it is.
func (k *condition) true(s *solving) bool {
	if k == nil {
		return true
	}
	switch k.op {
	case wiring.Holds:
		return k.model >= 0 && s.network.models[k.model].holds(s)
	case wiring.Set:
		return k.control >= 0 && s.positions[k.control] == k.position
	case wiring.All:
		for _, of := range k.of {
			if !of.true(s) {
				return false
			}
		}
		return true
	case wiring.Any:
		for _, of := range k.of {
			if of.true(s) {
				return true
			}
		}
		return false
	case wiring.Not:
		return len(k.of) == 1 && !k.of[0].true(s)
	}
	return false
}
