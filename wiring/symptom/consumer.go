package symptom

import (
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/fault"
	"github.com/lugwright/lugwright/wiring/settle"
)

// isConsumer reports whether an owner notices a part: it has a load, does not move the cart,
// and works no controller.
func isConsumer(p *wiring.Part) bool {
	_, load := settle.WhatTurnsOn(p).(*wiring.Load)
	if !load || p.Kind == nil || p.Kind.Traction {
		return false
	}
	for _, e := range p.Elements {
		switch e.(type) {
		case *wiring.Driver, *wiring.Source:
			return false
		}
	}
	return true
}

// group is the consumers behind one converter that are on in some state while nothing is
// wrong, by index of part.
func (v *View) group(f fault.Fed) []int {
	var all []int
	for k, p := range v.Cart.Harness.Parts {
		if !isConsumer(p) || !f.Parts[p] {
			continue
		}
		for i := range v.Healthy {
			if v.Healthy[i].On[k] {
				all = append(all, k)
				break
			}
		}
	}
	return all
}

// allDead reports whether everything of a group that should be on in a state is off, and
// that is more than one thing.
func (v *View) allDead(group []int, i int) bool {
	should, does := 0, 0
	for _, k := range group {
		if v.Healthy[i].On[k] {
			should++
			if v.Now[i].On[k] {
				does++
			}
		}
	}
	return should > 1 && does == 0
}

func twelveDead() *Symptom {
	return &Symptom{
		ID: "twelve-dead", Severity: Loss, Says: "everything on 12 V is dead",
		Find: func(v *View) []Complaint {
			for _, f := range v.Cart.Fed() {
				group := v.group(f)
				for i := range v.Now {
					if v.allDead(group, i) {
						return []Complaint{{State: v.Now[i].State}}
					}
				}
			}
			return nil
		},
	}
}

func consumerDead() *Symptom {
	return &Symptom{
		ID: "consumer-dead", Severity: Loss, Says: "%s is dead",
		Find: func(v *View) []Complaint {
			dead := map[int]bool{} // all of a group together is one complaint
			for _, f := range v.Cart.Fed() {
				group := v.group(f)
				for i := range v.Now {
					for _, k := range group {
						dead[k] = dead[k] || v.allDead(group, i)
					}
				}
			}
			return v.parts(func(part int, was, now *fault.Seen) bool {
				return isConsumer(v.Cart.Harness.Parts[part]) && !dead[part] && was.On[part] && !now.On[part]
			})
		},
	}
}

func consumerStays() *Symptom {
	return &Symptom{
		ID: "consumer-stays-on", Severity: Loss, Says: "%s is on when it should be off",
		Find: func(v *View) []Complaint {
			return v.parts(func(part int, was, now *fault.Seen) bool {
				return isConsumer(v.Cart.Harness.Parts[part]) && !was.On[part] && now.On[part]
			})
		},
	}
}
