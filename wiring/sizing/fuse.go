package sizing

import (
	"strings"

	"github.com/lugwright/lugwright/wiring/handbook"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// styles are the classes of fuse that are tried, in this order, where none is asked for.
var styles = []string{"blade", "10x38", "class T"}

// fuseFor finds the smallest fuse that may carry a current for ever.
func fuseFor(t *handbook.Tables, r Run) (style string, rating quantity.Ampere, err error) {
	try := styles
	if r.Style != "" {
		try = []string{r.Style}
	}
	var why []string
	for _, s := range try {
		rating, reason := ratingOf(t, s, r)
		if reason == "" {
			return s, rating, nil
		}
		why = append(why, reason)
	}
	return "", 0, failf("no fuse: %s", strings.Join(why, "; "))
}

// ratingOf is the rating that a style has for a run, or why it has none.
func ratingOf(t *handbook.Tables, style string, r Run) (quantity.Ampere, string) {
	series, ok := t.FuseSeries(style)
	if !ok {
		return 0, "the handbook has no series of " + style + " fuses"
	}
	if volts, ok := standing(t, style); ok && volts < r.highest() {
		return 0, style + " fuses are for " + volts.String() + ", the circuit comes to " + r.highest().String()
	}
	if r.Fuse > 0 {
		if !series.Has(r.Fuse) {
			return 0, style + " fuses are not made in " + r.Fuse.String()
		}
		return r.Fuse, ""
	}
	for _, rating := range series.Ratings {
		if t.LargestContinuous(rating, r.ambient()) >= r.Amps {
			return rating, ""
		}
	}
	last := series.Ratings[len(series.Ratings)-1]
	return 0, style + " fuses end at " + last.String() + ", which carries " + t.LargestContinuous(last, r.ambient()).String() + " for ever"
}

// standing is the voltage that every fuse of a style stands; false if nobody says.
func standing(t *handbook.Tables, style string) (quantity.Volt, bool) {
	classes := t.FuseClasses(style)
	if len(classes) == 0 {
		return 0, false
	}
	return classes[0].Lowest(), true
}

// most is the largest fuse that may protect a conductor, by the clause that holds from
// 50 V up: heat does not know 48.0 from 51.2 V.
func most(t *handbook.Tables, carries quantity.Ampere, style string) quantity.Ampere {
	series, ok := t.FuseSeries(style)
	if !ok {
		return carries
	}
	return t.HighestFuse(carries, t.FuseLine(), series)
}
