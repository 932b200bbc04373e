package handbook

import (
	"math"
	"strings"

	"github.com/lugwright/lugwright/wiring/quantity"
)

// fuseGate is one time gate of a fuse standard.
type fuseGate struct {
	style    string
	multiple float64 // of the rating
	holds    float64 // s, at least; 0: not bounded
	opens    float64 // s, at most; 0: not bounded
}

var gatesDefinition = table{
	name:    "fuse_gates",
	about:   "times for which fuses hold and within which they open, by overload",
	columns: []string{"style", "percent", "min_s", "max_s"},
	load: func(t *Tables, s *sheet) {
		t.gates = nil
		for _, r := range s.rows {
			t.gates = append(t.gates, newGate(t.gates, r))
		}
	},
}

func newGate(before []fuseGate, r row) fuseGate {
	g := fuseGate{
		style: r.word("style"), multiple: r.positive("percent") / 100,
		holds: r.optional("min_s"), opens: r.optional("max_s"),
	}
	if g.holds > 0 && g.opens > 0 && g.holds > g.opens {
		r.fail("min_s", "is above max_s")
	}
	if n := len(before); n > 0 && before[n-1].style == g.style && before[n-1].multiple >= g.multiple {
		r.fail("percent", "must rise within a style")
	}
	return g
}

// FuseHolds returns for how long a fuse of a style is sure to carry a multiple of its
// rating, and whether the table bounds it. Between gates it takes the next higher
// multiple that has a bound; up to the first gate a fuse holds for that gate's time.
//
// Source: time gates of ISO 8820-3 and UL 248-15; from memory.
func (t *Tables) FuseHolds(style string, multiple float64) (quantity.Second, bool) {
	for _, g := range t.gatesOf(style) {
		if g.multiple >= multiple && g.holds > 0 {
			return quantity.Second(g.holds), true
		}
	}
	return 0, false
}

// FuseOpens returns the time within which a fuse of a style is sure to open at a multiple
// of its rating, and whether the table bounds it: by the next lower gate that has a bound.
// Below the lowest such gate it may never open.
//
// Source: time gates of ISO 8820-3 and UL 248-15; from memory.
func (t *Tables) FuseOpens(style string, multiple float64) (quantity.Second, bool) {
	longest := math.Inf(1)
	for _, g := range t.gatesOf(style) {
		if g.multiple <= multiple && g.opens > 0 {
			longest = math.Min(longest, g.opens)
		}
	}
	return quantity.Second(longest), !math.IsInf(longest, 1)
}

func (t *Tables) gatesOf(style string) []fuseGate {
	var found []fuseGate
	for _, g := range t.gates {
		if strings.EqualFold(g.style, style) {
			found = append(found, g)
		}
	}
	return found
}
