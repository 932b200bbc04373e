package figure

import (
	"errors"
	"math"
	"path/filepath"
	"testing"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/job"
)

// Whatever is wrong with a cart, a figure is a number or an error that says why there is
// none. The jobs are those that break rules, one each.
func TestFiguresOfJobsThatBreakRules(t *testing.T) {
	files, err := filepath.Glob("../../testdata/rules/*/breaks*.yaml")
	if err != nil || len(files) == 0 {
		t.Fatalf("no jobs: %v", err)
	}
	read := 0
	for _, file := range files {
		h, _, err := job.Load(filepath.ToSlash(file), job.Options{})
		if err != nil || h == nil {
			continue // being written, or broken on purpose: for package job to judge
		}
		read++
		t.Run(filepath.Base(filepath.Dir(file)), func(t *testing.T) {
			c := New(h, nil)
			s := h.State("everything on")
			checkFaults(t, c, s)
			checkPrecharges(t, c)
			if l, err := c.Parked(t.Context()); !expected(err) || math.IsNaN(float64(l.Lasts)) {
				t.Errorf("parked for %v: %v", l.Lasts, err)
			}
			if _, err := c.BlockRooms(t.Context(), s, 0); !expected(err) {
				t.Error(err)
			}
			rooms, err := c.ReducerRooms(t.Context(), s, 0)
			if !expected(err) {
				t.Error(err)
			}
			for _, r := range rooms {
				if !(r.Peak >= 0 && r.Continuous >= -1e-9) {
					t.Errorf("%s is asked for %v and %v", r.Converter.Ref(), r.Continuous, r.Peak)
				}
			}
		})
	}
	if read < len(files)/2 {
		t.Errorf("only %d of %d jobs could be read", read, len(files))
	}
}

func checkFaults(t *testing.T, c *Cart, s *wiring.State) {
	t.Helper()
	faults, err := c.FuseFaults(t.Context(), s, 0)
	if !expected(err) {
		t.Error(err)
	}
	for _, f := range faults {
		if !(f.Through >= 0 && f.Through < 1e6) {
			t.Errorf("%s has %v", f.Fuse.Ref(), f.Through)
		}
	}
}

func checkPrecharges(t *testing.T, c *Cart) {
	t.Helper()
	all, err := c.Precharges(t.Context())
	if !expected(err) {
		t.Error(err)
	}
	for _, p := range all {
		if p.Ending == Undecided || math.IsNaN(float64(p.Most())) || p.Ending == Rests && !p.None && !(p.To95 > 0 && p.Tau > 0) {
			t.Errorf("%s in %q %v: %v, %v, %s", p.Capacitor.Ref(), p.State.Name, p.Ending, p.Tau, p.To95, p.Why)
		}
	}
}

// expected reports whether an error is none, or one that figures may have.
func expected(err error) bool {
	var unsettled *Unsettled
	var unknown *Unknown
	return err == nil || errors.As(err, &unsettled) || errors.As(err, &unknown)
}
