package settle

import (
	"math"
	"testing"

	"github.com/lugwright/lugwright/wiring"
)

// A standing resistor across the main contact keeps the controller side near pack voltage
// with the key off, whatever high-impedance input hangs there. The voltages were computed
// by hand and in ngspice, to a tenth of a volt.
func TestPrechargeAcrossTheContact(t *testing.T) {
	for _, c := range []struct {
		hangs float64 // ohms of what hangs behind the resistor, beside 10 kohm of bleed
		want  float64
	}{{100e3, 50.2}, {4.7e3, 46.0}, {1.5e3, 38.8}} {
		b := newBench()
		b.battery("G1", 52.8, 0.01)
		b.wire("G1.+", "K1.in", 0.001)
		b.resistance("R1.ohms", "K1.in", "K1.out", 470)
		b.resistance("U1.bleed", "K1.out", "U1.B-", 10e3)
		b.resistance("T2.enable", "K1.out", "U1.B-", c.hangs)
		b.wire("U1.B-", "G1.-", 0.001)
		p := b.settle(t, nil)
		settled(t, p)
		if v := float64(p.Volts(b.node("K1.out"))); math.Abs(v-c.want) > 0.05 {
			t.Errorf("with %v ohm: %.2f V, want %v", c.hangs, v, c.want)
		}
	}
}

// The controller's capacitor charges through the resistor, and runs down through the bleed
// when the pack is off: tau = R C, t = tau ln(V / Voff).
func TestCapacitorOfAController(t *testing.T) {
	b := newBench()
	g := b.battery("G1", 51.2, 0.01)
	pack := b.lever("G1", "pack", "on", "off")
	g.When = stands(pack, "on")
	b.wire("G1.+", "K1.in", 0.001)
	b.resistance("R1.ohms", "K1.in", "K1.out", 470)
	b.resistance("U1.bleed", "K1.out", "G1.-", 10e3)
	capacitor := put(b, "U1.capacitor", &wiring.Capacitor{A: b.node("K1.out"), B: b.node("G1.-"), Farads: 0.0047})

	up, ok := b.settle(t, nil).Charging(capacitor)
	if !ok {
		t.Fatal("not joined")
	}
	near(t, "final voltage", float64(up.Final), 51.2*10e3/(10e3+470.011))
	near(t, "time constant", float64(up.Tau), 0.0047/(1/470.011+1/10e3))
	if _, ok := up.Until(0, 51); ok {
		t.Error("it never gets to 51 V")
	}
	if after, ok := up.Until(20, 20); !ok || after != 0 {
		t.Error("it is where it is at once")
	}

	down, ok := b.settle(t, map[*wiring.Control]string{pack: "off"}).Charging(capacitor)
	if !ok {
		t.Fatal("not joined")
	}
	// 110 s from 52.8 to 5 V at 10 kohm and 4.7 mF (RC law).
	after, ok := down.Until(52.8, 5)
	near(t, "time to 5 V", float64(after), 47*math.Log(52.8/5))
	if !ok || after < 110 || after > 111 {
		t.Errorf("%v s", float64(after))
	}
	near(t, "voltage then", down.At(52.8, after), 5)

	b.part("R9")
	alone := put(b, "R9.capacitor", &wiring.Capacitor{A: b.node("R9.1"), B: b.node("R9.2"), Farads: 1})
	if _, ok := b.settle(t, nil).Charging(alone); ok {
		t.Error("a capacitor that hangs on nothing charges")
	}
	if v := (Charging{Final: 5}).At(3, 1); v != 5 {
		t.Errorf("without a time constant it is there at once, not at %v", v)
	}
}
