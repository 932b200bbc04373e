package meter

import (
	"context"
	"errors"
	"slices"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// Survey is a cart in several states.
type Survey struct {
	Bench  *Bench
	Sheets []*Sheet     // of the states that settle, in the order asked for
	Failed []*Unsettled // the others

	highest map[*wiring.Capacitor]quantity.Volt
}

// Survey settles states; none given: all states of the harness. Whatever is asked for, all
// states of the harness are looked at for what each capacitor can have been charged to. The
// error is that of a context that ends.
func (b *Bench) Survey(ctx context.Context, states ...*wiring.State) (*Survey, error) {
	v := &Survey{Bench: b, highest: map[*wiring.Capacitor]quantity.Volt{}}
	if len(states) == 0 {
		states = b.Harness.States
	}
	done := map[*wiring.State]outcome{}
	for _, s := range append(slices.Clone(b.Harness.States), states...) {
		if _, ok := done[s]; ok {
			continue
		}
		sheet, err := b.Settle(ctx, s)
		o := outcome{sheet: sheet}
		if err != nil && !errors.As(err, &o.failed) {
			return nil, err
		}
		if done[s] = o; sheet != nil {
			v.note(sheet)
		}
	}
	for _, s := range states {
		if o := done[s]; o.failed != nil {
			v.Failed = append(v.Failed, o.failed)
		} else {
			v.Sheets = append(v.Sheets, o.sheet)
		}
	}
	return v, nil
}

// outcome is what became of a state.
type outcome struct {
	sheet  *Sheet
	failed *Unsettled
}

// note remembers the voltages of capacitors.
func (v *Survey) note(sheet *Sheet) {
	for _, p := range v.Bench.Harness.Parts {
		for _, e := range p.Elements {
			if c, ok := e.(*wiring.Capacitor); ok {
				v.highest[c] = max(v.highest[c], sheet.Point.Across(c.A, c.B))
			}
		}
	}
}

// Waits lists how long the readings of a sheet take to become true, after any other state
// of the cart.
func (v *Survey) Waits(s *Sheet) []Wait {
	return s.Waits(func(c *wiring.Capacitor) quantity.Volt { return v.highest[c] })
}

// Sheet finds the sheet of a state by the state's name; nil if it is not there.
func (v *Survey) Sheet(state string) *Sheet {
	for _, s := range v.Sheets {
		if s.State.Name == state {
			return s
		}
	}
	return nil
}
