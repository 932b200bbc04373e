package list

import (
	"slices"
	"strings"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/handbook"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/stack"
)

// Post is a stud with the lugs on it.
type Post struct {
	Terminal *wiring.Terminal
	Lugs     []stack.Lug // from the face outwards
	Stated   bool        // the job states the order
	Stud     handbook.Stud
	Known    bool                 // the stud's thread is known, and Stud holds what belongs to it
	Torque   quantity.NewtonMetre // as the kind states it; 0: ask the maker
	Cover    bool                 // a post of a battery, which must be covered
}

// Posts lists the studs on which lugs land, in the order of parts and terminals. amps tells
// the currents by which lugs of one size are ordered; nil: not known.
func Posts(h *wiring.Harness, t *handbook.Tables, amps stack.Amps) []Post {
	var all []Post
	for _, p := range h.Parts {
		for _, term := range p.Terminals {
			if term.Form.Type != wiring.Stud || len(term.Wires) == 0 {
				continue
			}
			post := Post{Terminal: term, Lugs: stack.Of(h, term, t, amps), Torque: term.Torque, Cover: isBattery(p)}
			post.Stated = slices.ContainsFunc(post.Lugs, func(l stack.Lug) bool { return l.Stated })
			if thread, err := quantity.ParseThread(term.Form.Size); err == nil {
				post.Stud, err = t.Stud(thread)
				post.Known = err == nil
			}
			all = append(all, post)
		}
	}
	return all
}

func isBattery(p *wiring.Part) bool {
	return slices.ContainsFunc(p.Elements, func(e wiring.Element) bool { _, ok := e.(*wiring.Source); return ok })
}

// Hole is the hole of a lug as its words name it, "ring M8": the fine clearance hole of ISO
// 273 for the thread. It reports false for a lug without one.
func Hole(t *handbook.Tables, lug string) (quantity.Metre, bool) {
	_, size, ok := strings.Cut(lug, " ")
	if !ok {
		return 0, false
	}
	thread, err := quantity.ParseThread(size)
	if err != nil {
		return 0, false
	}
	l, err := t.LugFor(thread)
	if err != nil {
		return 0, false
	}
	return l.Hole, true
}
