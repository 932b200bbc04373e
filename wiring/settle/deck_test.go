package settle

import (
	"bytes"
	"fmt"
	"strconv"

	"github.com/lugwright/lugwright/wiring"
)

// deck writes a harness at a point as an ngspice netlist, from the values of its elements
// and the states in which the point leaves them. Consumers, diodes and supplies are
// written as their whole characteristics, so that ngspice has to find for itself on which
// piece of it each stands.
//
// A constant power has two answers, and from nothing ngspice finds neither. So there are two
// decks: one without consumers, from which ngspice gets the voltages to begin with, and the
// whole. None of our voltages goes into either.
type deck struct {
	bytes.Buffer
	p        *Point
	unloaded bool
	alias    map[wiring.NodeID]wiring.NodeID
	count    int

	firmly disjoint // nodes that something holds together whichever way the current goes
}

func newDeck(p *Point, unloaded bool) *deck {
	d := &deck{p: p, unloaded: unloaded, alias: map[wiring.NodeID]wiring.NodeID{}, firmly: newDisjoint(len(p.net.harness.Nodes))}
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
		if d.unloaded {
			d.resistor(e.A, e.B, 100) // whichever way round it will be
			return
		}
		drop, ohms := orElse(float64(e.Drop), 0.7), orElse(float64(e.Ohms), 0.01)
		d.current(e.A, e.B, fmt.Sprintf("max(0, (%s - %.17g) * %.17g)", d.v(e.A, e.B), drop, 1/ohms))
	case *wiring.Source:
		if p.Holds(e) {
			d.source(e)
		}
	case *wiring.Charger:
		if p.Holds(e) {
			d.regulated(e.A, e.B, float64(e.End), 0.01, float64(e.Amps))
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
	d.holds(e.A, e.B)
	d.behind(e.A, e.B, float64(OpenCircuit(e, d.p.net.harness.Assume.SOC)), float64(e.Ohms))
}

// behind is a voltage behind a resistance.
func (d *deck) behind(a, b wiring.NodeID, volts, ohms float64) {
	inner := fmt.Sprintf("s%d", d.count)
	d.line("V", "%s %s %.17g", inner, d.name(b), volts)
	d.line("R", "%s %s %.17g", inner, d.name(a), ohms)
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
	if d.unloaded {
		d.resistor(a, b, 1e6) // next to nothing, but it joins what hangs on it
		return
	}
	if polarised {
		expression = fmt.Sprintf("(%s < 0) ? 0 : (%s)", v, expression)
	}
	d.current(a, b, expression)
}

// regulated is an output that delivers at most some amperes, and takes none.
func (d *deck) regulated(a, b wiring.NodeID, volts, ohms, amps float64) {
	if d.unloaded {
		d.behind(a, b, volts-amps*ohms/2, ohms) // half loaded, so as not to stand on a kink
	} else {
		d.current(b, a, d.delivers(a, b, volts, ohms, amps))
	}
}

// delivers is the current of a regulated output.
func (d *deck) delivers(a, b wiring.NodeID, volts, ohms, amps float64) string {
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
	d.regulated(e.OutA, e.OutB, float64(e.Volts), 0.005, float64(e.Amps))
	if d.unloaded {
		return
	}
	d.current(e.InA, e.InB, fmt.Sprintf("%.17g + %.17g * %s * %s / %s", float64(e.Idle),
		1/orElse(float64(e.Efficiency), 0.9), d.v(e.OutA, e.OutB),
		d.delivers(e.OutA, e.OutB, float64(e.Volts), 0.005, float64(e.Amps)), d.v(e.InA, e.InB)))
}

// finish adds what makes ngspice compute and print the operating point, beginning from the
// voltages of an earlier run; nil: from nothing.
func (d *deck) finish(begin map[string]float64) string {
	d.WriteString(".options reltol=1e-7 abstol=1e-13 vntol=1e-10 gmin=1e-16 itl1=1000\n")
	if d.unloaded {
		d.WriteString(".options rshunt=1e9\n") // to 0 from what hung on a consumer alone
	}
	for n := range d.p.net.harness.Nodes {
		id := wiring.NodeID(n)
		if d.find(id) != id || d.name(id) == "0" {
			continue
		}
		if begin != nil {
			fmt.Fprintf(d, ".nodeset v(%s)=%.17g\n", d.name(id), begin[d.name(id)])
		}
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
