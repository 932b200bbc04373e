package handbook

import (
	"fmt"
	"strings"

	"github.com/lugwright/lugwright/wiring/quantity"
)

// Lug is the ring lug that belongs on a stud.
type Lug struct {
	Stud   quantity.Thread
	Metric quantity.Thread // the smallest metric lug that passes over the stud
	Hole   quantity.Metre  // its hole
}

type lugRow struct {
	stud, lug quantity.Thread
	hole      quantity.Metre
	status    Status
}

var lugsDefinition = table{
	name:    "lug_fit",
	about:   "which ring lug goes on which stud",
	columns: []string{"stud", "stud_mm", "smallest_metric_lug", "lug_hole_mm"},
	load: func(t *Tables, s *sheet) {
		t.lugs = nil
		for _, r := range s.rows {
			next := lugRow{
				stud: r.thread("stud"), lug: r.thread("smallest_metric_lug"),
				hole: quantity.Millimetres(r.positive("lug_hole_mm")), status: r.status(),
			}
			if mm := r.positive("stud_mm"); next.hole.Millimetres() < mm {
				r.fail("lug_hole_mm", "the lug does not pass over a stud of %g mm", mm)
			}
			t.lugs = append(t.lugs, next)
		}
	},
}

// LugFor returns the ring lug that belongs on a stud, metric or inch. A stud that the
// table lacks is an error.
//
// Source: geometry of studs against ISO 273 fine holes; computed.
func (t *Tables) LugFor(stud quantity.Thread) (Lug, error) {
	r, err := t.lugRow(stud)
	if err != nil {
		return Lug{}, err
	}
	return Lug{Stud: stud, Metric: r.lug, Hole: r.hole}, nil
}

func (t *Tables) lugRow(thread quantity.Thread) (lugRow, error) {
	names := make([]string, len(t.lugs))
	for i, r := range t.lugs {
		if r.stud == thread.Nominal() {
			return r, nil
		}
		names[i] = r.stud.String()
	}
	return lugRow{}, fmt.Errorf("the handbook knows no lug for %v: it has %s", thread, strings.Join(names, ", "))
}

// Fit says how a lug sits on a stud.
type Fit uint8

// The fits, from worst to best and to worse again.
const (
	TooSmall Fit = iota + 1 // does not go over the stud
	Right                   // the smallest that does
	OneOver                 // one size over: loses contact face
	TooLarge                // more than one size over
)

// String returns "too small", "right", "one size over" or "too large".
func (f Fit) String() string {
	switch f {
	case TooSmall:
		return "too small"
	case Right:
		return "right"
	case OneOver:
		return "one size over"
	case TooLarge:
		return "too large"
	}
	return "unknown"
}

// Fit says how a ring lug marked for one thread sits on a stud of another. Inch and metric
// lugs that take the same hole count alike: 5/16 on M8 and 3/8 on M10 are right. A thread
// that the table lacks is an error.
func (t *Tables) Fit(lug, stud quantity.Thread) (Fit, error) {
	l, err := t.lugRow(lug)
	if err != nil {
		return 0, err
	}
	s, err := t.lugRow(stud)
	if err != nil {
		return 0, err
	}
	switch steps := t.step(l.lug) - t.step(s.lug); {
	case steps < 0:
		return TooSmall, nil
	case steps == 0:
		return Right, nil
	case steps == 1:
		return OneOver, nil
	}
	return TooLarge, nil
}

// step counts the metric lugs of the table that are not larger.
func (t *Tables) step(lug quantity.Thread) int {
	seen := map[quantity.Thread]bool{}
	for _, r := range t.lugs {
		if r.lug.DiameterMM() <= lug.DiameterMM() {
			seen[r.lug] = true
		}
	}
	return len(seen)
}
