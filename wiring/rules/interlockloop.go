package rules

import (
	"fmt"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/rule"
)

// judgeLoop judges an interlock that is a loop between two pins of a device: closed where
// the cart should move, and clear of every positive.
func judgeLoop(p *rule.Pass) {
	out, back, ok := loopPins(p.Harness)
	if !ok {
		return
	}
	l := loop{pass: p, out: out, back: back}
	need := interlockNeed{kind: wiring.InterlockLoop, nodes: []wiring.NodeID{back.Node}}
	if failed := movingStates(p, func(s path.Setting) bool {
		return need.met(p.Graph.From(need.clean(s), out.Node))
	}); len(failed) > 0 {
		l.report(fmt.Sprintf("the interlock loop from %s to %s is open", out.Ref(), back.Ref()),
			fmt.Sprintf("In the state %s no conductors, fuses and closed lockout contacts join the two, so the cart does not move.", failed[0].name),
			"Join the two pins, best through the charger's lockout contact.")
	}
	if s, way, ok := l.positive(); ok {
		l.report(fmt.Sprintf("the interlock loop from %s to %s is on %s", out.Ref(), back.Ref(), volts(s.Top().Full)),
			fmt.Sprintf("It comes by %s, and destroys an input made for a few volts.", way),
			"Take the positive off the loop: its two pins are joined with each other only.")
	}
}

// loopPins are the two pins that must be joined: of a declared loop, else those that
// layers name with the points lockout and lockout-return.
func loopPins(h *wiring.Harness) (out, back *wiring.Terminal, ok bool) {
	if il := h.Interlock; il != nil && il.Kind == wiring.InterlockLoop && len(il.Terminals) == 2 {
		return il.Terminals[0], il.Terminals[1], true
	}
	out, first := pointTerminal(h, "lockout")
	back, second := pointTerminal(h, "lockout-return")
	return out, back, first && second
}

// positive finds a supply whose positive is on either pin without anything in between that
// would limit it.
func (l *loop) positive() (*path.Supply, path.Path, bool) {
	p := l.pass
	for _, s := range p.Supplies() {
		reach := p.Graph.From(path.Through{Sorts: path.Conducting}.Until(p.Negative), s.Plus)
		for _, t := range []*wiring.Terminal{l.out, l.back} {
			if way, ok := reach.To(t.Node); ok && !p.Negative(t.Node) {
				return s, way, true
			}
		}
	}
	return nil, path.Path{}, false
}

type loop struct {
	pass      *rule.Pass
	out, back *wiring.Terminal
}

// report points at the wire on either pin that the latest layer laid.
func (l *loop) report(message, detail, advice string) {
	at, best := l.out.Part.At, -1
	names := []string{l.out.Ref(), l.back.Ref()}
	for _, t := range []*wiring.Terminal{l.out, l.back} {
		for _, w := range t.Wires {
			names = append(names, w.Name())
			if layer := latest(l.pass.Harness, w); layer >= best {
				at, best = landing(w, t.Node), layer
			}
		}
	}
	l.pass.Report(diag.Finding{Message: message, Detail: detail, Advice: advice, At: at,
		Related: defined(l.out.Part.Designation, l.out.Part.At), Subjects: subjects(names, []string{l.out.Part.Designation})})
}
