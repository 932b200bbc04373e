package rule

import "github.com/lugwright/lugwright/wiring/figure"

// Figures computes what is more than one operating point: short circuits, pre-charge, how
// long a charge lasts. It uses the pass's handbook.
func (p *Pass) Figures() *figure.Cart {
	d := p.desk
	if d.figures == nil {
		d.figures = figure.New(d.harness, d.handbook)
	}
	return d.figures
}
