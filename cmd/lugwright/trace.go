package main

import (
	"github.com/spf13/pflag"

	"github.com/lugwright/lugwright/render/report"
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/meter"
	"github.com/lugwright/lugwright/wiring/source"
)

type traceOptions struct{ state, output, root string }

func traceCommand() *command {
	var o traceOptions
	return &command{
		name:     "trace",
		operands: operands{name: "JOB TERMINAL", least: 2, most: 2},
		short:    "say what feeds a terminal in each state, or why it is dead",
		long: `Says for each operating state what feeds a terminal and by which way: wires, fuses, switches
and contacts. Where it is dead it says where the way is cut, counted from the battery, and
what the thing that is open waits for. With --state the way is set as a ladder with the
voltage at each terminal on it.

A terminal is written as in the job, such as T2.enable; a part with one terminal by the part
alone. The JSON is described by render/report/trace.schema.json.`,
		examples: []string{
			"lugwright trace examples/tern-point/jobs/tern-point-14.yaml T2.enable",
			"lugwright trace --state charging examples/tern-point/jobs/tern-point-14.yaml U1.interlock",
		},
		flags: func(set *pflag.FlagSet) {
			flagState(set, &o.state)
			flagChoice(set, &o.output, "output", "form of the answer", "text", "json")
			flagRoot(set, &o.root)
		},
		run: func(c *call) exit { return runTrace(c, o) },
	}
}

func runTrace(c *call, o traceOptions) exit {
	survey, code := c.survey(c.args[0], o.root, o.state)
	if survey == nil {
		return code
	}
	h := survey.Bench.Harness
	spots := survey.Bench.Find(c.args[1])
	if len(spots) == 0 {
		return c.refuse("%s", noTerminal(h, c.args[1]))
	}
	t := report.Trace{Version: version, File: c.args[0], Survey: survey, Spots: spots}
	// A write error is remembered by the stream.
	if o.output == "json" {
		_ = report.TraceJSON(c.stdout, t)
	} else {
		_ = report.TraceText(c.stdout, t, c.textOptions(c.stdout))
	}
	return code
}

// noTerminal says why a word names no terminal that can be probed.
func noTerminal(h *wiring.Harness, ref string) string {
	if h.Terminal(ref) != nil {
		return ref + " carries data alone: there is nothing to measure"
	}
	var names []string
	if p := h.Part(ref); p != nil {
		for _, t := range p.Terminals {
			names = append(names, t.Ref())
		}
		return ref + " has several terminals: " + orList(names)
	}
	for _, spot := range meter.New(h).Terminals() {
		names = append(names, spot.Name)
	}
	return h.Identity.Number + " has no terminal " + ref + source.DidYouMean(ref, names)
}
