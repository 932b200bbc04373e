package settle

import (
	"math"
	"testing"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// Harnesses that no reader lets through settle too: elements between nodes that are none,
// values that are not numbers, switches without a control.
func TestBrokenHarnessesDoNoHarm(t *testing.T) {
	nan := math.NaN()
	none, beyond := wiring.NoNode, wiring.NodeID(12345)
	for name, e := range map[string]wiring.Element{
		"resistor":   &wiring.Resistor{A: none, B: beyond, Ohms: quantity.Ohm(nan)},
		"link":       &wiring.Link{Join: []wiring.NodeID{none, beyond, 0}},
		"empty link": &wiring.Link{},
		"fuse":       &wiring.Fuse{A: none, B: 0, Fitted: true},
		"switch":     &wiring.Switch{Closes: map[string][][]wiring.NodeID{"": {{0, 0}, {0, none}, {0}, {}}}},
		"coil":       &wiring.Coil{A: 0, B: none, Ohms: quantity.Ohm(nan)},
		"contact":    &wiring.Contact{A: 0, B: none},
		"stray coil": &wiring.Contact{A: 0, B: none, Coil: &wiring.Coil{}},
		"diode":      &wiring.Diode{A: none, B: none},
		"capacitor":  &wiring.Capacitor{A: none, B: none},
		"source":     &wiring.Source{A: none, B: 0, Volts: quantity.Volt(nan)},
		"infinite":   &wiring.Source{A: 0, B: none, Volts: quantity.Volt(math.Inf(1))},
		"mains":      &wiring.Mains{L: none, N: none},
		"charger":    &wiring.Charger{A: 0, B: none, L: none, N: 0},
		"converter":  &wiring.Converter{InA: 0, InB: none, OutA: none, OutB: 0},
		"load":       &wiring.Load{A: 0, B: none, Law: wiring.ConstantPower, Watts: quantity.Watt(nan)},
		"lawless":    &wiring.Load{A: 0, B: 0},
		"sense":      &wiring.Sense{At: none, To: 0},
		"driver":     &wiring.Driver{A: 0, B: none, When: &wiring.Condition{Op: 99}},
		"stray sense": &wiring.Driver{A: 0, B: none, When: combined(wiring.All,
			holdsWhen(&wiring.Sense{}), holdsWhen(nil), stands(nil, "on"), combined(wiring.Not), nil)},
	} {
		t.Run(name, func(t *testing.T) {
			b := newBench()
			b.battery("G1", 12, 0.01)
			put(b, "X2.link", &wiring.Link{Join: []wiring.NodeID{b.node("X2.f"), wiring.FrameNode}})
			b.wire("G1.+", "X2.f", 1)
			put(b, "X1.broken", e)
			b.part("X1").Controls = append(b.part("X1").Controls, &wiring.Control{})
			p := b.settle(t, nil)
			settled(t, p)
			p.Waits(e)
			p.Holding(WaitsFor(e))
			p.ElementVolts(e)
			p.On(b.part("X1"))
		})
	}
}
