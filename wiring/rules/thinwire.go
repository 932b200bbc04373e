package rules

import (
	"fmt"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/rule"
)

// thin finds wires of a limited supply that may carry less than it gives, whatever they
// lead to.
func (u *unfused) thin() {
	for _, w := range u.pass.Harness.Wires {
		n, ok := u.inside(w)
		if !ok {
			continue
		}
		name, carries, weak := weakest(u.pass, []*wiring.Wire{w}, u.supply.Limit)
		if !weak || u.reported(w) {
			continue
		}
		u.pass.Report(diag.Finding{
			Message:  fmt.Sprintf("%s is fed by %s without a fuse and may carry less than that gives", w.Name(), u.name()),
			Detail:   fmt.Sprintf("%s gives up to %v; %s may carry %v.", u.name(), u.supply.Limit, name, carries),
			Advice:   fmt.Sprintf("Put a fuse of at most %v at the beginning of %s, or lay a larger wire.", carries, w.Name()),
			At:       landing(w, n),
			Subjects: subjects([]string{w.Name()}, []string{u.name()}),
		})
	}
}

// inside reports whether the supply feeds a wire without a fuse, and from which node.
func (u *unfused) inside(w *wiring.Wire) (wiring.NodeID, bool) {
	for _, pair := range w.Joins() {
		if u.reach.Has(pair[0]) && u.reach.Has(pair[1]) && !u.pass.Negative(pair[0]) {
			return pair[0], true
		}
	}
	return wiring.NoNode, false
}

func (u *unfused) reported(w *wiring.Wire) bool {
	for _, f := range u.faults {
		for _, on := range f.way.Wires() {
			if on == w && f.level == diag.Error {
				return true
			}
		}
	}
	return false
}

// weakest finds the piece of some wires that may carry least, if that is less than a
// current, and says what it is. What has no known size is said to be not checked.
func weakest(p *rule.Pass, wires []*wiring.Wire, amps quantity.Ampere) (name string, least quantity.Ampere, weak bool) {
	for _, w := range wires {
		for _, piece := range w.Pieces {
			if isPigtail(piece) {
				continue
			}
			if !piece.Size.Known() {
				if !w.Cord() {
					p.NotChecked(w.Name(), "it has no size, so nobody can say what it may carry", w.Span("size"))
				}
				continue
			}
			c, err := pieceCarries(p, w, piece.Size, 0)
			if err != nil {
				p.NotChecked(w.Name(), err.Error(), w.Span("size"))
				continue
			}
			if c.amps < amps && (!weak || c.amps < least) {
				name, least, weak = fmt.Sprintf("%s (%v, %s)", w.Name(), piece.Size, c.basis), c.amps, true
			}
		}
	}
	return name, least, weak
}
