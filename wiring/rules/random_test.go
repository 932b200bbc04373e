package rules_test

import (
	"context"
	"fmt"
	"strings"
	"testing"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/path/pathtest"
	"github.com/lugwright/lugwright/wiring/rule"
	"github.com/lugwright/lugwright/wiring/rules"
	"pgregory.net/rapid"
)

// shapes is what a random part may hold; terminals are letters.
var shapes = []string{
	"source a b 51.2", "source a b 12.8", "fuse a b 5", "fuse a b 200", "fuse a b 0",
	"switch key off,on on:a,b", "switch switch up,down up:a,b down:a,c", "resistor a b 470", "resistor a b 0.01",
	"load a b 20", "diode a b", "driver a b", "sense a b 24", "converter a b c b 12.5 25", "charger a b 58.4", "link a b c",
	"coil a b", "link a frame",
}

// TestRandomHarnesses lets the rules loose on wiring that nobody would lay: whatever it
// is, they come to an end, say the same twice, and name only what exists.
func TestRandomHarnesses(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		text := randomText(rt)
		first, second := runOn(t, text), runOn(t, text)
		if render(first) != render(second) {
			rt.Fatalf("two runs differ on\n%s\n%s\n%s", text, render(first), render(second))
		}
		h := pathtest.Harness(t, text)
		for _, f := range first.Findings {
			if f.Message == "" || f.Rule == "" || f.Level == 0 {
				rt.Fatalf("an empty finding on\n%s\n%+v", text, f)
			}
			for _, s := range f.Subjects {
				if s != "frame" && h.Wire(s) == nil && !knownTerminal(h, s) {
					rt.Fatalf("%s names %q, which is not there:\n%s", f.Rule, s, text)
				}
			}
		}
	})
}

func knownTerminal(h *wiring.Harness, name string) bool {
	part, rest, _ := strings.Cut(name, ".")
	p := h.Part(part)
	if p == nil {
		return false
	}
	if rest == "" || p.Terminal(rest) != nil {
		return true
	}
	for _, el := range p.Elements {
		if el.Base().Name == rest {
			return true
		}
	}
	return false
}

func randomText(rt *rapid.T) string {
	var b strings.Builder
	parts := rapid.IntRange(1, 8).Draw(rt, "parts")
	for i := 1; i <= parts; i++ {
		for range rapid.IntRange(1, 2).Draw(rt, "elements") {
			fmt.Fprintf(&b, "X%d %s\n", i, rapid.SampledFrom(shapes).Draw(rt, "shape"))
		}
	}
	end := rapid.Custom(func(rt *rapid.T) string {
		return fmt.Sprintf("X%d.%s", rapid.IntRange(1, parts).Draw(rt, "part"), rapid.SampledFrom([]string{"a", "b", "c"}).Draw(rt, "terminal"))
	})
	for i := range rapid.IntRange(0, 14).Draw(rt, "wires") {
		to := end.Draw(rt, "to")
		if rapid.IntRange(0, 9).Draw(rt, "capped") == 0 {
			to = "capped"
		}
		fmt.Fprintf(&b, "W%d %s %s\n", i+1, end.Draw(rt, "from"), to)
	}
	return b.String()
}

func runOn(t *testing.T, text string) rule.Result {
	t.Helper()
	h := pathtest.Harness(t, text)
	off, moving := &wiring.State{Name: "key off"}, &wiring.State{Name: "driving", Expect: []wiring.Expectation{{Traction: true, On: true}}, Set: map[*wiring.Control]string{}}
	for _, p := range h.Parts {
		for _, c := range p.Controls {
			moving.Set[c] = c.Positions[1]
		}
	}
	h.States = []*wiring.State{off, moving}
	h.Interlock = &wiring.Interlock{Kind: wiring.InterlockPackPositive}
	if len(h.Wires) > 0 {
		h.Wires[0].Interlock = true
		h.Interlock.Wires = h.Wires[:1]
	}
	result, err := rule.Run(context.Background(), h, rules.All(), rule.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return result
}
