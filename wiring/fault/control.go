package fault

import (
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/settle"
)

func switchStuck() *Mode {
	return &Mode{
		ID: "switch-stuck", Title: "switch stuck", Class: Occasional,
		Why: "a return spring, a pedal under the mat, a key switch worn out",
		Find: func(c *Cart) []Fault {
			var all []Fault
			for _, p := range c.Harness.Parts {
				for _, k := range p.Controls {
					if !worksSwitch(p, k) {
						continue
					}
					for _, position := range k.Positions {
						all = append(all, Fault{
							Part: p, Name: p.Designation + " stuck at " + position,
							Stuck: map[*wiring.Control]string{k: position},
						})
					}
				}
			}
			return all
		},
	}
}

// worksSwitch reports whether a control moves contacts of its part: a plug or a pack's own
// button does not stick in the way that a switch does.
func worksSwitch(p *wiring.Part, k *wiring.Control) bool {
	for _, e := range p.Elements {
		if s, ok := e.(*wiring.Switch); ok && s.Control == k {
			return true
		}
	}
	return false
}

func switchOpen() *Mode {
	return &Mode{
		ID: "switch-open", Title: "switch makes no contact", Class: Occasional,
		Why: "burnt or dirty contacts, a spade that slipped off inside",
		Find: func(c *Cart) []Fault {
			return each(c, func(e *wiring.Switch, f *Fault) bool {
				f.Name = called(e) + " makes no contact"
				f.Defects = []settle.Defect{settle.OpenElement(e)}
				return true
			})
		},
	}
}
