package rule

import (
	"github.com/lugwright/lugwright/wiring/position"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// mostPositions is how many positions of the hand switches are settled for one property. A
// cart with more of them is looked at in those with the fewest switches away from rest,
// which takes some tenths of a second, and what was left out is listed.
const mostPositions = int64(1024)

// Proofs says what became of the properties that the rule proves over all positions of the
// hand switches, in their order. Those that could not be proved are said to be not checked.
// All rules of a run share the positions. It is nil when the context has ended.
func (p *Pass) Proofs() []position.Result {
	d := p.desk
	if d.proofs == nil && !d.prove() {
		return nil
	}
	var mine []position.Result
	for _, property := range p.rule.Proves {
		r := d.proofs[property]
		if r.Verdict == position.Unproved {
			p.NotChecked("positions of the hand switches", r.Why, p.Harness.Identity.At)
		}
		mine = append(mine, r)
	}
	return mine
}

// prove looks at the positions for all rules of the run, with the batteries full and rested:
// that is where voltages are highest.
func (d *desk) prove() bool {
	o := position.CheckOptions{Part: true}
	o.Most, o.Charges = d.mostPositions, []quantity.Ratio{Full.soc()}
	results, err := position.CheckAll(d.ctx, position.NewCart(d.harness, d.compiled()), d.properties, o)
	if err != nil {
		return false
	}
	d.proofs = map[*position.Property]position.Result{}
	for i, property := range d.properties {
		d.proofs[property] = results[i]
	}
	return true
}

// propertiesOf gathers what the rules of a run prove.
func propertiesOf(rules []*Rule) []*position.Property {
	var all []*position.Property
	for _, r := range rules {
		all = append(all, r.Proves...)
	}
	return all
}
