package main

import (
	"fmt"
	"strings"
	"text/tabwriter"

	"github.com/spf13/pflag"

	"github.com/lugwright/lugwright/render/report"
	"github.com/lugwright/lugwright/wiring"
)

type statesOptions struct{ root string }

func statesCommand() *command {
	var o statesOptions
	return &command{
		name:     "states",
		operands: operands{name: "JOB", least: 1, most: 1},
		short:    "list the operating states of a job",
		long: `Lists the operating states in which a job is checked and solved: what is set in each that
is not at rest, and what the job expects of the cart in it. Built-in states that nothing on
the cart can be set to are left out.`,
		examples: []string{"lugwright states examples/tern-point/jobs/tern-point-14.yaml"},
		flags:    func(set *pflag.FlagSet) { flagRoot(set, &o.root) },
		run:      func(c *call) exit { return runStates(c, o) },
	}
}

func runStates(c *call, o statesOptions) exit {
	h, found := c.load(c.args[0], o.root)
	if h == nil {
		return c.unusableInput(found)
	}
	table := tabwriter.NewWriter(c.stdout, 0, 0, 2, ' ', 0)
	fmt.Fprintln(table, "STATE\tSET\tEXPECTED")
	for _, s := range h.States {
		fmt.Fprintf(table, "%s\t%s\t%s\n", s.Name, report.Settings(h, s), expectations(s))
	}
	// A write error is remembered by the stream.
	_ = table.Flush()
	return clean
}

// unusableInput says on standard error why a job cannot be read.
func (c *call) unusableInput(found report.Job) exit {
	// An error of standard error has nowhere to be told.
	_ = report.Findings(c.stderr, report.Report{Jobs: []report.Job{found}}, c.textOptions(c.stderr))
	return unusable
}

func expectations(s *wiring.State) string {
	var words []string
	for _, e := range s.Expect {
		name, at := "traction", "off"
		if !e.Traction {
			name = e.Part.Designation
		}
		if e.On {
			at = "on"
		}
		words = append(words, name+" "+at)
	}
	return strings.Join(words, ", ")
}
