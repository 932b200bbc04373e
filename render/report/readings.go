package report

import (
	"github.com/lugwright/lugwright/wiring/meter"
)

// Readings is what a meter shows on a cart in several states, ready to be set.
type Readings struct {
	Version string // of the program
	File    string // the job's
	Survey  *meter.Survey
	All     bool // every terminal rather than the test points alone
}

// testPointsGroup is the group of the job's test points; other groups are parts.
const testPointsGroup = "test points"

// spotGroup is a heading and the places to probe below it.
type spotGroup struct {
	name  string
	spots []meter.Spot
}

// groups lists the places to probe: the test points, then every terminal by part if all are
// asked for, or if the job has no test points.
func (r Readings) groups() []spotGroup {
	var all []spotGroup
	if points := r.Survey.Bench.TestPoints(); len(points) > 0 {
		all = append(all, spotGroup{testPointsGroup, points})
	}
	if !r.All && len(all) > 0 {
		return all
	}
	for _, spot := range r.Survey.Bench.Terminals() {
		name := spot.Terminal.Part.Designation
		if last := len(all) - 1; last < 0 || all[last].name != name {
			all = append(all, spotGroup{name: name})
		}
		group := &all[len(all)-1]
		group.spots = append(group.spots, spot)
	}
	return all
}
