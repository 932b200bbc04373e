package main

import (
	"context"

	"github.com/spf13/pflag"

	"github.com/lugwright/lugwright/render/report"
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/failuremode"
	"github.com/lugwright/lugwright/wiring/source"
)

type failureModesOptions struct{ of, output, root string }

func failureModesCommand() *command {
	var o failureModesOptions
	return &command{
		name:     "failure-modes",
		operands: operands{name: "JOB", least: 1, most: 1},
		short:    "list every single fault with its effects, how it is detected and what limits it",
		long: `Settles every single thing that can be wrong with a cart in every state and lists what
changes at the place itself, what the owner sees, who notices, and which fuse opens: an
analysis of failure modes and effects with the columns of IEC 60812. With --of it is
narrowed to one part and its wires, as the maker of an accessory needs it.

Severity and occurrence are classes of our own, not statistics. CSV has one row a fault;
the JSON is described by render/report/failuremodes.schema.json.`,
		examples: []string{
			"lugwright failure-modes --of A1 examples/tern-point/jobs/tern-point-14.yaml",
			"lugwright failure-modes --output csv examples/tern-point/jobs/tern-point-14.yaml",
		},
		flags: func(set *pflag.FlagSet) {
			set.StringVar(&o.of, "of", "", "`part` to which the list is narrowed, with its wires")
			flagChoice(set, &o.output, "output", "form of the answer", "text", "csv", "json")
			flagRoot(set, &o.root)
		},
		run: func(c *call) exit { return runFailureModes(c, o) },
	}
}

func runFailureModes(c *call, o failureModesOptions) exit {
	h, found := c.load(c.args[0], o.root)
	if h == nil {
		return c.unusableInput(found)
	}
	f := report.FailureModes{Version: version, File: c.args[0], Harness: h}
	if o.of != "" {
		if f.Of = h.Part(o.of); f.Of == nil {
			return c.refuse("%s has no part %s%s", h.Identity.Number, o.of, source.DidYouMean(o.of, partNames(h)))
		}
	}
	// The only error is that of a context that ends, which this one does not.
	f.Rows, _ = failuremode.Analyse(context.Background(), h)
	if f.Of != nil {
		f.Rows = failuremode.Of(f.Rows, f.Of)
	}
	// A write error is remembered by the stream.
	switch o.output {
	case "csv":
		_ = report.FailureModesCSV(c.stdout, f)
	case "json":
		_ = report.FailureModesJSON(c.stdout, f)
	default:
		_ = report.FailureModesText(c.stdout, f, c.textOptions(c.stdout))
	}
	return clean
}

func partNames(h *wiring.Harness) []string {
	var names []string
	for _, p := range h.Parts {
		names = append(names, p.Designation)
	}
	return names
}
