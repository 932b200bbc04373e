package main

import (
	"context"

	"github.com/spf13/pflag"

	"github.com/lugwright/lugwright/render/report"
	"github.com/lugwright/lugwright/wiring/diagnosis"
)

type symptomsOptions struct {
	output, root string
	all, wired   bool
}

// mostCauses is how many causes of a complaint fit on paper; the others are rarer.
const mostCauses = 8

func symptomsCommand() *command {
	var o symptomsOptions
	return &command{
		name:     "symptoms",
		operands: operands{name: "JOB", least: 1, most: 1},
		short:    "say what each single fault of a cart looks like, and what tells it from the others",
		long: `Settles every single thing that can be wrong with a cart in every state: wires open, lugs
loose, wires on the neighbouring terminal, fuses blown, contacts welded, and so on. Then
turns the answer round: for each thing that an owner may say, the causes, the likeliest
first, each with what else is seen and what a meter reads.

Causes in one line read alike everywhere: a look decides. How likely a fault is, is a class
of our own, not a statistic. The JSON is described by render/report/symptoms.schema.json.`,
		examples: []string{
			"lugwright symptoms examples/tern-point/jobs/tern-point-14.yaml",
			"lugwright symptoms --all --output json examples/tern-point/jobs/tern-point-14.yaml",
		},
		flags: func(set *pflag.FlagSet) {
			set.BoolVar(&o.all, "all", false, "every cause, not the likeliest alone")
			flagJustWired(set, &o.wired)
			flagChoice(set, &o.output, "output", "form of the answer", "text", "json")
			flagRoot(set, &o.root)
		},
		run: func(c *call) exit { return runSymptoms(c, o) },
	}
}

// flagJustWired adds the flag that makes mistakes of the work likely.
func flagJustWired(set *pflag.FlagSet, to *bool) {
	set.BoolVar(to, "just-wired", false, "the cart was not right since it was last worked on: wires on wrong terminals are likely")
}

func runSymptoms(c *call, o symptomsOptions) exit {
	h, found := c.load(c.args[0], o.root)
	if h == nil {
		return c.unusableInput(found)
	}
	// The only error is that of a context that ends, which this one does not.
	table, _ := diagnosis.NewTable(context.Background(), h, diagnosis.Options{JustWired: o.wired})
	entries, _ := table.Chart(context.Background())
	s := report.Symptoms{Version: version, File: c.args[0], Table: table, Entries: entries, Most: mostCauses}
	if o.all {
		s.Most = 0
	}
	// A write error is remembered by the stream.
	if o.output == "json" {
		_ = report.SymptomsJSON(c.stdout, s)
	} else {
		_ = report.SymptomsText(c.stdout, s, c.textOptions(c.stdout))
	}
	return clean
}
