package settle

import "github.com/lugwright/lugwright/wiring"

// contactOhms is a closed contact whose file says nothing else.
const contactOhms = 0.0005

type contact struct {
	unit
	coil       int32 // model; -1: none
	restClosed bool
	ohms       float64
}

func newContact(e *wiring.Contact, c *compiler) model {
	k := &contact{unit: c.unit(e, c.branch(e.A, e.B)), restClosed: e.RestClosed, ohms: orElse(float64(e.Ohms), contactOhms)}
	k.coil = -1
	c.later(func() {
		if id, ok := c.modelOf[e.Coil]; ok {
			k.coil = id
		}
	})
	return k
}

func (k *contact) behave(s *solving) {
	if k.holds(s) {
		s.set(k.first, ohmic(k.ohms))
	} else {
		s.set(k.first, law{})
	}
}

// holds: the contact is closed. It leaves its rest while its coil is energised.
func (k *contact) holds(s *solving) bool {
	return k.restClosed != (k.coil >= 0 && s.memory[k.coil])
}
