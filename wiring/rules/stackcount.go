package rules

import (
	"fmt"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/rule"
)

func stackCount() *rule.Rule {
	return &rule.Rule{
		ID:    "stack-count",
		Title: "a terminal holds no more lugs than it is made for, a stud four",
		Level: diag.Warning,
		Why: "Each lug adds two faces that must stay tight. From five on, the stack is taller than the thread has grip, the nut settles on soft " +
			"copper, and the joint that matters most warms up: 20 mohm at 5 A is nothing, at 200 A it is 800 W.",
		Do: "Mount a bus bar beside the terminal, join the two by one cable of the main size, and move the smaller lugs to the bar.",
		Source: "AC 43.13-1B para 11-174 b: four on a stud, or three and a bus; ABYC E-11 as surveyors state it: four. Factory posts of carts are " +
			"seen with five; the default warns from five.",
		Wrong: `parts:
  X4: {kind: bus-bar, title: second negative bus}
wires:
  W101: {from: G1.-, to: X4.1, colour: BK, size: 10 AWG, length: 2 ft}
  W102: {from: G1.-, to: X4.2, colour: BK, size: 10 AWG, length: 2 ft}
  W103: {from: G1.-, to: X4.3, colour: BK, size: 10 AWG, length: 2 ft}   # the fifth lug
`,
		Right: `parts:
  X4: {kind: bus-bar, title: second negative bus}
wires:
  W101: {from: G1.-, to: X4.1, colour: BK, size: 6 AWG, length: 2 ft}    # one cable to a bus bar
`,
		Run: runStackCount,
	}
}

// usualHolds is what a stud holds whose kind says nothing else.
const usualHolds = 4

func runStackCount(p *rule.Pass) {
	for _, part := range p.Harness.Parts {
		for _, t := range part.Terminals {
			if most := mostOn(p.Harness, t); most > 0 && len(t.Wires) > most {
				reportCount(p, t, most)
			}
		}
	}
}

// mostOn is how many wires a terminal takes: for a stud the job's limit, unless its kind
// says something of its own.
func mostOn(h *wiring.Harness, t *wiring.Terminal) int {
	if t.Form.Type == wiring.Stud && t.Holds == usualHolds {
		return h.Limits.Lugs
	}
	return t.Holds
}

func reportCount(p *rule.Pass, t *wiring.Terminal, most int) {
	names := wireNames(t.Wires)
	advice := "Move the smallest to a bus bar."
	if t.Form.Type != wiring.Stud {
		advice = "Join them at a splice, and bring one wire here."
	}
	last := t.Wires[len(t.Wires)-1]
	p.Report(diag.Finding{
		Message:  fmt.Sprintf("%s holds %d and takes %d: %s", t.Ref(), len(names), most, list(names)),
		Detail:   fmt.Sprintf("%s is a %s; the limit is %d.", t.Ref(), form(t.Form), most),
		Advice:   advice,
		At:       landing(last, t.Node),
		Related:  defined(t.Part.Designation, t.Part.At),
		Subjects: subjects([]string{t.Ref()}, names, []string{t.Part.Designation}),
	})
}

// form is a terminal's form in words: "stud M8".
func form(f wiring.Form) string {
	if f.Size == "" {
		return string(f.Type)
	}
	return string(f.Type) + " " + f.Size
}
