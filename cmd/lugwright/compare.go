package main

import (
	"path/filepath"

	"github.com/spf13/pflag"

	"github.com/lugwright/lugwright/render/report"
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/difference"
	"github.com/lugwright/lugwright/wiring/job"
)

type compareOptions struct {
	output, root string
	found        bool
}

func compareCommand() *command {
	var o compareOptions
	return &command{
		name:     "compare",
		operands: operands{name: "OLD NEW", least: 1, most: 2},
		short:    "say what changed from one job to another",
		long: `Says what changed from one job, or any other layer, to another: parts and wires that are new
or gone, ends that moved, what was capped, extended, cut to another length, colour or size,
fuses and ratings, and how the lugs stack. With --as-found one job is compared with its own
cart as it came, before the work: what its platform says.

Identity is by name: a wire or part under another number is gone and new, but for the leads
of devices. Which end of a wire is written first makes no difference. Between two revisions
of a job a line is offered for its revision list.

Exit code 0 says that nothing changed, 1 that something did. The JSON is described by
render/report/comparison.schema.json; its marks say what a drawing would mark.`,
		examples: []string{
			"lugwright compare --as-found examples/tern-point/jobs/tern-point-14.yaml",
			"lugwright compare --output json --as-found examples/tern-point/jobs/tern-point-truck-1.yaml",
		},
		flags: func(set *pflag.FlagSet) {
			set.BoolVar(&o.found, "as-found", false, "compare one job with its cart as it came")
			flagChoice(set, &o.output, "output", "form of the answer", "text", "json")
			flagRoot(set, &o.root)
		},
		run: func(c *call) exit { return runCompare(c, o) },
	}
}

func runCompare(c *call, o compareOptions) exit {
	switch {
	case o.found && len(c.args) > 1:
		return c.refuse("--as-found takes one job, not also %q", c.args[1])
	case !o.found && len(c.args) < 2:
		return c.refuse("name two jobs, or say --as-found")
	}
	old, code := c.oldCart(o)
	if old.Harness == nil {
		return code
	}
	file := c.args[len(c.args)-1]
	h, found := c.load(file, o.root)
	if h == nil {
		return c.unusableInput(found)
	}
	r := report.Comparison{
		Version: version, Old: old, New: report.Compared{File: filepath.ToSlash(file), Harness: h},
		Difference: difference.Between(old.Harness, h),
	}
	// A write error is remembered by the stream.
	if o.output == "json" {
		_ = report.ComparisonJSON(c.stdout, r)
	} else {
		_ = report.ComparisonText(c.stdout, r, c.textOptions(c.stdout))
	}
	if r.None() {
		return clean
	}
	return findings
}

// oldCart reads the first of the two carts. Without a harness it has said why.
func (c *call) oldCart(o compareOptions) (report.Compared, exit) {
	out := report.Compared{File: filepath.ToSlash(c.args[0]), AsFound: o.found}
	code := clean
	if o.found {
		out.Harness, code = c.asFound(c.args[0], o.root)
	} else {
		h, found := c.load(c.args[0], o.root)
		if out.Harness = h; h == nil {
			code = c.unusableInput(found)
		}
	}
	return out, code
}

// asFound reads the cart of a job as it came. A nil harness is explained on standard error.
func (c *call) asFound(file, root string) (*wiring.Harness, exit) {
	h, about, err := job.LoadBefore(file, job.Options{FS: c.files, Root: root})
	if h != nil {
		return h, clean
	}
	if err == nil && len(about) == 0 {
		return nil, c.refuse("%s uses no platform: nothing says how the cart came", file)
	}
	// A job of which the lower layers cannot be read cannot be read as a whole either.
	_, found := c.load(file, root)
	if found.Findings == nil {
		found.Findings = about
	}
	return nil, c.unusableInput(found)
}
