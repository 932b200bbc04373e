package position_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/job"
	"github.com/lugwright/lugwright/wiring/path/pathtest"
	"github.com/lugwright/lugwright/wiring/position"
	"github.com/lugwright/lugwright/wiring/settle"
)

// example loads one of the carts that ship.
func example(t testing.TB, name string) *wiring.Harness {
	t.Helper()
	h, findings, err := job.Load("../../examples/tern-point/jobs/"+name+".yaml", job.Options{})
	if err != nil || h == nil {
		t.Fatalf("%s cannot be read: %v\n%v", name, err, findings)
	}
	return h
}

// land moves the end of a wire that is on one terminal to another.
func land(t testing.TB, h *wiring.Harness, wire, off, on string) {
	t.Helper()
	w := h.Wire(wire)
	if w == nil {
		t.Fatalf("no wire %s", wire)
	}
	from, to := terminal(t, h, off), terminal(t, h, on)
	for _, end := range w.Ends() {
		if end.Terminal == from {
			end.Terminal = to
			from.Wires = slices.DeleteFunc(from.Wires, func(x *wiring.Wire) bool { return x == w })
			to.Wires = append(to.Wires, w)
			return
		}
	}
	t.Fatalf("%s is not on %s", wire, off)
}

// lay adds a wire of unknown length and size.
func lay(t testing.TB, h *wiring.Harness, number, from, to string) {
	t.Helper()
	w := &wiring.Wire{Number: number, From: wiring.End{Terminal: terminal(t, h, from)}, To: wiring.End{Terminal: terminal(t, h, to)}}
	for _, end := range w.Ends() {
		end.Terminal.Wires = append(end.Terminal.Wires, w)
	}
	h.Wires = append(h.Wires, w)
	h.Index()
}

func terminal(t testing.TB, h *wiring.Harness, ref string) *wiring.Terminal {
	t.Helper()
	found := h.Terminal(ref)
	if found == nil {
		t.Fatalf("no terminal %s", ref)
	}
	return found
}

func control(t testing.TB, h *wiring.Harness, ref string) *wiring.Control {
	t.Helper()
	part, name, _ := strings.Cut(ref, ".")
	if p := h.Part(part); p != nil {
		for _, c := range p.Controls {
			if c.Name == name {
				return c
			}
		}
	}
	t.Fatalf("no control %s", ref)
	return nil
}

// bench builds a small cart as package pathtest writes it. Coils pull in at 8 V and drop out
// at 2 V; loads work from 8 V up.
func bench(t testing.TB, text string) *wiring.Harness {
	t.Helper()
	h := pathtest.Harness(t, text)
	for _, p := range h.Parts {
		for _, e := range p.Elements {
			switch e := e.(type) {
			case *wiring.Coil:
				e.PullIn, e.DropOut = 8, 2
			case *wiring.Load:
				e.Works.Low = 8
			}
		}
	}
	return h
}

func check(t testing.TB, h *wiring.Harness, p *position.Property, o position.CheckOptions) position.Result {
	t.Helper()
	r, err := position.Check(t.Context(), position.NewCart(h, nil), p, o)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// shown is a counterexample as tests write it.
type shown struct{ Subject, State string }

func shownOf(r position.Result) []shown {
	var all []shown
	for _, x := range r.Counterexamples {
		all = append(all, shown{x.Subject, x.State.Name})
	}
	return all
}

// ways lists the ways of a counterexample: "U1.run: G1.+ - W1 - U1.run".
func ways(x position.Counterexample) []string {
	var all []string
	for _, w := range x.Ways {
		text := w.Feed.String()
		if w.What != "" {
			text = w.What + ": " + text
		}
		if len(w.Back.Steps) > 0 {
			text += " / " + w.Back.String()
		}
		all = append(all, text)
	}
	return all
}

var settleOptions settle.Options
