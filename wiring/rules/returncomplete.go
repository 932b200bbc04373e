package rules

import (
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/rule"
)

func returnComplete() *rule.Rule {
	return &rule.Rule{
		ID:    "return-complete",
		Title: "every consumer's negative reaches the negative of the source that feeds it",
		Level: diag.Error,
		Why: "The grounds are what a conversion forgets: the factory harness ground and the negative of each socket that hung on part of " +
			"the old string leave with the old batteries, and what they served is dead or, worse, finds its way back through another " +
			"device, with up to 40 V of the wrong sign across a 12 V one. On an isolated reducer, 12 V loads returned to the pack's negative are dead as well. " +
			"A return that loses 3 % is too thin or too long; one that loses 10 % is no return.",
		Do: "Land the ground on the negative of the source that feeds it: pack negative for what hangs on the pack, the fuse block's negative " +
			"for what hangs on the block.",
		Source: "Common practice, no published source; drop limits: ABYC E-11, from memory.",
		Wrong: `parts:
  E1: {kind: light-bar}
wires:
  W72: {from: A1.1, to: E1.+, colour: OG, size: 14 AWG, length: 4 ft}
  E1.-: {to: capped}
`,
		Right: `parts:
  E1: {kind: light-bar}
wires:
  W72: {from: A1.1, to: E1.+, colour: OG, size: 14 AWG, length: 4 ft}
  W73: {from: E1.-, to: A1.n, colour: BK, size: 14 AWG, length: 4 ft}
`,
		Run: runReturnComplete,
	}
}

func runReturnComplete(p *rule.Pass) {
	r := returns{pass: p}
	for _, s := range p.Supplies() {
		r.feed = append(r.feed, p.Graph.From(carrying(), s.Plus))
		r.back = append(r.back, p.Graph.From(returning(), s.Negatives()...))
	}
	r.least = make([]*path.Reach, len(r.back))
	for _, c := range consumers(p.Graph) {
		r.consumer(c)
	}
	for i, s := range p.Supplies() {
		if charger, ok := s.Element.(*wiring.Charger); ok {
			r.charger(i, charger)
		}
	}
	r.report()
	r.marked()
}

// carrying passes what carries a load's current: all metal, electronic switches, diodes,
// and resistors small enough to stand in series with a load.
func carrying() path.Through {
	return path.Through{Sorts: path.Conducting | path.Resistor, Ohms: 100}
}

// returning is the same, searched from a negative backwards.
func returning() path.Through {
	t := carrying()
	t.Against = true
	return t
}

type returns struct {
	pass   *rule.Pass
	feed   []*path.Reach // by supply: what its positive reaches
	back   []*path.Reach // by supply: from where current comes back to its negative
	least  []*path.Reach // by supply: the same by least ohms; found when first wanted
	broken []brokenReturn
}

// consumer looks for a supply that the consumer's current can come from and go back to. A
// charger counts where nothing else feeds the consumer: it is there now and then only.
func (r *returns) consumer(c consumer) {
	fedBy := -1
	for i, s := range r.pass.Supplies() {
		_, charger := s.Element.(*wiring.Charger)
		if charger && fedBy >= 0 {
			continue
		}
		if r.feed[i].Has(c.plus) && r.returnsFrom(c.minus, i) {
			r.drop(c, i)
			return
		}
		if r.feed[i].Has(c.minus) && r.returnsFrom(c.plus, i) {
			return // the wrong way round, but complete
		}
		if fedBy < 0 && r.feed[i].Has(c.plus) && !r.returnsFrom(c.plus, i) {
			fedBy = i
		}
	}
	if fedBy >= 0 {
		r.lose(c.name(), c.part, c.minus, r.pass.Supplies()[fedBy])
	}
}

// returnsFrom reports whether current gets from a node back to a supply in one position of
// all switches; the bridge of a controller is no return for what hangs on its input.
func (r *returns) returnsFrom(n wiring.NodeID, supply int) bool {
	way, ok := r.back[supply].To(n)
	if !ok || way.Agrees() {
		return ok
	}
	for _, minus := range r.pass.Supplies()[supply].Negatives() {
		if _, ok := r.pass.Graph.Joined(carrying(), n, minus); ok {
			return true
		}
	}
	return false
}

// charger asks the same of a charger and the battery that it charges: what it drives into
// the positive comes back to it from the negative.
func (r *returns) charger(i int, charger *wiring.Charger) {
	for j, s := range r.pass.Supplies() {
		if s.Battery() && r.feed[i].Has(s.Plus) && !r.back[j].Has(charger.B) {
			r.lose(charger.Part.Designation, charger.Part, charger.B, s)
			return
		}
	}
}
