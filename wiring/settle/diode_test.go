package settle

import (
	"testing"

	"github.com/lugwright/lugwright/wiring"
)

// rectifier puts a diode V1, anode V1.a, between two batteries of these volts.
func rectifier(anode, cathode float64) (*bench, *wiring.Diode) {
	b := newBench()
	b.battery("G1", anode, 0.01)
	b.battery("G2", cathode, 0.02)
	d := put(b, "V1.diode", &wiring.Diode{A: b.node("V1.a"), B: b.node("V1.k")})
	b.wire("G1.+", "V1.a", 0.03)
	b.wire("V1.k", "G2.+", 0.03)
	b.wire("G1.-", "G2.-", 0.01)
	return b, d
}

func TestDiode(t *testing.T) {
	const loop = 0.01 + 0.02 + 0.03 + 0.03 + 0.01 + diodeOhms
	for _, c := range []struct {
		name           string
		anode, cathode float64
		amps           float64
	}{
		{"forward", 14, 12, (2 - diodeDrop) / loop},
		{"below its drop", 12.6, 12, 0},
		{"reverse", 12, 14, 0},
		{"reverse battery", -12, 12, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			b, d := rectifier(c.anode, c.cathode)
			p := b.settle(t, nil)
			settled(t, p)
			near(t, "current", float64(p.ElementAmps(d)), c.amps)
			if p.Holds(d) != (c.amps > 0) {
				t.Errorf("conducts: %v", p.Holds(d))
			}
		})
	}
}

// Two supplies feed one bus through diodes: the higher feeds it alone.
func TestTheHigherOfTwoFeedsThroughItsDiode(t *testing.T) {
	b := newBench()
	for _, g := range []struct {
		n     string
		volts float64
	}{{"1", 12}, {"2", 13}} {
		b.battery("G"+g.n, g.volts, 0.01)
		put(b, "V"+g.n+".diode", &wiring.Diode{A: b.node("V" + g.n + ".a"), B: b.node("V" + g.n + ".k")})
		b.wire("G"+g.n+".+", "V"+g.n+".a", 0.01)
		b.wire("V"+g.n+".k", "R1.1", 0.01)
		b.wire("G"+g.n+".-", "R1.2", 0.01)
	}
	b.resistance("R1.ohms", "R1.1", "R1.2", 4)
	p := b.settle(t, nil)
	settled(t, p)
	near(t, "current of the lower", p.ElementAmps(b.part("G1").Elements[0]), 0)
	near(t, "current of the higher", p.ElementAmps(b.part("G2").Elements[0]), -(13-diodeDrop)/(4+0.04+diodeOhms))
}

// A suppression diode the wrong way round is a short across the coil: it opens the key
// fuse, and nothing chatters.
func TestReversedSuppressionDiodeOpensTheKeyFuse(t *testing.T) {
	build := func(anode, cathode string) (*bench, *wiring.Fuse, *wiring.Coil) {
		b := newBench()
		b.battery("G1", 52.8, 0.02)
		f := put(b, "F1.fuse", &wiring.Fuse{A: b.node("F1.in"), B: b.node("F1.out"), Fitted: true, Rating: 5})
		coil := b.relay("K1", 160, 32, 12)
		put(b, "V1.diode", &wiring.Diode{A: b.node("V1.a"), B: b.node("V1.k")})
		enable := put(b, "U1.key", &wiring.Sense{At: b.node("U1.key"), To: b.node("U1.B-"), Above: 36, Ohms: 100e3})
		put(b, "U1.coil", &wiring.Driver{A: b.node("U1.coil"), B: b.node("U1.B-"), When: holdsWhen(enable)})
		b.wire("G1.+", "F1.in", 0.004)
		b.wire("F1.out", "K1.86", 0.03)
		b.wire("F1.out", "U1.key", 0.04)
		b.wire("K1.85", "U1.coil", 0.03)
		b.wire("U1.B-", "G1.-", 0.001)
		b.wire(anode, "V1.a", 0.001)
		b.wire(cathode, "V1.k", 0.001)
		return b, f, coil
	}
	b, f, coil := build("K1.85", "K1.86")
	p := b.settle(t, nil)
	settled(t, p)
	if !p.Holds(f) || !p.Holds(coil) {
		t.Error("the right way round the solenoid pulls in")
	}
	b, f, coil = build("K1.86", "K1.85")
	p = b.settle(t, nil)
	settled(t, p)
	if p.Holds(f) || p.Holds(coil) || len(p.Opened()) != 1 {
		t.Errorf("reversed: fuse whole %v, energised %v, opened %v", p.Holds(f), p.Holds(coil), refs(p.Opened()))
	}
}

// What hangs on a battery through a diode in its forward direction takes its voltage; what
// hangs on it through one in reverse floats.
func TestBehindADiode(t *testing.T) {
	b := newBench()
	b.battery("G1", 12, 0.01)
	put(b, "V1.diode", &wiring.Diode{A: b.node("V1.a"), B: b.node("V1.k")})
	put(b, "V2.diode", &wiring.Diode{A: b.node("V2.a"), B: b.node("V2.k")})
	b.wire("G1.+", "V1.a", 0.01)
	b.wire("G1.+", "V2.k", 0.01)
	p := b.settle(t, nil)
	settled(t, p)
	near(t, "forward", p.Volts(b.node("V1.k")), 12-diodeDrop)
	if !p.Floating(b.node("V2.a")) || p.Floating(b.node("V1.k")) {
		t.Error("only what is behind the reversed diode floats")
	}
}
