package position

import (
	"slices"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/settle"
)

// Axis is one control and the positions that it takes. The first one is its rest.
type Axis struct {
	Control   *wiring.Control
	Positions []string
}

// axes lists the controls of a harness with all of their positions, in the order of
// parts. A control without positions is none.
func axes(h *wiring.Harness) []Axis {
	var all []Axis
	for _, p := range h.Parts {
		for _, c := range p.Controls {
			if len(c.Positions) > 0 {
				all = append(all, Axis{c, c.Positions})
			}
		}
	}
	return all
}

// within reports whether another axis takes every position that a takes.
func (a Axis) within(b Axis) bool {
	return a.Control == b.Control && !slices.ContainsFunc(a.Positions, func(p string) bool { return !slices.Contains(b.Positions, p) })
}

// readers are the things that a control acts through.
type readers struct {
	switches []*wiring.Switch
	asked    []string // positions that conditions ask for
}

// readersOf finds what reads each control of a harness.
func readersOf(h *wiring.Harness) map[*wiring.Control]*readers {
	all := map[*wiring.Control]*readers{}
	of := func(c *wiring.Control) *readers {
		if all[c] == nil {
			all[c] = &readers{}
		}
		return all[c]
	}
	for _, p := range h.Parts {
		for _, e := range p.Elements {
			if s, ok := e.(*wiring.Switch); ok {
				of(s.Control).switches = append(of(s.Control).switches, s)
			}
			eachSetting(settle.WaitsFor(e), func(c *wiring.Condition) {
				of(c.Control).asked = append(of(c.Control).asked, c.Position)
			})
		}
	}
	return all
}

// eachSetting calls f with each leaf of a condition that asks where a control stands.
func eachSetting(c *wiring.Condition, f func(*wiring.Condition)) {
	if c == nil {
		return
	}
	if c.Op == wiring.Set {
		f(c)
	}
	for _, of := range c.Of {
		eachSetting(of, f)
	}
}

// alike reports whether everything that reads a control does the same in two positions.
func (r *readers) alike(a, b string) bool {
	if r == nil {
		return true
	}
	for _, s := range r.switches {
		if !slices.EqualFunc(s.Closes[a], s.Closes[b], slices.Equal) {
			return false
		}
	}
	for _, asked := range r.asked {
		if (asked == a) != (asked == b) {
			return false
		}
	}
	return true
}

// distinct leaves one of positions that read alike, the one that is listed first.
func (a Axis) distinct(r *readers) Axis {
	d := Axis{Control: a.Control}
	for _, p := range a.Positions {
		if !slices.ContainsFunc(d.Positions, func(q string) bool { return r.alike(p, q) }) {
			d.Positions = append(d.Positions, p)
		}
	}
	return d
}
