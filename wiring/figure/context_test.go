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
