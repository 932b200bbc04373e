package figure

import (
	"context"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// charges is the share of the pack's voltage that a capacitor must come to if a state is to
// count as charging it.
const charges quantity.Ratio = 0.1

// Precharges computes how each capacitor of the cart is charged, in the order of parts: in
// the first of the cart's states in which something limits its first current, else in the
// first that charges it at all, which then has [Precharge.None]. A capacitor that no state
// charges is left out. The errors are those of ctx.
func (c *Cart) Precharges(ctx context.Context) ([]Precharge, error) {
	var all []Precharge
	for _, e := range each[*wiring.Capacitor](c) {
		if !(e.Farads > 0) {
			continue
		}
		p, found, err := c.firstPrecharge(ctx, e)
		if err != nil {
			return nil, err
		}
		if found {
			all = append(all, p)
		}
	}
	return all, nil
}

func (c *Cart) firstPrecharge(ctx context.Context, e *wiring.Capacitor) (first Precharge, found bool, err error) {
	for _, s := range c.harness.States {
		p, err := c.Precharge(ctx, e, s, 0)
		if err != nil {
			return Precharge{}, false, err
		}
		if !p.None && p.Share >= charges {
			return p, true, nil
		}
		if p.None && !found {
			first, found = p, true
		}
	}
	return first, found, nil
}
