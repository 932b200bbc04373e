package rules

import (
	"fmt"
	"math"
	"strings"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/rule"
	"github.com/lugwright/lugwright/wiring/stack"
)

func stackOrder() *rule.Rule {
	return &rule.Rule{
		ID:    "stack-order",
		Title: "lugs are stacked with the largest conductor against the terminal's face",
		Level: diag.Warning,
		Why: "Current goes from lug face to lug face. With the main cable outermost, its 100 A and more cross every smaller lug below it, each a " +
			"thinner tab with a joint of its own: 1 mohm more is 10 W of heat at 100 A, in the stack that is hardest to look at.",
		Do: "Put the largest conductor against the face, then in falling size, the smallest under the nut, without washers between lugs. " +
			"Leave `stacks` out and the program works out the order.",
		Source: "AC 43.13-1B para 11-174 as taught in a training deck on it; ABYC E-11 as surveyors state it.",
		Wrong: `stacks: {G1.-: [W52, W7]}   # 6 AWG against the face, 2 AWG on top
`,
		Right: `stacks: {G1.-: [W7, W52]}
`,
		Run: runStackOrder,
	}
}

func runStackOrder(p *rule.Pass) {
	for _, s := range p.Harness.Stacks {
		lugs := stack.Of(p.Harness, s.Terminal, p.Handbook, nil)
		for _, l := range lugs {
			if l.Area == 0 {
				p.NotChecked(l.Wire.Name(), "it has no size, so nobody can say where its lug belongs on "+s.Terminal.Ref(), l.Wire.Span("size"))
			}
		}
		inner, outer, found := stack.Misplaced(lugs)
		if !found {
			continue
		}
		p.Report(diag.Finding{
			Message: fmt.Sprintf("on %s the lug of %s (%v) sits under that of %s (%v)", s.Terminal.Ref(),
				inner.Wire.Name(), inner.Size, outer.Wire.Name(), outer.Size),
			Detail:   fmt.Sprintf("As built, from the face: %s.", lugNames(lugs)),
			Advice:   fmt.Sprintf("Stack it so, from the face: %s.", lugNames(stack.Order(s.Terminal, p.Handbook, mostAmps(p)))),
			At:       s.At,
			Subjects: subjects([]string{s.Terminal.Ref(), outer.Wire.Name(), inner.Wire.Name()}),
		})
	}
}

// mostAmps tells the largest current of a wire in any state, at the floor.
func mostAmps(p *rule.Pass) stack.Amps {
	return func(w *wiring.Wire) quantity.Ampere {
		most := 0.0
		for _, s := range p.Harness.States {
			if at := p.Point(s, rule.Floor); at != nil {
				most = max(most, math.Abs(float64(at.WireAmps(w, 0))))
			}
		}
		return quantity.Ampere(most)
	}
}

func lugNames(lugs []stack.Lug) string {
	names := make([]string, len(lugs))
	for i, l := range lugs {
		names[i] = l.Wire.Name()
		if l.Size.Known() {
			names[i] += fmt.Sprintf(" (%v)", l.Size)
		}
	}
	return strings.Join(names, ", ")
}
