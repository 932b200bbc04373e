package rule

import (
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/path"
)

// middleCharge is the state of charge at which a battery counts as half way.
const middleCharge = 0.5

// Supplies lists what drives current on the cart; see [path.Graph.Supplies]. Batteries of a
// chemistry that the handbook lacks have no voltage.
func (p *Pass) Supplies() []*path.Supply {
	d := p.desk
	if d.supplies == nil {
		d.supplies = d.graph.Supplies(d.cell)
	}
	return d.supplies
}

// cell looks up one cell.
func (d *desk) cell(chemistry string) (path.Volts, bool) {
	pack, err := d.handbook.Pack(chemistry, 1)
	if err != nil {
		return path.Volts{}, false
	}
	return path.Volts{Floor: pack.Floor(), Middle: pack.RestVolts(middleCharge), Rested: pack.RestedFull(), Full: pack.Full()}, true
}

// Negative reports whether a node is on a negative side for good: copper, fuses and hand
// switches in their rest position join it to the bottom of a supply. The inner posts of a
// string of batteries are not.
func (p *Pass) Negative(n wiring.NodeID) bool {
	d := p.desk
	if d.negative == nil {
		var bottoms []wiring.NodeID
		for _, s := range p.Supplies() {
			bottoms = append(bottoms, s.Bottom)
		}
		t := path.Through{Sorts: path.Conductors | path.Fuse | path.Switch, Setting: path.Parked}
		d.negative = d.graph.From(t, bottoms...)
	}
	return d.negative.Has(n)
}

// Controller reports whether a part has electronic switches that feed what moves the cart:
// behind it the current is the controller's business.
func (p *Pass) Controller(part *wiring.Part) bool {
	d := p.desk
	if d.controllers == nil {
		d.controllers = map[*wiring.Part]bool{}
		for _, each := range d.harness.Parts {
			d.controllers[each] = d.drives(each)
		}
	}
	return d.controllers[part]
}

func (d *desk) drives(part *wiring.Part) bool {
	var ends []wiring.NodeID
	for _, el := range part.Elements {
		if driver, ok := el.(*wiring.Driver); ok {
			ends = append(ends, driver.A, driver.B)
		}
	}
	if len(ends) == 0 {
		return false
	}
	_, found := d.graph.From(path.Through{Sorts: path.Conductors | path.Switch}, ends...).First(func(n wiring.NodeID) bool {
		at := d.harness.Nodes[n].Part
		return at != nil && at != part && at.Kind != nil && at.Kind.Traction
	})
	return found
}
