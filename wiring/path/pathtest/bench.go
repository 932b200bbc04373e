// Package pathtest builds small harnesses from a few lines of text, for tests that need a
// circuit and no job file.
package pathtest

import (
	"fmt"
	"strconv"
	"strings"
	"testing"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// Harness builds a harness from one line an element or wire; terminals come into being
// where they are first named. Values are plain numbers in volts, amperes and ohms.
//
//	G1 source + - 51.2
//	F1 fuse in out 5
//	S1 switch key off,on on:in,out
//	K1 coil coil+ coil-
//	K1 contact in out
//	V1 diode a k
//	T2 converter in+ in- out in- 13.2 25
//	W1 G1.+ F1.in
//
// A contact belongs to the coil of its part; `contact in out rest` is closed at rest. A
// wire's end may be `capped`. Empty lines and lines that begin with # are skipped.
func Harness(t testing.TB, text string) *wiring.Harness {
	t.Helper()
	b := &bench{h: &wiring.Harness{
		Nodes:  []wiring.Node{{Name: "frame"}},
		Limits: wiring.Limits{Drop: 0.03, DropOther: 0.1, FuseDistance: quantity.Inches(7), KeyOff: 0.03, Lugs: 4},
		Assume: wiring.Assume{Ambient: 40, Volts: 60, Slack: quantity.Inches(12), SOC: 0.8, Conductor: 20},
	}, parts: map[string]*wiring.Part{}}
	for i, line := range strings.Split(text, "\n") {
		words := strings.Fields(line)
		if len(words) == 0 || words[0] == "#" {
			continue
		}
		if err := b.line(words); err != nil {
			t.Fatalf("line %d, %q: %v", i+1, line, err)
		}
	}
	return b.h.Index()
}

// Node finds the node of a terminal of a harness that this package built.
func Node(t testing.TB, h *wiring.Harness, ref string) wiring.NodeID {
	t.Helper()
	if ref == "frame" {
		return wiring.FrameNode
	}
	terminal := h.Terminal(ref)
	if terminal == nil {
		t.Fatalf("no terminal %s", ref)
	}
	return terminal.Node
}

type bench struct {
	h     *wiring.Harness
	parts map[string]*wiring.Part
}

func (b *bench) line(words []string) error {
	if len(words) < 2 {
		return fmt.Errorf("too short")
	}
	if strings.HasPrefix(words[0], "W") {
		return b.wire(words)
	}
	p := b.part(words[0])
	base := wiring.ElementBase{Part: p, Name: fmt.Sprintf("%s%d", words[1], len(p.Elements)+1)}
	el, err := b.element(base, words[1], words[2:])
	if err == nil {
		p.Elements = append(p.Elements, el)
	}
	return err
}

func (b *bench) wire(words []string) error {
	if len(words) != 3 {
		return fmt.Errorf("a wire is a number and two ends")
	}
	w := &wiring.Wire{Number: words[0]}
	for i, ref := range words[1:] {
		end := w.Ends()[i]
		if ref == "capped" {
			end.Capped = true
			continue
		}
		end.Terminal = b.terminal(ref)
		end.Terminal.Wires = append(end.Terminal.Wires, w)
	}
	b.h.Wires = append(b.h.Wires, w)
	return nil
}

func (b *bench) part(designation string) *wiring.Part {
	if p := b.parts[designation]; p != nil {
		return p
	}
	p := &wiring.Part{Designation: designation, Kind: &wiring.Kind{Name: "bench"}}
	b.parts[designation] = p
	b.h.Parts = append(b.h.Parts, p)
	return p
}

// terminal finds or makes "G1.+", and for a part alone its terminal "s".
func (b *bench) terminal(ref string) *wiring.Terminal {
	designation, name, dotted := strings.Cut(ref, ".")
	if !dotted {
		name = "s"
	}
	p := b.part(designation)
	if t := p.Terminal(name); t != nil {
		return t
	}
	t := &wiring.Terminal{Part: p, Name: name, Form: wiring.Form{Type: wiring.Stud, Size: "M8"}, Holds: 4,
		Node: wiring.NodeID(len(b.h.Nodes))}
	b.h.Nodes = append(b.h.Nodes, wiring.Node{Part: p, Terminal: t, Name: name})
	p.Terminals = append(p.Terminals, t)
	return t
}

func (b *bench) node(p *wiring.Part, name string) wiring.NodeID {
	if name == "frame" {
		return wiring.FrameNode
	}
	return b.terminal(p.Designation + "." + name).Node
}

func (b *bench) element(base wiring.ElementBase, sort string, words []string) (wiring.Element, error) {
	if len(words) < 2 {
		return nil, fmt.Errorf("an element needs two terminals")
	}
	if sort == "switch" {
		return b.handSwitch(base, words)
	}
	if sort == "link" {
		link := &wiring.Link{ElementBase: base}
		for _, name := range words {
			link.Join = append(link.Join, b.node(base.Part, name))
		}
		return link, nil
	}
	if sort == "converter" {
		return b.converter(base, words)
	}
	return b.twoEnded(base, sort, b.node(base.Part, words[0]), b.node(base.Part, words[1]), words[2:])
}

func (b *bench) twoEnded(base wiring.ElementBase, sort string, a, z wiring.NodeID, rest []string) (wiring.Element, error) {
	value := number(rest, 0)
	switch sort {
	case "source":
		return &wiring.Source{ElementBase: base, A: a, B: z, Volts: quantity.Volt(value), Ohms: 0.01}, nil
	case "fuse":
		return &wiring.Fuse{ElementBase: base, A: a, B: z, Fitted: value > 0, Rating: quantity.Ampere(value), Opens: 1.35}, nil
	case "resistor":
		return &wiring.Resistor{ElementBase: base, A: a, B: z, Ohms: quantity.Ohm(value)}, nil
	case "load":
		return &wiring.Load{ElementBase: base, A: a, B: z, Law: wiring.ConstantPower, Watts: quantity.Watt(value)}, nil
	case "coil":
		return &wiring.Coil{ElementBase: base, A: a, B: z, Ohms: 150}, nil
	case "contact":
		c := &wiring.Contact{ElementBase: base, A: a, B: z, RestClosed: len(rest) > 0 && rest[0] == "rest"}
		for _, el := range base.Part.Elements {
			if coil, ok := el.(*wiring.Coil); ok {
				c.Coil = coil
			}
		}
		return c, nil
	case "diode":
		return &wiring.Diode{ElementBase: base, A: a, B: z}, nil
	case "driver":
		return &wiring.Driver{ElementBase: base, A: a, B: z}, nil
	case "sense":
		return &wiring.Sense{ElementBase: base, At: a, To: z, Above: quantity.Volt(value), Ohms: 1e5}, nil
	case "charger":
		return &wiring.Charger{ElementBase: base, A: a, B: z, End: quantity.Volt(value), Amps: 18, L: wiring.NoNode, N: wiring.NoNode}, nil
	}
	return nil, fmt.Errorf("no element %s", sort)
}

func (b *bench) converter(base wiring.ElementBase, words []string) (wiring.Element, error) {
	if len(words) < 4 {
		return nil, fmt.Errorf("a converter needs four terminals")
	}
	n := func(i int) wiring.NodeID { return b.node(base.Part, words[i]) }
	return &wiring.Converter{ElementBase: base, InA: n(0), InB: n(1), OutA: n(2), OutB: n(3),
		Volts: quantity.Volt(number(words, 4)), Amps: quantity.Ampere(number(words, 5)),
		Works: wiring.Band{Low: 30, High: 72}}, nil
}

func (b *bench) handSwitch(base wiring.ElementBase, words []string) (wiring.Element, error) {
	control := &wiring.Control{Part: base.Part, Name: words[0], Positions: strings.Split(words[1], ",")}
	base.Part.Controls = append(base.Part.Controls, control)
	s := &wiring.Switch{ElementBase: base, Control: control, Closes: map[string][][]wiring.NodeID{}}
	for _, word := range words[2:] {
		position, names, ok := strings.Cut(word, ":")
		if !ok {
			return nil, fmt.Errorf("%s is not position:terminal,terminal", word)
		}
		var group []wiring.NodeID
		for _, name := range strings.Split(names, ",") {
			group = append(group, b.node(base.Part, name))
		}
		s.Closes[position] = append(s.Closes[position], group)
	}
	return s, nil
}

func number(words []string, i int) float64 {
	if i >= len(words) {
		return 0
	}
	value, _ := strconv.ParseFloat(words[i], 64)
	return value
}
