package fault

import (
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/settle"
)

func converterDead() *Mode {
	return frozen[*wiring.Converter](Mode{
		ID: "converter-dead", Title: "converter dead", Class: Occasional,
		Why: "its own fuse, heat, or reversed once",
	}, " dead", false, nil)
}

// enables reports whether a sense switches a converter of its own part.
func enables(s *wiring.Sense) bool {
	for _, e := range s.Part.Elements {
		if c, ok := e.(*wiring.Converter); ok && asks(c.When, s) {
			return true
		}
	}
	return false
}

// asks reports whether a condition reads an element.
func asks(w *wiring.Condition, e wiring.Element) bool {
	if w == nil {
		return false
	}
	for _, of := range w.Of {
		if asks(of, e) {
			return true
		}
	}
	return w.Element == e
}

func enableStuck() *Mode {
	return &Mode{
		ID: "enable-stuck", Title: "enable stuck", Class: Rare,
		Why: "the enable input of a reducer that failed",
		Find: func(c *Cart) []Fault {
			var all []Fault
			for _, s := range elements[*wiring.Sense](c.Harness) {
				if !enables(s) {
					continue
				}
				for _, on := range []bool{true, false} {
					word := " enable stuck off"
					if on {
						word = " enable stuck on"
					}
					all = append(all, Fault{
						Part: s.Part, Name: s.Part.Designation + word,
						Defects: []settle.Defect{settle.Stuck(s, on)},
					})
				}
			}
			return all
		},
	}
}

// converterThrough is the most harmful single fault: the whole pack on the 12 V side.
func converterThrough() *Mode {
	return &Mode{
		ID: "converter-through", Title: "converter passes its input", Class: Rare,
		Why: "its switching transistor failed short",
		Find: func(c *Cart) []Fault {
			return each(c, func(e *wiring.Converter, f *Fault) bool {
				f.Name = called(e) + " passes its input to its output"
				f.Defects = []settle.Defect{
					settle.OpenElement(e), // it regulates no more
					settle.Bridge(e.InA, e.OutA, through),
				}
				return true
			})
		},
	}
}

func chargerDead() *Mode {
	return opened[*wiring.Charger](Mode{
		ID: "charger-dead", Title: "charger dead", Class: Occasional,
		Why: "its own fuse, water, or a surge on the line",
	}, " dead", nil)
}

func acDead() *Mode {
	return opened[*wiring.Mains](Mode{
		ID: "ac-dead", Title: "no AC", Class: Common,
		Why: "a breaker or ground-fault outlet that tripped, an extension cord",
	}, ": no AC at the outlet", nil)
}

func packTripped() *Mode {
	return &Mode{
		ID: "pack-tripped", Title: "pack protection tripped", Class: Common,
		Why: "overload, cell too low, too cold to charge, or simply switched off",
		Find: func(c *Cart) []Fault {
			return each(c, func(e *wiring.Source, f *Fault) bool {
				f.Name = called(e) + " protection tripped"
				f.Defects = []settle.Defect{settle.OpenElement(e)}
				return e.Trips > 0 || e.When != nil
			})
		},
	}
}
