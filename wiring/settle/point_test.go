package settle

import (
	"context"
	"testing"

	"github.com/google/go-cmp/cmp"

	"github.com/lugwright/lugwright/wiring"
)

func TestReferenceNode(t *testing.T) {
	b := newBench()
	b.battery("G1", 12, 0.01)
	b.battery("G2", 48, 0.01)
	b.battery("G3", 48, 0.01)
	p := b.settle(t, nil)
	if p.ReferenceNode() != b.node("G2.-") {
		t.Errorf("it is %v, not the negative of the first of the highest", b.h.Nodes[p.ReferenceNode()])
	}
	b.h.Points = []wiring.Point{{Name: "pack-", Terminal: b.terminal("G1.-")}}
	if p = b.settle(t, nil); p.ReferenceNode() != b.node("G1.-") {
		t.Error("the point pack- is it where there is one")
	}
	b.h.Points[0].Terminal = nil
	if p = b.settle(t, nil); p.ReferenceNode() != b.node("G2.-") {
		t.Error("a point without a terminal is none")
	}
}

// A harness without any source, and one without anything, settle to nothing.
func TestNothingToSettle(t *testing.T) {
	b := newBench()
	r := b.resistance("R1.ohms", "R1.1", "R1.2", 5)
	for _, h := range []*wiring.Harness{b.h, {}, {Nodes: []wiring.Node{{Name: "frame"}}}} {
		p, err := State(t.Context(), h, &wiring.State{}, Options{})
		if err != nil {
			t.Fatal(err)
		}
		settled(t, p)
		if p.ReferenceNode() != wiring.NoNode || p.ElementAmps(r) != 0 || p.Volts(wiring.FrameNode) != 0 {
			t.Error("there is nothing")
		}
		if !p.Floating(wiring.FrameNode) || p.Against(wiring.FrameNode) != wiring.NoNode || p.Reading(wiring.FrameNode) != 0 {
			t.Error("all of it floats")
		}
	}
}

// What belongs to another harness has no figures here, and asking is no mistake.
func TestStrangersHaveNoFigures(t *testing.T) {
	b := newBench()
	b.battery("G1", 12, 0.01)
	p := b.settle(t, nil)
	other := newBench()
	g := other.battery("G1", 12, 0.01)
	w := other.wire("G1.+", "G1.-", 1)
	s := put(other, "S1.switch", &wiring.Switch{})
	if p.Holds(g) || p.ElementAmps(g) != 0 || p.InputAmps(g) != 0 || p.ElementVolts(g) != 0 || p.Watts(g) != 0 ||
		p.WireAmps(w, 0) != 0 || p.WireDrop(w, 0) != 0 || p.WireWatts(w) != 0 || p.SwitchAmps(s, 0, 0) != 0 {
		t.Error("a stranger has figures")
	}
	if _, known := p.WireOhms(w); known {
		t.Error("a stranger's resistance is known")
	}
	if p.Volts(999) != 0 || p.Volts(-5) != 0 || p.Across(999, 0) != 0 || !p.Floating(999) || p.Against(-2) != wiring.NoNode {
		t.Error("no node has no voltage")
	}
	if _, ok := p.Thevenin(0, 999); ok {
		t.Error("no resistance to nowhere")
	}
}

// A meter of 10 Mohm halves what it reads behind 10 Mohm, and shows an open terminal as 0.
func TestReadingLoadsWhatItReads(t *testing.T) {
	b := newBench()
	b.battery("G1", 48, 0.01)
	b.wire("G1.+", "R1.1", 0.01)
	b.resistance("R1.ohms", "R1.1", "R1.2", 10e6)
	b.node("X1.open")
	p := b.settle(t, nil)
	near(t, "true voltage", p.Volts(b.node("R1.2")), 48)
	near(t, "reading", float64(p.Reading(b.node("R1.2"))), 48*10e6/(20e6+0.02))
	near(t, "reading of the post", float64(p.Reading(b.node("G1.+"))), 48*10e6/(10e6+0.01))
	near(t, "open terminal", p.Reading(b.node("X1.open")), 0)
	if !p.Floating(b.node("X1.open")) {
		t.Error("an open terminal floats")
	}
}

// A part is on by the load listed first, else its first supply, else its first coil.
func TestWhatTurnsOn(t *testing.T) {
	load, second := &wiring.Load{}, &wiring.Load{}
	supply, coil := &wiring.Converter{}, &wiring.Coil{}
	for _, c := range []struct {
		name     string
		elements []wiring.Element
		want     wiring.Element
	}{
		{"loads first", []wiring.Element{coil, supply, load, second}, load},
		{"supplies next", []wiring.Element{coil, &wiring.Sense{}, supply, &wiring.Charger{}}, supply},
		{"then coils", []wiring.Element{&wiring.Fuse{}, coil, &wiring.Coil{}}, coil},
		{"else nothing", []wiring.Element{&wiring.Fuse{}}, nil},
	} {
		if got := WhatTurnsOn(&wiring.Part{Elements: c.elements}); got != c.want {
			t.Errorf("%s: %v", c.name, got)
		}
	}
}

func TestTraction(t *testing.T) {
	b, e := loaded(24, &wiring.Load{Law: wiring.Resistive, Ohms: 5.5})
	key := b.lever("E1", "key", "off", "on")
	e.When = stands(key, "on")
	b.part("E1").Kind.Traction = true
	if b.settle(t, nil).Traction() || !b.settle(t, map[*wiring.Control]string{key: "on"}).Traction() {
		t.Error("traction is on with the part that moves the cart")
	}
}

// Ways of a switch are told apart.
func TestSwitchAmps(t *testing.T) {
	b := newBench()
	b.battery("G1", 12, 0.01)
	c := b.lever("S1", "direction", "neutral", "forward", "both")
	common, x, y := b.node("S1.1"), b.node("S1.2"), b.node("S1.3")
	s := put(b, "S1.switch", &wiring.Switch{
		Control: c, Ohms: 0.01,
		Closes: map[string][][]wiring.NodeID{"forward": {{common, x}}, "both": {{common, x, y}}},
	})
	b.resistance("R1.ohms", "S1.2", "G1.-", 12)
	b.resistance("R2.ohms", "S1.3", "G1.-", 6)
	b.wire("G1.+", "S1.1", 0.01)
	for position, want := range map[string][2]float64{"neutral": {0, 0}, "forward": {1, 0}, "both": {1, 2}} {
		p := b.settle(t, map[*wiring.Control]string{c: position})
		for i, n := range []wiring.NodeID{x, y} {
			amps := float64(p.SwitchAmps(s, common, n))
			if amps < want[i]*0.98 || amps > want[i]*1.02 {
				t.Errorf("%s: %v A to %v, want about %v", position, amps, b.h.Nodes[n], want[i])
			}
			if back := float64(p.SwitchAmps(s, n, common)); back != -amps {
				t.Errorf("%s: %v A back, %v A forth", position, back, amps)
			}
		}
		if p.Holds(s) != (position != "neutral") {
			t.Errorf("%s: closed %v", position, p.Holds(s))
		}
	}
}

func TestSettlingEndsWithItsContext(t *testing.T) {
	b := newBench()
	b.battery("G1", 12, 0.01)
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	if p, err := State(ctx, b.h, &wiring.State{}, Options{}); err == nil || p != nil {
		t.Errorf("point %v, error %v", p, err)
	}
}

// A pole of a cord is asked for by the place of its pair.
func TestCordPoles(t *testing.T) {
	b := newBench()
	b.battery("G1", 12, 0.01)
	port := func(part string) *wiring.Terminal {
		return &wiring.Terminal{Part: b.part(part), Form: wiring.Form{Type: wiring.Port}, Node: wiring.NoNode, Poles: []wiring.Pole{
			{Name: "v", Node: b.node(part + ".v")}, {Name: "g", Node: b.node(part + ".g")},
		}}
	}
	cord := &wiring.Wire{Number: "W1", From: wiring.End{Terminal: port("X1")}, To: wiring.End{Terminal: port("X2")}}
	b.h.Wires = append(b.h.Wires, cord)
	b.wire("G1.+", "X1.v", 0.01)
	b.wire("G1.-", "X1.g", 0.01)
	b.resistance("R1.ohms", "X2.v", "X2.g", 6-0.03-2*unknownOhms)
	p := b.settle(t, nil)
	near(t, "v", p.WireAmps(cord, 0), 2)
	near(t, "g", p.WireAmps(cord, 1), -2)
	near(t, "no pole", p.WireAmps(cord, 2), 0)
	near(t, "no pole", p.WireAmps(cord, -1), 0)
	if ohms, known := p.WireOhms(cord); known || ohms != unknownOhms {
		t.Errorf("%v, known %v", ohms, known)
	}
	near(t, "heat", float64(p.WireWatts(cord)), 2*4*unknownOhms)
}

// Each defect does what it says, and only in the network that has it.
func TestDefects(t *testing.T) {
	b, lamp := loaded(12, &wiring.Load{Law: wiring.Resistive, Ohms: 5.5})
	feed := b.h.Wires[0]
	sense := put(b, "U1.sense", &wiring.Sense{At: b.node("E1.+"), To: b.node("E1.-"), Above: 6, Ohms: 1e9})
	driver := put(b, "U1.driver", &wiring.Driver{A: b.node("U1.a"), B: b.node("U1.b"), When: holdsWhen(sense)})
	n := Compile(b.h)
	for _, c := range []struct {
		name   string
		defect Defect
		amps   float64
		closed bool // the driver
	}{
		{"sound", Defect{}, 2, true},
		{"broken wire", OpenWire(feed), 0, false},
		{"bad lug", BadJoint(feed, 6), 1, false},
		{"dead lamp", OpenElement(lamp), 0, true},
		{"flat battery", OpenElement(b.part("G1").Elements[0]), 0, false},
		{"short across the lamp", Bridge(b.node("E1.+"), b.node("E1.-"), 0), 0, false},
		{"sense stuck", Stuck(sense, false), 2, false},
		{"driver stuck", Stuck(driver, false), 2, false},
		{"driver shorted", ClosedElement(driver), 2, true},
	} {
		t.Run(c.name, func(t *testing.T) {
			p, err := n.With(c.defect).Settle(t.Context(), &wiring.State{}, Options{})
			if err != nil {
				t.Fatal(err)
			}
			settled(t, p)
			amps := float64(p.ElementAmps(lamp))
			if amps < c.amps-1e-4 || amps > c.amps+1e-4 {
				t.Errorf("%v A, want %v", amps, c.amps)
			}
			if p.Holds(driver) != c.closed {
				t.Errorf("driver closed: %v, want %v", p.Holds(driver), c.closed)
			}
		})
	}
	both, err := n.With(OpenWire(feed)).With(Stuck(sense, true)).Settle(t.Context(), &wiring.State{}, Options{})
	if err != nil || both.ElementAmps(lamp) != 0 || !both.Holds(driver) {
		t.Errorf("defects add up: %v", err)
	}
}

// The memory of a point can be taken over into the network with a defect.
func TestMemoryPassesBetweenNetworks(t *testing.T) {
	b := newBench()
	b.battery("G1", 48, 0.01)
	coil := b.relay("K1", 100, 32, 12)
	b.wire("G1.+", "K1.86", 1)
	b.wire("G1.-", "K1.85", 1)
	n := Compile(b.h)
	up, _ := n.Settle(t.Context(), &wiring.State{}, Options{})
	bad := n.With(BadJoint(b.h.Wires[0], 90)) // leaves 25 V at the coil: enough to hold it
	after, _ := bad.Settle(t.Context(), &wiring.State{}, Options{After: up})
	cold, _ := bad.Settle(t.Context(), &wiring.State{}, Options{})
	if d := cmp.Diff([]bool{true, true, false}, []bool{up.Holds(coil), after.Holds(coil), cold.Holds(coil)}); d != "" {
		t.Error(d)
	}
}

// A point stays as it is when its state is set anew.
func TestPointKeepsItsPositions(t *testing.T) {
	b, e := loaded(12, &wiring.Load{Law: wiring.Resistive, Ohms: 5.5})
	key := b.lever("E1", "key", "off", "on")
	idle := b.lever("E1", "idle", "off", "on")
	e.When = stands(key, "on")
	set := map[*wiring.Control]string{key: "on"}
	p := b.settle(t, set)
	before, ok := p.Thevenin(b.node("E1.+"), b.node("E1.-"))
	set[key] = "off"
	after, _ := p.Thevenin(b.node("E1.+"), b.node("E1.-"))
	if p.Position(key) != "on" || !p.Holding(e.When) || !ok || before != after {
		t.Errorf("it stands at %s, and has %v where it had %v", p.Position(key), after, before)
	}
	if p.Position(idle) != "off" {
		t.Errorf("a control that works nothing stands at %q", p.Position(idle))
	}
	near(t, "resistance", float64(before), 1/(1/0.5+1/5.5))
}
