package settle

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/lugwright/lugwright/wiring"
)

// deck writes a harness at a point as an ngspice netlist, from the values of its elements
// and the states in which the point leaves them. Consumers, diodes and supplies are
// written as their whole characteristics, so that ngspice has to find for itself on which
// piece of it each stands.
type deck struct {
	bytes.Buffer
	p     *Point
	alias map[wiring.NodeID]wiring.NodeID
	count int

	firmly disjoint // nodes that something holds together whichever way the current goes
}

func newDeck(p *Point) *deck {
	d := &deck{p: p, alias: map[wiring.NodeID]wiring.NodeID{}, firmly: newDisjoint(len(p.net.harness.Nodes))}
	d.WriteString("* written by the tests of package settle\n")
	h := p.net.harness
	for _, part := range h.Parts {
		for _, e := range part.Elements {
			if l, ok := e.(*wiring.Link); ok {
				for _, n := range l.Join[1:] {
					d.merge(l.Join[0], n)
				}
			}
		}
	}
	for _, w := range h.Wires {
		ohms, _ := p.WireOhms(w)
		for _, pair := range w.Joins() {
			d.resistor(pair[0], pair[1], float64(ohms))
		}
	}
	for _, part := range h.Parts {
		for _, e := range part.Elements {
			d.element(e)
		}
	}
	return d
}

func (d *deck) merge(a, b wiring.NodeID) {
	d.holds(a, b)
	if a, b = d.find(a), d.find(b); a != b {
		d.alias[b] = a
	}
}

func (d *deck) find(n wiring.NodeID) wiring.NodeID {
	for {
		next, ok := d.alias[n]
		if !ok {
			return n
		}
		n = next
	}
}

func (d *deck) name(n wiring.NodeID) string {
	n = d.find(n)
	if n == d.find(d.p.ReferenceNode()) {
		return "0"
	}
	return "n" + strconv.Itoa(int(n))
}

func (d *deck) line(letter, format string, args ...any) {
	d.count++
	fmt.Fprintf(d, "%s%d ", letter, d.count)
	fmt.Fprintf(d, format+"\n", args...)
}

func (d *deck) resistor(a, b wiring.NodeID, ohms float64) {
	d.holds(a, b)
	if d.name(a) != d.name(b) {
		d.line("R", "%s %s %.17g", d.name(a), d.name(b), max(ohms, least))
	}
}

// current is a current from a to b that is an expression of voltages.
func (d *deck) current(a, b wiring.NodeID, expression string) {
	d.line("B", "%s %s I = %s", d.name(a), d.name(b), expression)
}

func (d *deck) v(a, b wiring.NodeID) string { return "V(" + d.name(a) + "," + d.name(b) + ")" }

func (d *deck) element(e wiring.Element) {
	p := d.p
	if p.ElementAmps(e) != 0 {
		switch e := e.(type) {
		case *wiring.Load:
			d.holds(e.A, e.B)
		case *wiring.Diode:
			d.holds(e.A, e.B)
		case *wiring.Charger:
			d.holds(e.A, e.B)
		case *wiring.Converter:
			d.holds(e.OutA, e.OutB)
		}
	}
	switch e := e.(type) {
	case *wiring.Resistor:
		d.resistor(e.A, e.B, float64(e.Ohms))
	case *wiring.Fuse:
		if p.Holds(e) {
			d.resistor(e.A, e.B, orElse(float64(e.Ohms), 0.08/float64(e.Rating)))
		}
	case *wiring.Switch:
		for _, group := range e.Closes[p.Position(e.Control)] {
			for _, n := range group[1:] {
				d.resistor(group[0], n, orElse(float64(e.Ohms), 0.005))
			}
		}
	case *wiring.Coil:
		if e.Hold > 0 && p.Holds(e) {
			d.load(e.A, e.B, float64(e.Hold), 0, float64(e.DropOut), false)
		} else {
			d.resistor(e.A, e.B, float64(e.Ohms))
		}
	case *wiring.Contact:
		if p.Holds(e) {
			d.resistor(e.A, e.B, orElse(float64(e.Ohms), 0.0005))
		}
	case *wiring.Diode:
		drop, ohms := orElse(float64(e.Drop), 0.7), orElse(float64(e.Ohms), 0.01)
		d.current(e.A, e.B, fmt.Sprintf("max(0, (%s - %.17g) * %.17g)", d.v(e.A, e.B), drop, 1/ohms))
	case *wiring.Source:
		if p.Holds(e) {
			d.source(e)
		}
	case *wiring.Charger:
		if p.Holds(e) {
			d.current(e.B, e.A, d.regulated(e.A, e.B, float64(e.End), 0.01, float64(e.Amps)))
		} else {
			d.load(e.A, e.B, 0, float64(e.Standby), float64(e.End)/2, false)
		}
	case *wiring.Converter:
		d.converter(e)
	case *wiring.Load:
		if p.Holding(e.When) {
			switch e.Law {
			case wiring.Resistive:
				d.resistive(e)
			case wiring.ConstantPower:
				d.load(e.A, e.B, float64(e.Watts), 0, float64(e.Works.Low), e.Polarised)
			case wiring.ConstantCurrent:
				d.load(e.A, e.B, 0, float64(e.Amps), float64(e.Works.Low), e.Polarised)
			}
		}
	case *wiring.Sense:
		if !e.AC {
			d.resistor(e.At, e.To, orElse(float64(e.Ohms), 1e6))
		}
	case *wiring.Driver:
		if p.Holds(e) {
			d.resistor(e.A, e.B, orElse(float64(e.Ohms), 0.02))
		}
	}
}

func (d *deck) source(e *wiring.Source) {
	volts := OpenCircuit(e, d.p.net.harness.Assume.SOC)
	inner := fmt.Sprintf("s%d", d.count)
	d.holds(e.A, e.B)
	d.line("V", "%s %s %.17g", inner, d.name(e.B), float64(volts))
	d.line("R", "%s %s %.17g", inner, d.name(e.A), float64(e.Ohms))
}

func (d *deck) resistive(e *wiring.Load) {
	if e.Polarised {
		d.current(e.A, e.B, fmt.Sprintf("max(0, %s * %.17g)", d.v(e.A, e.B), 1/float64(e.Ohms)))
		return
	}
	d.resistor(e.A, e.B, float64(e.Ohms))
}

// load is a consumer with a band, as the format's table of elements has it.
func (d *deck) load(a, b wiring.NodeID, watts, amps, low float64, polarised bool) {
	v := d.v(a, b)
	below := fmt.Sprintf("%s * %.17g", v, watts/(low*low)+amps/low)
	above := fmt.Sprintf("(%.17g / %s + %.17g * sgn(%s))", watts, v, amps, v)
	expression := fmt.Sprintf("(abs(%s) >= %.17g) ? %s : %s", v, low, above, below)
	if !polarised && (watts > 0 || amps > 0) {
		d.holds(a, b)
	}
	if polarised {
		expression = fmt.Sprintf("(%s < 0) ? 0 : (%s)", v, expression)
	}
	d.current(a, b, expression)
}

// regulated is the current that a regulated output delivers.
func (d *deck) regulated(a, b wiring.NodeID, volts, ohms, amps float64) string {
	expression := fmt.Sprintf("max(0, (%.17g - %s) * %.17g)", volts, d.v(a, b), 1/ohms)
	if amps > 0 {
		expression = fmt.Sprintf("min(%.17g, %s)", amps, expression)
	}
	return expression
}

func (d *deck) converter(e *wiring.Converter) {
	if !d.p.Holds(e) {
		d.load(e.InA, e.InB, 0, float64(e.Standby), float64(e.Works.Low), false)
		return
	}
	out := d.regulated(e.OutA, e.OutB, float64(e.Volts), 0.005, float64(e.Amps))
	d.current(e.OutB, e.OutA, out)
	d.current(e.InA, e.InB, fmt.Sprintf("%.17g + %.17g * %s * %s / %s", float64(e.Idle),
		1/orElse(float64(e.Efficiency), 0.9), d.v(e.OutA, e.OutB), out, d.v(e.InA, e.InB)))
}

// finish adds what makes ngspice compute and print the operating point. It begins from
// ours, since a constant power has a second one.
func (d *deck) finish() string {
	d.WriteString(".options reltol=1e-7 abstol=1e-13 vntol=1e-10 gmin=1e-16 itl1=1000\n")
	for n := range d.p.net.harness.Nodes {
		id := wiring.NodeID(n)
		if d.find(id) != id || d.name(id) == "0" {
			continue
		}
		fmt.Fprintf(d, ".nodeset v(%s)=%.17g\n", d.name(id), float64(d.p.Volts(id)))
		d.tie(id)
	}
	d.WriteString(".control\nset numdgt=14\nop\nprint all\n.endc\n.end\n")
	return d.String()
}

// tie gives a group of nodes that no current holds, because it floats or hangs on a diode
// alone, the voltage that we have for it, through 1 kohm: ngspice wants a way to 0 for
// everything. If the group were held after all, and otherwise, the comparison would fail.
func (d *deck) tie(n wiring.NodeID) {
	if root := d.firmly.find(int32(n)); root != d.firmly.find(int32(d.p.ReferenceNode())) {
		d.firmly.join(root, int32(d.p.ReferenceNode()))
		d.line("V", "t%d 0 %.17g", n, float64(d.p.Volts(n)))
		d.line("R", "t%d %s 1k", n, d.name(n))
	}
}

// holds notes that a branch holds two nodes together.
func (d *deck) holds(a, b wiring.NodeID) { d.firmly.join(int32(a), int32(b)) }

// spice runs a deck and returns the voltages by node name.
func spice(t *testing.T, deck string) map[string]float64 {
	t.Helper()
	program, err := exec.LookPath("ngspice")
	if err != nil {
		if os.Getenv("LUGWRIGHT_TOOLS") == "required" {
			t.Fatal("ngspice is required and missing")
		}
		t.Skip("ngspice is missing: no independent solver to compare with")
	}
	file := filepath.Join(t.TempDir(), "deck.cir")
	if err := os.WriteFile(file, []byte(deck), 0o600); err != nil {
		t.Fatal(err)
	}
	// With its commands in a control block ngspice says that it had nothing to do, and exits
	// with 1; whether it found anything is judged by what it printed.
	out, _ := exec.Command(program, "-b", file).CombinedOutput()
	volts := map[string]float64{}
	for _, line := range strings.Split(string(out), "\n") {
		name, value, ok := strings.Cut(line, " = ")
		if v, err := strconv.ParseFloat(strings.TrimSpace(value), 64); ok && err == nil {
			volts[strings.TrimSpace(name)] = v
		}
	}
	if len(volts) == 0 {
		t.Fatalf("ngspice found nothing:\n%s", out)
	}
	return volts
}

// compareWithSpice holds every voltage of a point to what ngspice finds: to 1e-5 of it and
// 20 uV, which is what ngspice promises.
func compareWithSpice(t *testing.T, p *Point) {
	t.Helper()
	d := newDeck(p)
	text := d.finish()
	volts := spice(t, text)
	volts["0"] = 0
	for n := range p.net.harness.Nodes {
		id := wiring.NodeID(n)
		if p.Floating(id) {
			continue
		}
		theirs, ok := volts[d.name(id)]
		ours := float64(p.Volts(id))
		if !ok || math.Abs(ours-theirs) > 1e-5*math.Abs(ours)+2e-5 {
			t.Errorf("%v: %.9g V, ngspice has %.9g V", p.net.harness.Nodes[id], ours, theirs)
		}
	}
	if t.Failed() {
		t.Logf("deck:\n%s", text)
	}
}
