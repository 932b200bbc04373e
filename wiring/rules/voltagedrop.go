package rules

import (
	"fmt"
	"strings"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/rule"
	"github.com/lugwright/lugwright/wiring/settle"
)

func voltageDrop() *rule.Rule {
	return &rule.Rule{
		ID:    "voltage-drop",
		Title: "little voltage is lost between a source and what it feeds, there and back",
		Level: diag.Warning,
		Why: "A filament lamp at 90 % of its voltage gives two thirds of its light. Twenty feet of 16 AWG to the rear and back lose 0.8 V of 12.5 V at 5 A, 6 %; a solenoid " +
			"whose coil loses 10 % at the floor of the pack does not pull in. In traction cable 2 % at 100 A are 100 W of heat in a lug that nobody looks at.",
		Do: "Lay a larger or a shorter wire, and see to the return, which counts as much as the feed.",
		Source: "ABYC E-11: 3 % for what is critical (head and brake lamps, controller, reducer supply, coils, parts declared critical), 10 % for the rest, from memory; traction " +
			"2 %: AC 43.13-1B para 11-66. Limits can be set in a job.",
		Wrong: `parts:
  A1: {fuses: {4: 10 A}}
  E2: {kind: lamp, title: head lamp, power: 60 W at 12.8 V, place: front}
wires:
  W91: {from: A1.4, to: E2.+, colour: WH, size: 16 AWG, length: 14 ft}
  W92: {from: E2.-, to: A1.n, colour: BK, size: 14 AWG, length: 14 ft}
`,
		Right: `parts:
  A1: {fuses: {4: 10 A}}
  E2: {kind: lamp, title: head lamp, power: 60 W at 12.8 V, place: front}
wires:
  W91: {from: A1.4, to: E2.+, colour: WH, size: 10 AWG, length: 4 ft}
  W92: {from: E2.-, to: A1.n, colour: BK, size: 10 AWG, length: 4 ft}
`,
		Run: runVoltageDrop,
	}
}

// dropped is the largest loss on the way to one consumer.
type dropped struct {
	share  quantity.Ratio
	volts  quantity.Volt
	amps   quantity.Ampere
	supply *path.Supply
	where  string
	state  string
	feed   path.Path
	back   path.Path
}

func runVoltageDrop(p *rule.Pass) {
	cs := consumers(p.Graph)
	worst := make([]dropped, len(cs))
	p.SweepSteady(func(s *wiring.State, charge rule.Charge, at *settle.Point) {
		feeds := feedsAt(p, s, at)
		for i, c := range cs {
			if d, ok := feeds.drop(c, at); ok && float64(d.share) > rounded*float64(worst[i].share) {
				d.where, d.state = charge.String(), s.Name
				worst[i] = d
			}
		}
	})
	for i, c := range cs {
		if worst[i].supply != nil {
			judgeDrop(p, c, worst[i])
		}
	}
}

// closedFeeds is what each supply reaches by conductors that are closed at a point.
type closedFeeds struct {
	pass     *rule.Pass
	supplies []*path.Supply
	plus     []*path.Reach
	minus    []*path.Reach
}

func feedsAt(p *rule.Pass, s *wiring.State, at *settle.Point) closedFeeds {
	f := closedFeeds{pass: p}
	closed := path.InState(s, at.Holds)
	there := path.Through{Sorts: path.Conducting, Setting: closed}
	back := there
	back.Against = true
	for _, supply := range p.Supplies() {
		if _, charger := supply.Element.(*wiring.Charger); charger || !at.Holds(supply.Element) {
			continue
		}
		f.supplies = append(f.supplies, supply)
		f.plus = append(f.plus, p.Graph.From(there.Until(p.Negative), supply.Plus))
		f.minus = append(f.minus, p.Graph.From(back, supply.Bottom))
	}
	return f
}

// drop is what is lost between the supply that feeds a consumer that is on and the consumer.
// What hangs behind a resistor is meant to see less, and what a charger holds up as well.
func (f *closedFeeds) drop(c consumer, at *settle.Point) (dropped, bool) {
	if !at.Holds(c.edge.Element) {
		return dropped{}, false
	}
	var least dropped
	for i, s := range f.supplies {
		if !f.plus[i].Has(c.plus) || !f.minus[i].Has(c.minus) || s.Element.Base().Part == c.part && !s.Battery() {
			continue
		}
		from, to := at.Across(s.Plus, s.Bottom), at.Across(c.plus, c.minus)
		if from <= 0 || to <= 0 {
			continue
		}
		if to >= from {
			return dropped{}, false // it is fed from somewhere else
		}
		share := quantity.Ratio(float64(from-to) / float64(from))
		if least.supply != nil && least.share <= share {
			continue
		}
		feed, _ := f.plus[i].To(c.plus)
		back, _ := f.minus[i].To(c.minus)
		least = dropped{share: share, volts: from - to, amps: consumed(c, at), supply: s, feed: feed, back: back.Reversed()}
	}
	return least, least.supply != nil
}

// consumed is the current that a consumer takes at a point.
func consumed(c consumer, at *settle.Point) quantity.Ampere {
	if c.edge.Sort == path.Input {
		return at.InputAmps(c.edge.Element)
	}
	return at.ElementAmps(c.edge.Element)
}

func judgeDrop(p *rule.Pass, c consumer, d dropped) {
	for _, way := range []path.Path{d.feed, d.back} {
		for _, w := range way.Wires() {
			if _, known := wireOhms(p, w); !known && !w.Cord() && d.amps >= worthChecking {
				p.NotChecked(w.Name(), fmt.Sprintf("the loss on the way of %s is not known: it has no size or length", c.name()), w.At)
				return
			}
		}
	}
	limit, level := dropLimit(p, c)
	if float64(d.share) <= rounded*float64(limit) || p.Reported("return-complete", c.part.Designation) {
		return
	}
	w := lossiest(p, d)
	at := c.part.At
	var names []string
	if w != nil {
		at, names = w.Span("size"), []string{w.Name()}
	}
	p.Report(diag.Finding{
		Level:   level,
		Message: fmt.Sprintf("%s loses %.2g V on the way to %s, %.1f %%", d.supply.Element.Base().Part.Designation, float64(d.volts), c.name(), 100*float64(d.share)),
		Detail: fmt.Sprintf("%s flow there by %s and back by %s. The limit is %.3g %%; worst %s.", tenth(d.amps), d.feed, d.back,
			100*float64(limit), d.where),
		Advice:   dropAdvice(w),
		At:       at,
		Related:  defined(c.part.Designation, c.part.At),
		Subjects: subjects([]string{c.part.Designation}, names, waySubjects(p.Graph, d.feed), waySubjects(p.Graph, d.back)),
		States:   []string{d.state},
	})
}

func dropAdvice(w *wiring.Wire) string {
	if w == nil {
		return "Bring the source and the consumer together."
	}
	return fmt.Sprintf("Lay a larger or a shorter %s, which loses most.", w.Name())
}

// lossiest is the wire of the way with the most resistance.
func lossiest(p *rule.Pass, d dropped) *wiring.Wire {
	var found *wiring.Wire
	most := 0.0
	for _, way := range []path.Path{d.feed, d.back} {
		for _, w := range way.Wires() {
			if ohms, _ := wireOhms(p, w); ohms > most {
				found, most = w, ohms
			}
		}
	}
	return found
}

// dropLimit is the share of its supply that may be lost on the way to a consumer, and how
// bad more is.
func dropLimit(p *rule.Pass, c consumer) (quantity.Ratio, diag.Level) {
	limits := p.Harness.Limits
	switch {
	case c.part.Kind.Traction:
		return p.Handbook.FeederDrop(), diag.Warning
	case critical(p, c):
		return limits.Drop, diag.Warning
	}
	return limits.DropOther, diag.Note
}

// critical reports whether a consumer is one that a driver's safety or the cart's going
// hangs on: what a job declares so, controllers, supplies of reducers, coils, and head and
// brake lamps, which their titles tell.
func critical(p *rule.Pass, c consumer) bool {
	title := wiring.Fold(c.part.Name())
	lamp := strings.Contains(title, "lamp") || strings.Contains(title, "light")
	safety := strings.Contains(title, "head") || strings.Contains(title, "brake")
	return c.part.Critical || p.Controller(c.part) || c.edge.Sort&(path.Input|path.Coil) != 0 || lamp && safety
}
