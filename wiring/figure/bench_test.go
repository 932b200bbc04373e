package figure

import (
	"math"
	"os"
	"strings"
	"testing"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/job"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// bench is a harness that is put together by hand. Terminals, and the parts that they are
// on, come into being when they are first named.
type bench struct {
	h     *wiring.Harness
	parts map[string]*wiring.Part
	nodes map[string]wiring.NodeID
}

func newBench() *bench {
	b := &bench{
		h:     &wiring.Harness{Nodes: []wiring.Node{{Name: "frame"}}},
		parts: map[string]*wiring.Part{},
		nodes: map[string]wiring.NodeID{"frame": wiring.FrameNode},
	}
	b.h.Assume.SOC, b.h.Assume.Conductor, b.h.Assume.Ambient = 0.5, 20, 40
	return b
}

func (b *bench) part(designation string) *wiring.Part {
	p := b.parts[designation]
	if p == nil {
		p = &wiring.Part{Designation: designation, Kind: &wiring.Kind{}}
		b.parts[designation] = p
		b.h.Parts = append(b.h.Parts, p)
	}
	return p
}

// node finds or makes a terminal, "G1.+", and returns its node.
func (b *bench) node(ref string) wiring.NodeID {
	if id, ok := b.nodes[ref]; ok {
		return id
	}
	designation, name, _ := strings.Cut(ref, ".")
	p := b.part(designation)
	id := wiring.NodeID(len(b.h.Nodes))
	t := &wiring.Terminal{Part: p, Name: name, Node: id, Form: wiring.Form{Type: wiring.Stud}}
	p.Terminals = append(p.Terminals, t)
	b.h.Nodes = append(b.h.Nodes, wiring.Node{Part: p, Terminal: t, Name: name})
	b.nodes[ref] = id
	return id
}

func (b *bench) terminal(ref string) *wiring.Terminal { return b.h.Nodes[b.node(ref)].Terminal }

// put places an element in a part under a name: "G1.cells".
func put[E wiring.Element](b *bench, ref string, e E) E {
	designation, name, _ := strings.Cut(ref, ".")
	p := b.part(designation)
	e.Base().Part, e.Base().Name = p, name
	p.Elements = append(p.Elements, e)
	return e
}

// wire joins two terminals by so many ohms.
func (b *bench) wire(from, to string, ohms float64) *wiring.Wire {
	w := &wiring.Wire{
		Number: from + " to " + to,
		From:   wiring.End{Terminal: b.terminal(from)},
		To:     wiring.End{Terminal: b.terminal(to)},
		// At 20 C a metre of 1 mm2 has 1/58 ohm (IEC 28).
		Pieces: []wiring.Piece{{
			Size:   quantity.Size{System: quantity.MM2, Number: 1},
			Length: quantity.Amount{Value: ohms * 58, Dimension: quantity.Length},
		}},
	}
	b.h.Wires = append(b.h.Wires, w)
	for _, t := range []*wiring.Terminal{w.From.Terminal, w.To.Terminal} {
		t.Wires = append(t.Wires, w)
	}
	return w
}

// source adds a battery, G1 from G1.+ to G1.-.
func (b *bench) source(part string, volts, ohms float64) *wiring.Source {
	return put(b, part+".cells", &wiring.Source{
		A: b.node(part + ".+"), B: b.node(part + ".-"), Volts: quantity.Volt(volts), Ohms: quantity.Ohm(ohms),
	})
}

func (b *bench) resistor(ref, from, to string, ohms float64) *wiring.Resistor {
	return put(b, ref, &wiring.Resistor{A: b.node(from), B: b.node(to), Ohms: quantity.Ohm(ohms)})
}

func (b *bench) fuse(part string, rating, ohms float64) *wiring.Fuse {
	return put(b, part+".fuse", &wiring.Fuse{
		A: b.node(part + ".in"), B: b.node(part + ".out"), Fitted: true,
		Rating: quantity.Ampere(rating), Ohms: quantity.Ohm(ohms), Style: "10x38",
	})
}

// lever adds a control, at rest in its first position.
func (b *bench) lever(part, name string, positions ...string) *wiring.Control {
	c := &wiring.Control{Part: b.part(part), Name: name, Positions: positions}
	c.Part.Controls = append(c.Part.Controls, c)
	return c
}

// key adds an on-off switch between two terminals of a part.
func (b *bench) key(part, name string) *wiring.Control {
	c := b.lever(part, name, "off", "on")
	put(b, part+".switch", &wiring.Switch{
		Control: c,
		Closes:  map[string][][]wiring.NodeID{"on": {{b.node(part + ".in"), b.node(part + ".out")}}},
	})
	return c
}

// state is a state in which these controls are on.
func state(on ...*wiring.Control) *wiring.State {
	s := &wiring.State{Name: "test", Set: map[*wiring.Control]string{}}
	for _, c := range on {
		s.Set[c] = "on"
	}
	return s
}

// cart indexes the harness and makes it ready.
func (b *bench) cart() *Cart { return New(b.h.Index(), nil) }

// near compares two quantities of one type within a relative tolerance of 1e-6.
func near[Q ~float64](t testing.TB, what string, got, want Q) {
	t.Helper()
	within(t, what, got, want, Q(1e-6*math.Abs(float64(want))+1e-12))
}

func within[Q ~float64](t testing.TB, what string, got, want, tolerance Q) {
	t.Helper()
	if diff := math.Abs(float64(got - want)); !(diff <= float64(tolerance)) {
		t.Errorf("%s is %v, want %v within %v", what, float64(got), float64(want), float64(tolerance))
	}
}

// example loads one of the example jobs.
func example(t testing.TB, name string) *wiring.Harness {
	t.Helper()
	h, findings, err := job.Load("jobs/"+name+".yaml", job.Options{FS: os.DirFS("../../examples/tern-point")})
	if err != nil || h == nil {
		t.Fatalf("%s cannot be read: %v %v", name, err, findings)
	}
	return h
}
