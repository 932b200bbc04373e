package settle

import (
	"testing"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// garage is a pack of these volts, and a charger of 18 A to 58.4 V on a cord from an inlet.
func garage(volts float64) (b *bench, charger *wiring.Charger, plug *wiring.Control) {
	b = newBench()
	b.battery("G1", volts, 0.02)
	port := func(part string) *wiring.Terminal {
		return &wiring.Terminal{
			Part: b.part(part), Name: "ac", Form: wiring.Form{Type: wiring.Port}, Node: wiring.NoNode,
			Poles: []wiring.Pole{{Name: "L", Node: b.node(part + ".L")}, {Name: "N", Node: b.node(part + ".N")}},
		}
	}
	plug = b.lever("X1", "plug", "out", "in")
	put(b, "X1.mains", &wiring.Mains{L: b.node("X1.L"), N: b.node("X1.N"), When: stands(plug, "in")})
	charger = put(b, "T1.charger", &wiring.Charger{
		A: b.node("T1.+"), B: b.node("T1.-"), Amps: 18, End: 58.4, L: b.node("T1.L"), N: b.node("T1.N"), Standby: 0.001,
	})
	b.h.Wires = append(b.h.Wires, &wiring.Wire{
		Number: "W56", From: wiring.End{Terminal: port("X1")}, To: wiring.End{Terminal: port("T1")},
		Pieces: []wiring.Piece{{Kind: wiring.CordPiece}},
	})
	b.wire("T1.+", "G1.+", 0.01)
	b.wire("T1.-", "G1.-", 0.01)
	return b, charger, plug
}

func TestCharger(t *testing.T) {
	loop := 0.02 + 0.01 + 0.01
	for _, c := range []struct {
		name  string
		volts float64
		plug  string
		amps  float64
		on    bool
	}{
		{"constant current", 52.8, "in", 18, true},
		{"constant voltage", 58.2, "in", (58.4 - 58.2) / (loop + chargerOhms), true},
		{"pack above its end", 60, "in", 0, true},
		{"plug out", 52.8, "out", -0.001, false},
		{"plug out, pack under half its end", 20, "out", -20 / (29.2/0.001 + loop), false},
	} {
		t.Run(c.name, func(t *testing.T) {
			b, charger, plug := garage(c.volts)
			p := b.settle(t, map[*wiring.Control]string{plug: c.plug})
			settled(t, p)
			near(t, "current", float64(p.ElementAmps(charger)), c.amps)
			if p.Holds(charger) != c.on || p.On(b.part("T1")) != c.on {
				t.Errorf("running %v, want %v", p.Holds(charger), c.on)
			}
			if p.Holds(b.part("X1").Elements[0]) != (c.plug == "in") {
				t.Error("the mains is live with the plug in")
			}
		})
	}
}

// A charger alone cannot feed a motor: it is overloaded, and the motor a resistor.
func TestChargerAloneCannotFeedTheMotor(t *testing.T) {
	b, charger, plug := garage(52.8)
	pack := b.lever("G1", "pack", "on", "off")
	b.part("G1").Elements[0].(*wiring.Source).When = stands(pack, "on")
	motor := put(b, "M1.armature", &wiring.Load{
		A: b.node("G1.+"), B: b.node("G1.-"), Law: wiring.ConstantPower, Watts: 2200, Works: wiring.Band{Low: 20},
	})
	p := b.settle(t, map[*wiring.Control]string{plug: "in", pack: "off"})
	settled(t, p)
	near(t, "current", float64(p.ElementAmps(charger)), 18)
	near(t, "motor", float64(p.ElementVolts(motor)), 18*20*20/2200.0)
	if p.Holds(motor) || len(p.Overloaded()) != 1 {
		t.Errorf("motor on %v, overloaded %v", p.Holds(motor), refs(p.Overloaded()))
	}
}

// Alternating current passes wires, whole fuses, closed switches and contacts, each pole
// to a different one.
func TestAlternatingCurrent(t *testing.T) {
	type circuit struct {
		b    *bench
		plug *wiring.Control
	}
	build := func(wire func(b *bench)) circuit {
		b := newBench()
		b.battery("G1", 12, 0.01)
		plug := b.lever("X1", "plug", "out", "in")
		put(b, "X1.mains", &wiring.Mains{L: b.node("X1.L"), N: b.node("X1.N"), When: stands(plug, "in")})
		put(b, "T1.plugged", &wiring.Sense{At: b.node("T1.L"), To: b.node("T1.N"), AC: true})
		wire(b)
		return circuit{b, plug}
	}
	fuse := func(b *bench, whole bool) {
		put(b, "F1.fuse", &wiring.Fuse{A: b.node("F1.in"), B: b.node("F1.out"), Fitted: whole, Rating: 10})
		b.wire("X1.L", "F1.in", 0.1)
		b.wire("F1.out", "T1.L", 0.1)
		b.wire("X1.N", "T1.N", 0.1)
	}
	for _, c := range []struct {
		name string
		wire func(b *bench)
		want bool
	}{
		{"joined", func(b *bench) { b.wire("X1.L", "T1.L", 0.1); b.wire("X1.N", "T1.N", 0.1) }, true},
		{"crossed", func(b *bench) { b.wire("X1.L", "T1.N", 0.1); b.wire("X1.N", "T1.L", 0.1) }, true},
		{"one pole only", func(b *bench) { b.wire("X1.L", "T1.L", 0.1) }, false},
		{"both on one pole", func(b *bench) { b.wire("X1.L", "T1.L", 0.1); b.wire("X1.L", "T1.N", 0.1) }, false},
		{"poles shorted", func(b *bench) {
			b.wire("X1.L", "T1.L", 0.1)
			b.wire("X1.N", "T1.N", 0.1)
			b.wire("X1.L", "X1.N", 0.1)
		}, false},
		{"whole fuse", func(b *bench) { fuse(b, true) }, true},
		{"no fuse", func(b *bench) { fuse(b, false) }, false},
		{"through a resistor", func(b *bench) {
			b.resistance("R1.ohms", "X1.L", "T1.L", 1)
			b.wire("X1.N", "T1.N", 0.1)
		}, false},
		{"through a resting contact", func(b *bench) {
			b.relay("K1", 90, 8, 2)
			b.wire("X1.L", "K1.30", 0.1)
			b.wire("K1.87a", "T1.L", 0.1)
			b.wire("X1.N", "T1.N", 0.1)
		}, true},
		{"through a contact that has left its rest", func(b *bench) {
			b.relay("K1", 90, 8, 2)
			b.wire("X1.L", "K1.30", 0.1)
			b.wire("K1.87a", "T1.L", 0.1)
			b.wire("X1.N", "T1.N", 0.1)
			b.wire("G1.+", "K1.86", 0.1)
			b.wire("G1.-", "K1.85", 0.1)
		}, false},
	} {
		t.Run(c.name, func(t *testing.T) {
			x := build(c.wire)
			sense := x.b.part("T1").Elements[0]
			if p := x.b.settle(t, nil); p.Holds(sense) {
				t.Error("present with the plug out")
			}
			p := x.b.settle(t, map[*wiring.Control]string{x.plug: "in"})
			settled(t, p)
			if p.Holds(sense) != c.want {
				t.Errorf("present %v, want %v", p.Holds(sense), c.want)
			}
		})
	}
}

func TestSourceTripsAndIsReported(t *testing.T) {
	b := newBench()
	g := b.battery("G1", 52.8, 0.02)
	g.Trips = 450
	b.wire("G1.+", "X1.1", 0.001)
	b.wire("X1.1", "G1.-", 0.001)
	p := b.settle(t, nil)
	settled(t, p)
	if len(p.Opened()) != 1 || p.Holds(g) || p.ElementAmps(g) != 0 {
		t.Errorf("opened %v, in circuit %v", refs(p.Opened()), p.Holds(g))
	}
}

func TestOpenCircuitVoltage(t *testing.T) {
	for _, c := range []struct {
		source wiring.Source
		charge quantity.Ratio
		want   quantity.Volt
	}{
		{wiring.Source{Volts: 51.5}, 0.2, 51.5},
		{wiring.Source{Chemistry: "LFP", Cells: 16}, 1, 54.4}, // 3.40 V a cell, rested full
		{wiring.Source{Chemistry: "LFP", Cells: 16}, 0.5, 52.8},
		{wiring.Source{Chemistry: "LFP", Cells: 16}, 0, 40},
		{wiring.Source{Chemistry: "lead-acid", Cells: 24}, 1, 50.88}, // public inverter manual
		{wiring.Source{Chemistry: "lead-acid", Cells: 4}, 0.5, 8.08},
		{wiring.Source{Chemistry: "nothing known", Cells: 4}, 0.5, 0},
	} {
		near(t, c.source.Chemistry, OpenCircuit(&c.source, c.charge), c.want)
	}
}
