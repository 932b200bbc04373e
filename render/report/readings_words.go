package report

import (
	"fmt"
	"slices"
	"strings"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/meter"
)

// alike is what several states have in common.
type alike struct {
	states []string
	lines  []string
}

// merged puts together the states of which the same is to be said, in the order of the
// first of each; states of which there is nothing to say are left out.
func merged(sheets []*meter.Sheet, words func(*meter.Sheet) []string) []alike {
	var all []alike
	for _, s := range sheets {
		lines := words(s)
		if len(lines) == 0 {
			continue
		}
		i := slices.IndexFunc(all, func(a alike) bool { return slices.Equal(a.lines, lines) })
		if i < 0 {
			i = len(all)
			all = append(all, alike{lines: lines})
		}
		all[i].states = append(all[i].states, oneLine(s.State.Name))
	}
	return all
}

// listed sets words as a sentence does: "a, b and c".
func listed(words []string, and string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	last := len(words) - 1
	return strings.Join(words[:last], ", ") + " " + and + " " + words[last]
}

// breaker puts into words where ways are cut, and what things wait for.
type breaker struct{ bench *meter.Bench }

// cut is a break in a few words: "cut at S1 (at off, needs on)".
func (b breaker) cut(c *meter.Break) string {
	name := oneLine(b.elementName(c.Element))
	switch e := c.Element.(type) {
	case *wiring.Switch:
		return fmt.Sprintf("cut at %s (at %s, needs %s)", name, oneLine(c.Stands), oneLine(listed(c.Needs, "or")))
	case *wiring.Fuse:
		return "cut at " + name + " (fuse blown)"
	case *wiring.Contact:
		if e.RestClosed {
			return "cut at " + name + " (contact opened)"
		}
		return "cut at " + name + " (contact open)"
	case *wiring.Driver:
		return "cut at " + name + " (output off)"
	case *wiring.Source:
		return name + " gives nothing"
	}
	return name + " does not run"
}

// elementName is the part alone where it has one element of that sort that can be open.
func (b breaker) elementName(e wiring.Element) string {
	part, same := e.Base().Part, 0
	for _, other := range part.Elements {
		if other.Type() == e.Type() {
			same++
		}
	}
	if _, driver := e.(*wiring.Driver); same == 1 && !driver {
		return part.Designation
	}
	return e.Base().Ref()
}

// wants tells what is waited for, one line each, and what stands behind it further in. The
// two sides of a coil have a line each.
func (b breaker) wants(margin string, all []meter.Want) []string {
	var lines []string
	for _, w := range all {
		line := margin + oneLine(b.want(w))
		if _, coil := w.Element.(*wiring.Coil); coil {
			lines = append(lines, line)
			lines = append(lines, b.side(margin+"  ", "feed ", w.Break)...)
			lines = append(lines, b.side(margin+"  ", "way back ", w.Return)...)
			continue
		}
		if w.Break != nil {
			line += ": " + b.cut(w.Break)
		}
		lines = append(lines, line)
		if w.Break != nil {
			lines = append(lines, b.wants(margin+"  ", w.Break.Wants)...)
		}
	}
	return lines
}

// side tells where one side of a coil is cut, if it is.
func (b breaker) side(margin, which string, c *meter.Break) []string {
	if c == nil {
		return nil
	}
	if c.Supply {
		which = "no feed: "
	}
	return append([]string{margin + which + b.cut(c)}, b.wants(margin+"  ", c.Wants)...)
}

// want is one condition: "U1.interlock sees 0.0 V, needs 24 V".
func (b breaker) want(w meter.Want) string {
	switch {
	case w.Control != nil && w.Must:
		return fmt.Sprintf("%s is at %s, needs %s", w.Name, w.Stands, w.Needs)
	case w.Control != nil:
		return fmt.Sprintf("%s is at %s, must leave it", w.Name, w.Stands)
	case w.At == wiring.NoNode && w.Must:
		return w.Name + " is off, must be on"
	case w.At == wiring.NoNode:
		return w.Name + " is on, must be off"
	}
	return fmt.Sprintf("%s sees %s V, %s", w.Name, meter.Tenths(w.Sees), threshold(w))
}

func threshold(w meter.Want) string {
	v, from := w.Above, "from"
	if v == 0 {
		v, from = w.Below, "up to"
	}
	switch {
	case !w.Must:
		return fmt.Sprintf("must not act, acts %s %v", from, v)
	case from == "up to":
		return fmt.Sprintf("needs %v or less", v)
	}
	return fmt.Sprintf("needs %v", v)
}
