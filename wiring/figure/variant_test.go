package figure

import (
	"math"
	"testing"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/settle"
)

var jobs = []string{"tern-point-14", "tern-point-shuttle-3", "tern-point-truck-1"}

// asDrawn changes nothing.
func asDrawn(_, _ wiring.Element) bool { return true }

// An unchanged copy of a cart does in every state what the cart does, so that no copy
// waits for, or is moved by, an element of the original.
func TestCopyBehavesAsDrawn(t *testing.T) {
	for _, name := range jobs {
		t.Run(name, func(t *testing.T) {
			c := New(example(t, name), nil)
			v := vary(c.harness, asDrawn)
			for _, s := range c.harness.States {
				want, err := c.point(t.Context(), s, 0)
				if err != nil {
					t.Fatal(err)
				}
				got, err := settled(t.Context(), settle.Compile(v.harness), s, settle.Options{})
				if err != nil {
					t.Fatal(err)
				}
				compareCopy(t, c, v, want, got)
			}
		})
	}
}

func compareCopy(t *testing.T, c *Cart, v *variant, want, got *settle.Point) {
	t.Helper()
	c.elements(func(e wiring.Element) {
		own := v.own[e]
		if own == e {
			t.Fatalf("%s is no copy", e.Base().Ref())
		}
		if got.Holds(own) != want.Holds(e) || math.Abs(float64(got.ElementAmps(own)-want.ElementAmps(e))) > 1e-9 {
			t.Errorf("%s: %s holds %v at %v, as drawn %v at %v", want.State.Name, e.Base().Ref(),
				got.Holds(own), got.ElementAmps(own), want.Holds(e), want.ElementAmps(e))
		}
	})
}

// Changing a copy leaves the cart alone.
func TestCopyIsNoPartOfTheCart(t *testing.T) {
	b, key := plant()
	c := b.cart()
	before, err := c.point(t.Context(), state(key), 0)
	if err != nil {
		t.Fatal(err)
	}
	vary(c.harness, func(_, own wiring.Element) bool {
		switch own := own.(type) {
		case *wiring.Source:
			own.Volts = 10
		case *wiring.Contact:
			own.Coil = nil
		case *wiring.Load:
			return false
		}
		return true
	})
	after, err := New(c.harness, nil).point(t.Context(), state(key), 0)
	if err != nil {
		t.Fatal(err)
	}
	c.elements(func(e wiring.Element) {
		if before.ElementAmps(e) != after.ElementAmps(e) {
			t.Errorf("%s carries %v, before %v", e.Base().Ref(), after.ElementAmps(e), before.ElementAmps(e))
		}
	})
}
