package settle

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// relay adds a coil, and contacts that close and open with it, to a part.
func (b *bench) relay(part string, ohms, pullIn, dropOut float64) *wiring.Coil {
	coil := put(b, part+".coil", &wiring.Coil{
		A: b.node(part + ".86"), B: b.node(part + ".85"),
		Ohms: quantity.Ohm(ohms), PullIn: quantity.Volt(pullIn), DropOut: quantity.Volt(dropOut),
	})
	put(b, part+".make", &wiring.Contact{A: b.node(part + ".30"), B: b.node(part + ".87"), Coil: coil})
	put(b, part+".break", &wiring.Contact{A: b.node(part + ".30"), B: b.node(part + ".87a"), Coil: coil, RestClosed: true})
	return coil
}

// atVolts gives every source this voltage.
func atVolts(v quantity.Volt) func(*wiring.Source) quantity.Volt {
	return func(*wiring.Source) quantity.Volt { return v }
}

func TestCoilHasHysteresis(t *testing.T) {
	b := newBench()
	b.battery("G1", 48, 0.01)
	coil := b.relay("K1", 100, 32, 12)
	b.wire("G1.+", "K1.86", 1)
	b.wire("G1.-", "K1.85", 1)
	var before *Point
	for _, step := range []struct {
		volts quantity.Volt
		want  bool
	}{{30, false}, {33, true}, {20, true}, {12.3, true}, {12.1, false}, {30, false}, {40, true}} {
		p := b.settleWith(t, nil, Options{After: before, OpenCircuit: atVolts(step.volts)})
		settled(t, p)
		if p.Holds(coil) != step.want {
			t.Errorf("at %v the coil is energised: %v, want %v", step.volts, p.Holds(coil), step.want)
		}
		for _, e := range b.part("K1").Elements[1:] {
			if p.Holds(e) != (step.want == (refOf(e) == "K1.make")) {
				t.Errorf("at %v %s is closed: %v", step.volts, refOf(e), p.Holds(e))
			}
		}
		before = p
	}
}

// An economiser turns 24 ohm into 4 W once the contact has closed, and back below drop-out.
func TestEconomiser(t *testing.T) {
	b := newBench()
	b.battery("G1", 48, 0.01)
	coil := put(b, "K1.coil", &wiring.Coil{
		A: b.node("K1.86"), B: b.node("K1.85"), Ohms: 24, Hold: 4, PullIn: 30, DropOut: 10, Polarised: true,
	})
	feed := b.wire("G1.+", "K1.86", 0.99)
	back := b.wire("G1.-", "K1.85", 1)

	p := b.settleWith(t, nil, Options{OpenCircuit: atVolts(25)})
	settled(t, p)
	near(t, "current below pull-in", p.WireAmps(feed, 0), 25/26.0)

	p = b.settle(t, nil)
	settled(t, p)
	near(t, "holding power", p.Watts(coil), 4)
	if !p.Holds(coil) || !p.On(b.part("K1")) {
		t.Error("the coil is not energised")
	}

	back.To, back.From = back.From, back.To // no electrical meaning
	for _, w := range b.h.Wires {
		for _, end := range w.Ends() {
			switch end.Terminal {
			case b.terminal("K1.85"):
				end.Terminal = b.terminal("K1.86")
			case b.terminal("K1.86"):
				end.Terminal = b.terminal("K1.85")
			}
		}
	}
	if p = b.settle(t, nil); p.Holds(coil) {
		t.Error("a polarised coil is energised backwards")
	}
}

// A relay that feeds its coil through its own resting contact is a buzzer.
func TestBuzzerChatters(t *testing.T) {
	b := newBench()
	b.battery("G1", 12, 0.01)
	b.relay("K1", 90, 8, 2)
	b.wire("G1.+", "K1.30", 0.01)
	b.wire("K1.87a", "K1.86", 0.01)
	b.wire("K1.85", "G1.-", 0.01)
	p := b.settle(t, nil)
	if p.Outcome != Chatters {
		t.Fatalf("%v", p.Outcome)
	}
	if d := cmp.Diff([]string{"K1.coil"}, refs(p.Cycle)); d != "" {
		t.Error(d)
	}
	if d := cmp.Diff("K1.coil alternates: K1.coil sees 0 V to 11.99 V", p.Why); d != "" {
		t.Error(d)
	}
}

// A solenoid that holds itself has two answers: what was closed before decides.
func TestSelfHoldingRelay(t *testing.T) {
	b := newBench()
	b.battery("G1", 12, 0.01)
	coil := b.relay("K1", 90, 8, 2)
	start := b.key("S1")
	b.wire("G1.+", "S1.in", 0.01)
	b.wire("S1.out", "K1.86", 0.01)
	b.wire("G1.+", "K1.30", 0.01)
	b.wire("K1.87", "K1.86", 0.01)
	b.wire("K1.85", "G1.-", 0.01)
	released := &wiring.State{Name: "released"}
	pressed := &wiring.State{Name: "pressed", Set: map[*wiring.Control]string{start: "on"}}
	held := &wiring.State{Name: "held", After: "pressed"}
	b.h.States = []*wiring.State{released, pressed, held}
	n := Compile(b.h)
	for _, c := range []struct {
		state *wiring.State
		want  bool
	}{{released, false}, {pressed, true}, {held, true}} {
		p, err := n.Settle(t.Context(), c.state, Options{})
		if err != nil {
			t.Fatal(err)
		}
		settled(t, p)
		if p.Holds(coil) != c.want {
			t.Errorf("%s: energised %v, want %v", c.state.Name, p.Holds(coil), c.want)
		}
	}
}

// A point that is given goes before the state that a state names.
func TestGivenPointGoesBeforeTheNamedState(t *testing.T) {
	b := newBench()
	b.battery("G1", 20, 0.01) // between drop-out and pull-in: what was, stays
	coil := b.relay("K1", 100, 32, 12)
	b.wire("G1.+", "K1.86", 1)
	b.wire("G1.-", "K1.85", 1)
	low, up := &wiring.State{Name: "low"}, &wiring.State{Name: "after low", After: "low"}
	b.h.States = []*wiring.State{low, up}
	n := Compile(b.h)
	high, _ := n.Settle(t.Context(), low, Options{OpenCircuit: atVolts(48)})
	named, _ := n.Settle(t.Context(), up, Options{})
	given, _ := n.Settle(t.Context(), up, Options{After: high})
	if d := cmp.Diff([]bool{true, false, true}, []bool{high.Holds(coil), named.Holds(coil), given.Holds(coil)}); d != "" {
		t.Error(d)
	}
}

// States that begin with each other come to an end.
func TestStatesThatBeginWithEachOther(t *testing.T) {
	b := newBench()
	b.battery("G1", 12, 0.01)
	one := &wiring.State{Name: "one", After: "two"}
	two := &wiring.State{Name: "two", After: "one"}
	b.h.States = []*wiring.State{one, two}
	p, err := State(t.Context(), b.h, one, Options{})
	if err != nil {
		t.Fatal(err)
	}
	settled(t, p)
}

// Two relays, each fed through the resting contact of the other: both pull in, both let
// go, for ever, if both act at once. On a cart one of them wins.
func TestRaceHasAnOutcome(t *testing.T) {
	b := newBench()
	b.battery("G1", 12, 0.01)
	first := b.relay("K1", 90, 8, 2)
	second := b.relay("K2", 90, 9, 2)
	b.wire("G1.+", "K1.30", 0.01)
	b.wire("G1.+", "K2.30", 0.01)
	b.wire("K2.87a", "K1.86", 0.01)
	b.wire("K1.87a", "K2.86", 0.01)
	b.wire("K1.85", "G1.-", 0.01)
	b.wire("K2.85", "G1.-", 0.01)
	p := b.settle(t, nil)
	settled(t, p)
	// 12 V is 1/3 above the 9 V of K2 and 1/2 above the 8 V of K1: K2 is nearer.
	if p.Holds(first) || !p.Holds(second) {
		t.Errorf("K1 %v, K2 %v: the one nearest to its threshold acts first", p.Holds(first), p.Holds(second))
	}
	if !p.OrderMatters {
		t.Error("the order matters")
	}
	if d := cmp.Diff("the outcome depends on which acts first: K1.coil and K2.coil", p.Why); d != "" {
		t.Error(d)
	}
}

func TestContactWelded(t *testing.T) {
	b := newBench()
	b.battery("G1", 48, 0.01)
	b.relay("K1", 100, 32, 12)
	load := b.resistance("R1.ohms", "R1.1", "R1.2", 10)
	b.wire("G1.+", "K1.30", 0.01)
	b.wire("K1.87", "R1.1", 0.01)
	b.wire("R1.2", "G1.-", 0.01)
	n := Compile(b.h)
	weld := b.part("K1").Elements[1]
	st := &wiring.State{Name: "off"}
	sound, _ := n.Settle(t.Context(), st, Options{})
	welded, _ := n.With(ClosedElement(weld)).Settle(t.Context(), st, Options{})
	again, _ := n.Settle(t.Context(), st, Options{})
	if sound.ElementAmps(load) != 0 || again.ElementAmps(load) != 0 || sound.Holds(weld) {
		t.Error("a sound contact is open at rest")
	}
	near(t, "current through the welded contact", float64(welded.ElementAmps(load)), 48/(0.01*4+contactOhms+10))
	if !welded.Holds(weld) {
		t.Error("a welded contact is closed")
	}
}
