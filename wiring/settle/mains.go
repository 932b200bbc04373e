package settle

import "github.com/lugwright/lugwright/wiring"

// mains makes alternating current present between its poles while its condition holds.
type mains struct {
	unit
	l, n int32 // buses
	when *condition
}

func newMains(e *wiring.Mains, c *compiler) model {
	m := &mains{unit: c.unit(e), l: c.bus(e.L), n: c.bus(e.N)}
	c.mains = append(c.mains, m)
	c.later(func() { m.when = c.condition(e.When) })
	return m
}

func (m *mains) behave(*solving) {}

// holds: the mains is live.
func (m *mains) holds(s *solving) bool { return m.when.true(s) && !s.opened[m.id] }
