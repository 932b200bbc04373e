package position_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/position"
)

// smallCart is a 48 V battery, a reducer to 12 V, and a tangle of fuses, switches, relays,
// resistors, diodes and loads between a few junctions. Anything can be wired to anything:
// most such carts are wrong in several ways.
func smallCart(t testing.TB, rt *rapid.T) *wiring.Harness {
	var text strings.Builder
	line := func(format string, args ...any) { fmt.Fprintf(&text, format+"\n", args...) }
	wires := 0
	wire := func(from, to string) {
		wires++
		line("W%d %s %s", wires, from, to)
	}
	junctions := rapid.IntRange(3, 6).Draw(rt, "junctions")
	anywhere := func() string { return fmt.Sprintf("X%d", rapid.IntRange(1, junctions).Draw(rt, "junction")) }
	// place wires the terminals of a part to junctions.
	place := func(part string, terminals ...string) {
		for _, name := range terminals {
			wire(part+"."+name, anywhere())
		}
	}
	line("G1 source + - 48")
	line("F1 fuse in out 30")
	line("T2 converter in+ in- out in- 12 25")
	wire("G1.+", "F1.in")
	wire("F1.out", "X1")
	wire("G1.-", "X2")
	wire("T2.in+", "X1")
	wire("T2.in-", "X2")
	wire("T2.out", "X3")
	names := []string{"switch", "key", "plug"}
	for i := range rapid.IntRange(1, 4).Draw(rt, "switches") {
		part, name := fmt.Sprintf("S%d", i+1), rapid.SampledFrom(names).Draw(rt, "control")
		places := map[string]string{"switch": "off,on", "key": "off,on", "plug": "out,in"}[name]
		off, on, _ := strings.Cut(places, ",")
		switch rapid.IntRange(0, 3).Draw(rt, "poles") {
		case 0:
			line("%s switch %s %s %s:1,2 %s:2,3", part, name, places, off, on)
		case 1:
			line("%s switch %s %s %s:1,2 %s:3,2", part, name, places, on, on)
		case 2:
			line("%s switch %s %s,both %s:1,2 both:1,2,3", part, name, places, on)
		default:
			line("%s switch %s %s,twice %s:1,2 twice:1,2", part, name, places, on)
			line("W9%d %s.3 capped", i, part)
		}
		place(part, "1", "2", "3")
	}
	for i := range rapid.IntRange(0, 2).Draw(rt, "relays") {
		line("K%d coil 86 85", i+1)
		line("K%d contact 30 87 %s", i+1, rapid.SampledFrom([]string{"", "rest"}).Draw(rt, "rest"))
		if rapid.Bool().Draw(rt, "between the buses") {
			wire(fmt.Sprintf("K%d.30", i+1), "X1")
			wire(fmt.Sprintf("K%d.87", i+1), "X3")
			wire(fmt.Sprintf("K%d.85", i+1), "X2")
			place(fmt.Sprintf("K%d", i+1), "86")
			continue
		}
		place(fmt.Sprintf("K%d", i+1), "86", "85", "30", "87")
	}
	for i := range rapid.IntRange(0, 2).Draw(rt, "resistors") {
		line("R%d resistor 1 2 %v", i+1, rapid.SampledFrom([]float64{0.5, 5, 400, 700, 5000}).Draw(rt, "ohms"))
		place(fmt.Sprintf("R%d", i+1), "1", "2")
	}
	for i := range rapid.IntRange(0, 1).Draw(rt, "diodes") {
		line("V%d diode a k", i+1)
		place(fmt.Sprintf("V%d", i+1), "a", "k")
	}
	for i := range rapid.IntRange(1, 3).Draw(rt, "loads") {
		line("M%d load + - %d", i+1, rapid.IntRange(5, 60).Draw(rt, "watts"))
		place(fmt.Sprintf("M%d", i+1), "+", "-")
	}
	h := bench(t, text.String())
	h.Part("M1").Kind = &wiring.Kind{Name: "motor", Traction: true}
	return h
}

// The pruned sweep and the product of all controls show the same positions for the same
// reasons.
func TestPrunedIsFull(t *testing.T) {
	broken, sums := map[string]int{}, 0
	rapid.Check(t, func(rt *rapid.T) {
		h := smallCart(t, rt)
		c := position.NewCart(h, nil)
		full, err := position.CheckAll(t.Context(), c, position.Properties(), position.CheckOptions{Full: true})
		if err != nil {
			rt.Fatal(err)
		}
		pruned, err := position.CheckAll(t.Context(), c, position.Properties(), position.CheckOptions{})
		if err != nil {
			rt.Fatal(err)
		}
		for i, f := range full {
			p := pruned[i]
			if f.Looked != f.Product && f.Verdict != position.Idle {
				rt.Fatalf("%s: of %d positions the full product has %d", f.Property.ID, f.Product, f.Looked)
			}
			if p.Looked > f.Looked {
				rt.Fatalf("%s: %d positions are left of %d", p.Property.ID, p.Looked, f.Looked)
			}
			if diff := cmp.Diff(verdict(f), verdict(p)); diff != "" {
				rt.Fatalf("%s (-full +pruned):\n%s", f.Property.ID, diff)
			}
			if p.Property.ID == "buses-apart" && p.Looked > 1 && p.Looked < position.All(h).Distinct().Count() {
				sums++
			}
			if f.Verdict == position.Broken {
				broken[f.Property.ID]++
			}
		}
	})
	t.Logf("carts that broke each property: %v; carts of independent switches: %d", broken, sums)
	if testing.Short() {
		return // too few carts to expect each of these
	}
	if sums == 0 {
		t.Error("no cart had independent switches")
	}
	for _, p := range position.Properties() {
		if broken[p.ID] == 0 && p.ID != "settles-everywhere" { // about one in thirty breaks that
			t.Errorf("no cart broke %s: these carts say nothing about it", p.ID)
		}
	}
}

// verdict is what must not depend on what was left out. Where elements race, the full
// product has doubts at positions that pruning by independence does not need to look at.
func verdict(r position.Result) any {
	if r.Verdict == position.Unproved && r.Unsettled.Count == 0 {
		r.Verdict = position.Holds
	}
	var says []string
	for _, x := range r.Counterexamples {
		says = append(says, x.State.Name+": "+x.Subject+": "+x.Says)
		says = append(says, ways(x)...)
	}
	return []any{r.Verdict, says}
}

// In a position that is shown, no control that is away from rest could stay there: with any
// of them at rest the same thing is not broken.
func TestPositionsShownAreMinimal(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		h := smallCart(t, rt)
		c := position.NewCart(h, nil)
		for _, p := range []*position.Property{position.SneakPath(), position.SettlesEverywhere(), position.BusesApart()} {
			r, err := position.Check(t.Context(), c, p, position.CheckOptions{})
			if err != nil {
				rt.Fatal(err)
			}
			for _, x := range r.Counterexamples {
				for _, moved := range position.Moved(h, x.State) {
					if stillBroken(t, c, p, x, moved) {
						rt.Fatalf("%s: %s: %s could stay at rest", p.ID, x.State.Name, moved.Name)
					}
				}
			}
		}
	})
}

// stillBroken checks a property in the one position that a counterexample becomes with one
// control back at rest.
func stillBroken(t testing.TB, c *position.Cart, p *position.Property, x position.Counterexample, back *wiring.Control) bool {
	t.Helper()
	one := *p
	one.Prune, one.May = nil, nil
	one.Premise = func(c *position.Cart, s *position.Space) ([]*position.Space, string) {
		for _, a := range s.Axes() {
			at := x.State.Position(a.Control)
			if a.Control == back {
				at = a.Positions[0]
			}
			var err error
			if s, err = s.Fix(a.Control, at); err != nil {
				t.Fatal(err)
			}
		}
		return []*position.Space{s}, ""
	}
	r, err := position.Check(t.Context(), c, &one, position.CheckOptions{})
	if err != nil || r.Looked != 1 {
		t.Fatalf("%d positions, %v", r.Looked, err)
	}
	for _, y := range r.Counterexamples {
		if y.Subject == x.Subject {
			return true
		}
	}
	return false
}
