package rules

import (
	"fmt"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/rule"
)

func chargerWakesPack() *rule.Rule {
	return &rule.Rule{
		ID:    "charger-wakes-pack",
		Title: "each charger starts on a pack that is empty or asleep",
		Level: diag.Warning,
		Why: "A pack that was left to run down opens its own switch: its posts show 0 V, and most chargers wait until they see 25 to 35 V of a 48 V " +
			"battery before they give any. The pack waits for the charger, the charger for the pack, and the cart is dead with the cord in " +
			"although nothing is broken. Of all charging troubles that owners tell of, this one is told most often.",
		Do: "Take a charger that gives its voltage without seeing any (`wakes: yes`), or a pack with a button (`wakes: button`). A charger must also " +
			"start below the voltage of the empty pack.",
		Source: "Makers' manuals of chargers as owners quote them (start at 25 to 35 V of 48 V). Common practice, no published source.",
		Wrong: `parts:
  T1: {wakes: no}
`,
		Right: `parts:
  T1: {wakes: no}
  G1: {wakes: button}
`,
		Run: runChargerWakesPack,
	}
}

func runChargerWakesPack(p *rule.Pass) {
	for _, s := range guarded(p) {
		for _, c := range chargersOf(p, s) {
			judgeWaking(p, s, c)
		}
	}
}

func judgeWaking(p *rule.Pass, s *path.Supply, c *wiring.Charger) {
	source := s.Element.(*wiring.Source)
	pack, charger := source.Part, c.Part
	f := diag.Finding{
		At:       charger.Span("wakes"),
		Related:  defined(pack.Designation, pack.At),
		Subjects: []string{charger.Designation, pack.Designation},
	}
	switch {
	case c.Starts > s.Own.Floor && s.Own.Floor > 0:
		f.At = charger.Span("starts")
		f.Message = fmt.Sprintf("%s starts at %v, and %s has %s when it is empty", charger.Designation, c.Starts, pack.Designation, volts(s.Own.Floor))
		f.Detail = "A pack that was driven to its cut-off is never charged again without help."
		f.Advice = fmt.Sprintf("Take a charger that starts below %s.", volts(s.Own.Floor))
	case c.Wakes == "":
		p.NotChecked(charger.Designation, fmt.Sprintf("it does not say whether it wakes a sleeping pack (%s)", pack.Designation), charger.At)
		return
	case source.Wakes == "":
		p.NotChecked(pack.Designation, "it does not say what wakes it once its protection sleeps", pack.At)
		return
	case source.Wakes == "charger" && c.Wakes == "no":
		f.Message = fmt.Sprintf("%s waits to see a battery, and %s sleeps until a charger gives it voltage", charger.Designation, pack.Designation)
		f.Detail = fmt.Sprintf("Once %s has switched itself off its posts show 0 V: each waits for the other, for ever.", pack.Designation)
		f.Advice = "Take a charger that gives voltage without seeing any, or a pack with a button."
	default:
		return
	}
	p.Report(f)
}
