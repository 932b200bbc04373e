package settle

import (
	"context"
	"strings"
	"testing"

	"github.com/lugwright/lugwright/wiring"
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
	b.h.Assume.SOC, b.h.Assume.Conductor = 0.5, 20
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

// terminal finds or makes a terminal: "G1.+".
func (b *bench) terminal(ref string) *wiring.Terminal {
	b.node(ref)
	return b.h.Nodes[b.nodes[ref]].Terminal
}

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

// put places an element in a part under a name.
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
		Number: from + "-" + to,
		From:   wiring.End{Terminal: b.terminal(from)},
		To:     wiring.End{Terminal: b.terminal(to)},
		// At 20 C a metre of 1 mm2 has 1/58 ohm.
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

// battery adds a source of so many volts and ohms, G1 from G1.+ to G1.-.
func (b *bench) battery(part string, volts, ohms float64) *wiring.Source {
	return put(b, part+".cells", &wiring.Source{
		A: b.node(part + ".+"), B: b.node(part + ".-"), Volts: quantity.Volt(volts), Ohms: quantity.Ohm(ohms),
	})
}

// resistance adds a resistor inside a part, between two terminals.
func (b *bench) resistance(ref, from, to string, ohms float64) *wiring.Resistor {
	return put(b, ref, &wiring.Resistor{A: b.node(from), B: b.node(to), Ohms: quantity.Ohm(ohms)})
}

// lever adds a control, at rest in its first position.
func (b *bench) lever(part, name string, positions ...string) *wiring.Control {
	c := &wiring.Control{Part: b.part(part), Name: name, Positions: positions}
	c.Part.Controls = append(c.Part.Controls, c)
	return c
}

// key adds an on-off switch between part.in and part.out.
func (b *bench) key(part string) *wiring.Control {
	c := b.lever(part, "key", "off", "on")
	put(b, part+".switch", &wiring.Switch{
		Control: c,
		Closes:  map[string][][]wiring.NodeID{"on": {{b.node(part + ".in"), b.node(part + ".out")}}},
	})
	return c
}

func (b *bench) settle(t testing.TB, set map[*wiring.Control]string) *Point {
	t.Helper()
	return b.settleWith(t, set, Options{})
}

func (b *bench) settleWith(t testing.TB, set map[*wiring.Control]string, o Options) *Point {
	t.Helper()
	p, err := State(context.Background(), b.h, &wiring.State{Name: "test", Set: set}, o)
	if err != nil {
		t.Fatal(err)
	}
	checkResiduals(t, p)
	return p
}

// checkResiduals holds every point to the equations.
func checkResiduals(t testing.TB, p *Point) {
	t.Helper()
	if p.Outcome == NoSolution {
		return
	}
	if p.Residual.KCL > 1e-9 || p.Residual.Power > 1e-9 {
		t.Errorf("residuals %v", p.Residual)
	}
}

// settled fails unless the point is settled.
func settled(t testing.TB, p *Point) {
	t.Helper()
	if p.Outcome != Settled {
		t.Fatalf("%v: %s", p.Outcome, p.Why)
	}
}

// near fails unless a value is what was computed by hand.
func near[T ~float64](t testing.TB, what string, got, want T) {
	t.Helper()
	d := float64(got - want)
	if d < 0 {
		d = -d
	}
	scale := max(float64(want), -float64(want), 1e-9)
	if !(d <= 1e-9*scale) {
		t.Errorf("%s is %v, want %v", what, float64(got), float64(want))
	}
}

// holdsWhen is the condition that an element holds.
func holdsWhen(e wiring.Element) *wiring.Condition {
	return &wiring.Condition{Op: wiring.Holds, Element: e}
}

func stands(c *wiring.Control, position string) *wiring.Condition {
	return &wiring.Condition{Op: wiring.Set, Control: c, Position: position}
}

func combined(op wiring.ConditionOp, of ...*wiring.Condition) *wiring.Condition {
	return &wiring.Condition{Op: op, Of: of}
}
