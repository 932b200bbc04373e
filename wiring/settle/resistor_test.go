package settle

import (
	"testing"

	"github.com/lugwright/lugwright/wiring/quantity"
)

func TestDivider(t *testing.T) {
	b := newBench()
	g := b.battery("G1", 12, 0.5)
	up := b.resistance("R1.ohms", "R1.1", "R1.2", 2)
	b.resistance("R2.ohms", "R2.1", "R2.2", 3)
	w := b.wire("G1.+", "R1.1", 0.25)
	b.wire("R1.2", "R2.1", 0.125)
	back := b.wire("G1.-", "R2.2", 0.125)

	p := b.settle(t, nil)
	settled(t, p)
	near(t, "current", p.WireAmps(w, 0), 2)
	near(t, "current back", p.WireAmps(back, 0), -2)
	near(t, "current through R1", p.ElementAmps(up), 2)
	near(t, "current of the battery", p.ElementAmps(g), -2)
	near(t, "terminal voltage", p.Volts(b.node("G1.+")), 11)
	near(t, "voltage of R1", p.Across(b.node("R1.1"), b.node("R1.2")), 4)
	near(t, "power of R1", p.Watts(up), 8)
	near(t, "heat of the wire", p.WireWatts(w), 1)
	near(t, "current into R1.1", p.TerminalAmps(b.terminal("R1.1")), 2)
	near(t, "current into G1.+", p.TerminalAmps(b.terminal("G1.+")), -2)
	near(t, "Volts of the reference", p.Volts(p.ReferenceNode()), 0)
	ohms, known := p.WireOhms(w)
	near(t, "resistance of the wire", ohms, quantity.Ohm(0.25))
	if !known {
		t.Error("the wire is known")
	}
}
