package rules

import (
	"fmt"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/rule"
)

func coldCharge() *rule.Rule {
	return &rule.Rule{
		ID:    "cold-charge",
		Title: "it is known what the pack does when it is to be charged below freezing",
		Level: diag.Note,
		Why: "Below 0 C lithium plates on the anode of an LFP cell that is charged, even at a tenth of its capacity an hour: the cell loses capacity " +
			"for good and may short itself later. A pack that blocks charge then refuses the charger and the motor's braking while it still drives; " +
			"in an unheated shed the cart is found empty in the morning with its charger on. A pack that takes the charge is damaged unseen.",
		Do: "Tell whoever gets the cart: charge it above 5 C, best right after driving. Where it stands in the frost all winter, take a pack that warms " +
			"itself first (`cold: heats`).",
		Source: "Makers' data of LFP cells, from memory: charge 0 to 45 C. Common practice, no published source.",
		Wrong: `parts:
  G1: {cold: blocks}
`,
		Right: `parts:
  G1: {cold: heats}
`,
		Run: runColdCharge,
	}
}

func runColdCharge(p *rule.Pass) {
	for _, s := range guarded(p) {
		chargers := chargersOf(p, s)
		if len(chargers) == 0 {
			continue
		}
		switch source := s.Element.(*wiring.Source); source.Cold {
		case "":
			p.NotChecked(source.Part.Designation, "it does not say what it does with charge below freezing", source.Part.At)
		case "blocks", "takes":
			reportCold(p, s, chargers)
		}
	}
}

func reportCold(p *rule.Pass, s *path.Supply, chargers []*wiring.Charger) {
	source := s.Element.(*wiring.Source)
	part := source.Part
	names := chargerNames(chargers)
	f := diag.Finding{
		Message:  fmt.Sprintf("below 0 C %s takes no charge, neither from %s nor from braking", part.Designation, list(names)),
		Detail:   "Its protection blocks charge in the cold and goes on driving until it is empty.",
		Advice:   "Say so at hand-over: charge above 5 C, best right after driving.",
		At:       part.Span("cold"),
		Subjects: subjects([]string{part.Designation}, names),
	}
	if source.Cold == "takes" {
		f.Level = diag.Warning
		f.Message = fmt.Sprintf("nothing keeps %s from charging %s below 0 C", list(names), part.Designation)
		f.Detail = "Charged in the frost an LFP cell plates lithium, loses capacity for good and may short itself later."
		f.Advice = "Take a charger or a pack that refuses charge below 0 C, or warm the pack first; until then a placard at the inlet."
	}
	p.Report(f)
}

func chargerNames(chargers []*wiring.Charger) []string {
	var names []string
	for _, c := range chargers {
		names = append(names, c.Part.Designation)
	}
	return once(names)
}
