package main

import (
	"context"

	"github.com/spf13/pflag"

	"github.com/lugwright/lugwright/render/report"
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/meter"
	"github.com/lugwright/lugwright/wiring/source"
)

type readingsOptions struct {
	state, output, root string
	all                 bool
}

func readingsCommand() *command {
	var o readingsOptions
	return &command{
		name:     "readings",
		operands: operands{name: "JOB", least: 1, most: 1},
		short:    "say what a meter shows at each test point in each state",
		long: `Says what a 10 Mohm meter shows at the test points of a job in each operating state, if the
cart is built as drawn: settled, after capacitors ran down, with where the black probe sits
and how long to wait. Readings that prove nothing are marked. Then: which main contacts are
open in which states, with every condition that keeps them open, what each sees and where
the way to it is cut; and every terminal that stays live with the main switch off.

A terminal that is joined to nothing is floating: a meter shows about 0 V, which is no zero.

CSV has one row a terminal and state; the JSON is described by
render/report/readings.schema.json.`,
		examples: []string{
			"lugwright readings examples/tern-point/jobs/tern-point-14.yaml",
			"lugwright readings --state charging --all examples/tern-point/jobs/tern-point-14.yaml",
			"lugwright readings --output csv examples/tern-point/jobs/tern-point-shuttle-3.yaml",
		},
		flags: func(set *pflag.FlagSet) {
			flagState(set, &o.state)
			set.BoolVar(&o.all, "all", false, "every terminal by part, not the test points alone")
			flagChoice(set, &o.output, "output", "form of the answer", "text", "csv", "json")
			flagRoot(set, &o.root)
		},
		run: func(c *call) exit { return runReadings(c, o) },
	}
}

// flagState adds the flag that picks one operating state.
func flagState(set *pflag.FlagSet, to *string) {
	set.StringVar(to, "state", "", "`name` of the one state to look at; see lugwright states; else all")
}

func runReadings(c *call, o readingsOptions) exit {
	survey, code := c.survey(c.args[0], o.root, o.state)
	if survey == nil {
		return code
	}
	r := report.Readings{Version: version, File: c.args[0], Survey: survey, All: o.all}
	// A write error is remembered by the stream.
	switch o.output {
	case "csv":
		_ = report.ReadingsCSV(c.stdout, r)
	case "json":
		_ = report.ReadingsJSON(c.stdout, r)
	default:
		_ = report.ReadingsText(c.stdout, r, c.textOptions(c.stdout))
	}
	return code
}

// survey reads a job and settles one state, or all. A nil survey is explained on standard
// error; states that do not settle are found, and told with the rest.
func (c *call) survey(file, root, state string) (*meter.Survey, exit) {
	h, found := c.load(file, root)
	if h == nil {
		return nil, c.unusableInput(found)
	}
	var states []*wiring.State
	if state != "" {
		s := h.State(state)
		if s == nil {
			return nil, c.refuse("%s has no state %s%s\nlugwright states %s lists them",
				found.Number, state, source.DidYouMean(state, stateNames(h)), file)
		}
		states = []*wiring.State{s}
	}
	// The only error is that of a context that ends, which this one does not.
	survey, _ := meter.New(h).Survey(context.Background(), states...)
	if len(survey.Failed) > 0 {
		return survey, findings
	}
	return survey, clean
}

func stateNames(h *wiring.Harness) []string {
	var names []string
	for _, s := range h.States {
		names = append(names, s.Name)
	}
	return names
}
