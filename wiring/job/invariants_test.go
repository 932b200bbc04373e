package job_test

import (
	"slices"

	"github.com/lugwright/lugwright/wiring"
)

// failer is what both testing.TB and rapid.T offer.
type failer interface {
	Errorf(format string, args ...any)
}

// checkHarness holds a harness to what every harness promises.
func checkHarness(t failer, h *wiring.Harness) {
	if len(h.Nodes) == 0 || h.Nodes[wiring.FrameNode].Part != nil {
		t.Errorf("node 0 is not the frame: %v", h.Nodes)
	}
	names := map[string]bool{}
	for _, p := range h.Parts {
		checkName(t, names, p.Designation)
		if h.Part(p.Designation) != p || p.Kind == nil || p.Origin == nil || !p.At.Known() {
			t.Errorf("part %s is not found, or has no kind, origin or place", p.Designation)
		}
		for _, terminal := range p.Terminals {
			checkTerminal(t, h, p, terminal)
		}
	}
	for _, w := range h.Wires {
		checkName(t, names, w.Name())
		checkWire(t, h, w)
	}
	for _, s := range h.States {
		for c, position := range s.Set {
			if !slices.Contains(c.Positions, position) || position == c.Positions[0] {
				t.Errorf("state %s: %s.%s stands at %q of %v", s.Name, c.Part.Designation, c.Name, position, c.Positions)
			}
		}
	}
	for _, s := range h.Stacks {
		if len(s.Wires) != len(s.Terminal.Wires) {
			t.Errorf("stack %s has %d of %d wires", s.Terminal.Ref(), len(s.Wires), len(s.Terminal.Wires))
		}
	}
}

func checkName(t failer, names map[string]bool, name string) {
	if names[wiring.Fold(name)] {
		t.Errorf("two things are called %s", name)
	}
	names[wiring.Fold(name)] = true
}

func checkTerminal(t failer, h *wiring.Harness, p *wiring.Part, terminal *wiring.Terminal) {
	if terminal.Part != p {
		t.Errorf("%s belongs to another part", terminal.Ref())
	}
	nodes := []wiring.NodeID{terminal.Node}
	if terminal.Form.Type == wiring.Port {
		nodes = nil
		for _, pole := range terminal.Poles {
			nodes = append(nodes, pole.Node)
		}
	}
	for _, n := range nodes {
		if n < 0 || int(n) >= len(h.Nodes) || h.Nodes[n].Part != p {
			t.Errorf("%s: node %d is not its own", terminal.Ref(), n)
		}
	}
	for _, w := range terminal.Wires {
		if w.From.Terminal != terminal && w.To.Terminal != terminal {
			t.Errorf("%s lists %s, which does not land there", terminal.Ref(), w.Name())
		}
	}
}

func checkWire(t failer, h *wiring.Harness, w *wiring.Wire) {
	if h.Wire(w.Name()) != w || w.Origin == nil || !w.At.Known() {
		t.Errorf("wire %s is not found, or has no origin or place", w.Name())
	}
	for _, e := range w.Ends() {
		says := 0
		for _, said := range []bool{e.Terminal != nil, e.Capped, e.Loose != "", e.Terminal == nil && !e.Capped && e.Loose == "" && e.Point != ""} {
			if said {
				says++
			}
		}
		if says != 1 {
			t.Errorf("an end of %s says %d things: %+v", w.Name(), says, *e)
		}
		if e.Terminal != nil && (h.Part(e.Terminal.Part.Designation) != e.Terminal.Part || !slices.Contains(e.Terminal.Wires, w)) {
			t.Errorf("%s lands on %s, which does not list it or is gone", w.Name(), e.Terminal.Ref())
		}
	}
	if len(w.Pieces) == 0 {
		t.Errorf("%s has no pieces", w.Name())
	}
	for i, p := range w.Pieces {
		if (i == 0) != (p.Joint == "") {
			t.Errorf("%s: piece %d is joined by %q", w.Name(), i, p.Joint)
		}
	}
}
