package figure

import (
	"context"
	"errors"
	"testing"

	"github.com/lugwright/lugwright/wiring"
)

// countdown is a context that ends after it has been asked so many times.
type countdown struct {
	context.Context
	left int
}

func (c *countdown) Err() error {
	if c.left <= 0 {
		return context.Canceled
	}
	c.left--
	return nil
}

// Whenever its context ends, a figure ends with it, and says so.
func TestFiguresEndWithTheirContext(t *testing.T) {
	c := New(example(t, "tern-point-14"), nil)
	capacitor := each[*wiring.Capacitor](c)[0]
	at := func(name string) *wiring.State { return c.harness.State(name) }
	figures := map[string]func(context.Context) error{
		"short circuit": func(ctx context.Context) error {
			_, err := c.ShortCircuit(ctx, at("ready"), capacitor.A, wiring.NoNode, 0)
			return err
		},
		"fuse faults": func(ctx context.Context) error { _, err := c.FuseFaults(ctx, at("ready"), 0); return err },
		"pre-charges": func(ctx context.Context) error { _, err := c.Precharges(ctx); return err },
		"run-down": func(ctx context.Context) error {
			_, err := c.RunDown(ctx, capacitor, at("ready"), at("ready"))
			return err
		},
		"charge time": func(ctx context.Context) error { _, err := c.ChargeTime(ctx, at("charging"), 0.4); return err },
		"parked":      func(ctx context.Context) error { _, err := c.Parked(ctx); return err },
		"reducers":    func(ctx context.Context) error { _, err := c.ReducerRooms(ctx, at("ready"), 0); return err },
		"blocks":      func(ctx context.Context) error { _, err := c.BlockRooms(ctx, at("ready"), 0); return err },
		"packs":       func(ctx context.Context) error { _, err := c.PackRooms(ctx, at("ready"), 0); return err },
	}
	for name, f := range figures {
		t.Run(name, func(t *testing.T) {
			ended := 0
			for left := 0; ; left += 1 + left/4 {
				err := f(&countdown{t.Context(), left})
				if err == nil {
					break
				}
				if ended++; !errors.Is(err, context.Canceled) {
					t.Fatalf("after %d questions: %v", left, err)
				}
			}
			if ended == 0 {
				t.Error("it never asks whether it is still wanted")
			}
		})
	}
}

// Many may ask one cart at once, and each gets the answer that one alone would get.
func TestCartServesMany(t *testing.T) {
	c := New(example(t, "tern-point-shuttle-3"), nil)
	want, err := c.Precharges(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	faults, err := c.FuseFaults(t.Context(), c.harness.State("ready"), 0)
	if err != nil {
		t.Fatal(err)
	}
	for range 4 {
		t.Run("", func(t *testing.T) {
			t.Parallel()
			got, err := c.Precharges(t.Context())
			if err != nil || got[0].To95 != want[0].To95 || got[0].Heats[0] != want[0].Heats[0] {
				t.Errorf("%v, alone %v: %v", got[0].To95, want[0].To95, err)
			}
			again, err := c.FuseFaults(t.Context(), c.harness.State("ready"), 0)
			if err != nil || len(again) != len(faults) {
				t.Fatalf("%d faults, alone %d: %v", len(again), len(faults), err)
			}
			for i := range again {
				if again[i].Through != faults[i].Through {
					t.Errorf("%s: %v, alone %v", again[i].Fuse.Ref(), again[i].Through, faults[i].Through)
				}
			}
		})
	}
}

// A state that the cart does not have is said to be none.
func TestNoSuchState(t *testing.T) {
	c := New(example(t, "tern-point-14"), nil)
	e, ready := each[*wiring.Capacitor](c)[0], c.harness.State("ready")
	var errs []error
	add := func(_ any, err error) { errs = append(errs, err) }
	add(c.ShortCircuit(t.Context(), nil, e.A, e.B, 0))
	add(c.FuseFaults(t.Context(), nil, 0))
	add(c.Precharge(t.Context(), e, nil, 0))
	add(c.RunDown(t.Context(), e, nil, ready))
	add(c.RunDown(t.Context(), e, ready, nil))
	add(c.ChargeTime(t.Context(), nil, 0.5))
	add(c.Lasting(t.Context(), nil, 0.8, 0))
	add(c.ReducerRooms(t.Context(), nil, 0))
	add(c.BlockRooms(t.Context(), nil, 0))
	add(c.PackRooms(t.Context(), nil, 0))
	for i, err := range errs {
		var unknown *Unknown
		if !errors.As(err, &unknown) || err.Error() != "state: the cart has no such state" {
			t.Errorf("%d: %v", i, err)
		}
	}
}
