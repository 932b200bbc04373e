package settle

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
)

func TestSense(t *testing.T) {
	for _, c := range []struct {
		name  string
		sense wiring.Sense
		volts []quantity.Volt
		want  []bool
	}{
		{"above", wiring.Sense{Above: 20, Back: 12}, []quantity.Volt{19, 21, 13, 11, 19}, []bool{false, true, true, false, false}},
		{"above, back left out", wiring.Sense{Above: 20}, []quantity.Volt{19, 20.1, 18.2, 17.8}, []bool{false, true, true, false}},
		{"above, reversed", wiring.Sense{Above: 20}, []quantity.Volt{-30}, []bool{false}},
		{"below", wiring.Sense{Below: 1, Back: 2}, []quantity.Volt{1.5, 0.9, 1.9, 2.1, 1.5}, []bool{false, true, true, false, false}},
		{"below, back left out", wiring.Sense{Below: 1}, []quantity.Volt{1.05, 0.9, 1.05, 1.2}, []bool{false, true, true, false}},
		{"either way", wiring.Sense{Above: 4, EitherWay: true}, []quantity.Volt{-3, -5, 5}, []bool{false, true, true}},
	} {
		t.Run(c.name, func(t *testing.T) {
			b := newBench()
			b.battery("G1", 1, 0.1)
			s := c.sense
			s.At, s.To, s.Ohms = b.node("U1.key"), b.node("U1.B-"), 1000
			put(b, "U1.key", &s)
			w := b.wire("G1.+", "U1.key", 0.1)
			b.wire("G1.-", "U1.B-", 0.1)
			var before *Point
			for i, v := range c.volts {
				p := b.settleWith(t, nil, Options{After: before, OpenCircuit: atVolts(v)})
				settled(t, p)
				if p.Holds(&s) != c.want[i] {
					t.Errorf("step %d at %v: %v, want %v", i, v, p.Holds(&s), c.want[i])
				}
				near(t, "current", float64(p.WireAmps(w, 0)), float64(v)/1000.3)
				before = p
			}
		})
	}
}

// What keeps a driver open is said leaf by leaf.
func TestUnmet(t *testing.T) {
	b := newBench()
	b.battery("G1", 48, 0.1)
	b.wire("G1.+", "U1.key", 0.1)
	b.wire("G1.-", "U1.B-", 0.1)
	sense := func(name string) *wiring.Sense {
		return put(b, "U1."+name, &wiring.Sense{At: b.node("U1." + name), To: b.node("U1.B-"), Above: 36})
	}
	key, lock := sense("key"), sense("interlock")
	forward, reverse := sense("forward"), sense("reverse")
	pedal := b.lever("S4", "pedal", "up", "down")
	when := combined(wiring.All,
		holdsWhen(key), holdsWhen(lock),
		combined(wiring.Any, holdsWhen(forward), holdsWhen(reverse)),
		stands(pedal, "down"), combined(wiring.Not, holdsWhen(key)), holdsWhen(lock))
	d := put(b, "U1.coil", &wiring.Driver{A: b.node("U1.coil"), B: b.node("U1.B-"), When: when})
	p := b.settle(t, nil)
	settled(t, p)
	if p.Holds(d) || p.Holding(when) {
		t.Fatal("the driver is closed")
	}
	var got []string
	for _, u := range p.Waits(d) {
		text := u.Name
		if !u.Want {
			text = "not " + text
		}
		if u.Control != nil {
			text += "=" + u.Needs
		}
		got = append(got, text)
	}
	want := []string{"U1.interlock", "U1.forward", "U1.reverse", "S4.pedal=down", "not U1.key"}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
	if p.Unmet(holdsWhen(key)) != nil || p.Unmet(nil) != nil {
		t.Error("what holds has nothing unmet")
	}
}

func TestDriverFollowsItsCondition(t *testing.T) {
	b := newBench()
	b.battery("G1", 48, 0.1)
	key := b.key("S1")
	s := put(b, "U1.key", &wiring.Sense{At: b.node("U1.key"), To: b.node("U1.B-"), Above: 36})
	d := put(b, "U1.coil", &wiring.Driver{A: b.node("U1.coil"), B: b.node("U1.B-"), When: holdsWhen(s), Ohms: 0.5})
	b.resistance("R1.ohms", "R1.1", "R1.2", 99)
	b.wire("G1.+", "S1.in", 0.1)
	b.wire("S1.out", "U1.key", 0.1)
	b.wire("G1.+", "R1.1", 0.1)
	b.wire("R1.2", "U1.coil", 0.1)
	b.wire("U1.B-", "G1.-", 0.1)
	if p := b.settle(t, nil); p.Holds(d) || p.ElementAmps(d) != 0 {
		t.Error("closed with the key off")
	}
	p := b.settle(t, map[*wiring.Control]string{key: "on"})
	if !p.Holds(d) || p.ElementAmps(d) < 0.47 {
		t.Errorf("open with the key on: %v", p.ElementAmps(d))
	}
	if p.Position(key) != "on" {
		t.Errorf("the key stands at %q", p.Position(key))
	}
}
