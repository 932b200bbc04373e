package sheet

import (
	"slices"
	"strings"

	"github.com/lugwright/lugwright/render/sheet/frame"
	"github.com/lugwright/lugwright/wiring"
)

// Cautions lists what can hurt people or damage this cart, in full, most serious first, with
// the signal words of ANSI Z535.4: only what its own parts, or the work on them, call for.
// Which there are is common practice of the trade; there is no published list for carts.
func (b *Book) Cautions() []frame.Caution {
	var all []frame.Caution
	for _, one := range fullHazards() {
		if one.of(b) {
			all = append(all, frame.Caution{Word: one.word, Text: one.text})
		}
	}
	return all
}

// fullHazard is a caution, and when it is called for.
type fullHazard struct {
	word frame.SignalWord
	text string
	of   func(*Book) bool
}

func fullHazards() []fullHazard {
	return []fullHazard{
		{frame.Warning, "Arc and burns. The pack drives thousands of amperes into a tool. Cover both posts; one tool, one post; no rings or watches.", anyPart(has[*wiring.Source])},
		{frame.Warning, "Stored charge. Capacitors stay charged after the pack is off, and in tow. Measure under 5 V between the controller's B+ and B− before you touch anything.", anyPart(has[*wiring.Capacitor])},
		{frame.Warning, "The cart can start or roll. Chock it, and raise the driven wheels for the first run.", anyPart(func(p *wiring.Part) bool { return p.Kind.Traction })},
		{frame.Warning, "Drive-away with the cord in. Pull the cord before driving, and try at hand-over that the cart does not move while it is plugged in.", anyPart(isCharged)},
		{frame.Warning, "When the pack opens its own protection, drive, lamps and any electric brake go out at once, also at speed.", anyPart(has[*wiring.Source])},
		{frame.Warning, "The pack is above 60 V when full: a touch can kill. Work on it only with insulated tools and gloves.", overTouch},
		{frame.Warning, "Mains in the charger. Pull the plug before its cover comes off; its case is earthed through the cord.", anyPart(has[*wiring.Mains])},
		{frame.Warning, "More than one battery. With the pack off the other source stays live.", severalSources},
		{frame.Careful, "Battery acid, and batteries that are heavy: goggles and gloves, lift with two people or a hoist.", hadLeadAcid},
		{frame.Careful, "The pre-charge resistor gets hot.", anyPart(hotResistor)},
		{frame.Notice, "Do not charge the pack below 0 °C.", hasChemistry("LFP")},
		{frame.Notice, "Never connect a charger for lead-acid batteries to this pack.", hasChemistry("LFP")},
		{frame.Notice, "Tow the cart only with its switch in tow.", anyPart(hasTow)},
		{frame.Notice, "Fitting lamps does not make it a street vehicle (49 CFR 571.500).", anyPart(isLamp)},
	}
}

// anyPart holds for a cart with a part of which f holds.
func anyPart(f func(*wiring.Part) bool) func(*Book) bool {
	return func(b *Book) bool { return slices.ContainsFunc(b.Harness.Parts, f) }
}

func isCharged(p *wiring.Part) bool { return has[*wiring.Charger](p) || has[*wiring.Mains](p) }

func sourcesOf(parts []*wiring.Part) []*wiring.Source {
	var all []*wiring.Source
	for _, p := range parts {
		for _, e := range p.Elements {
			if s, ok := e.(*wiring.Source); ok {
				all = append(all, s)
			}
		}
	}
	return all
}

func severalSources(b *Book) bool { return len(sourcesOf(b.Harness.Parts)) > 1 }

func overTouch(b *Book) bool {
	return slices.ContainsFunc(sourcesOf(b.Harness.Parts), func(s *wiring.Source) bool {
		p, err := b.Handbook.Pack(s.Chemistry, s.Cells)
		return err == nil && !b.Handbook.Touchable(p)
	})
}

func hasChemistry(name string) func(*Book) bool {
	return func(b *Book) bool {
		return slices.ContainsFunc(sourcesOf(b.Harness.Parts), func(s *wiring.Source) bool { return s.Chemistry == name })
	}
}

// hadLeadAcid holds if lead-acid batteries are on the cart, or are taken off it.
func hadLeadAcid(b *Book) bool {
	parts := slices.Clone(b.Harness.Parts)
	for _, r := range b.Harness.Before {
		parts = append(parts, r.Part)
	}
	return slices.ContainsFunc(sourcesOf(parts), func(s *wiring.Source) bool { return s.Chemistry == "lead-acid" })
}

// hotResistor holds for one that may dissipate what burns a finger: 5 W and more, our own
// choice.
func hotResistor(p *wiring.Part) bool {
	return slices.ContainsFunc(p.Elements, func(e wiring.Element) bool {
		r, ok := e.(*wiring.Resistor)
		return ok && r.Heat >= 5
	})
}

func hasTow(p *wiring.Part) bool {
	return slices.ContainsFunc(p.Controls, func(c *wiring.Control) bool { return slices.Contains(c.Positions, "tow") })
}

func isLamp(p *wiring.Part) bool {
	return strings.HasPrefix(p.Kind.Name, "lamp") || strings.HasPrefix(p.Kind.Name, "light")
}
