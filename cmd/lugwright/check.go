package main

import (
	"github.com/spf13/pflag"

	"github.com/lugwright/lugwright/render/report"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/rules"
)

type checkOptions struct {
	level, output, root string
}

func checkCommand() *command {
	var o checkOptions
	return &command{
		name:     "check",
		operands: operands{name: "JOB", least: 1, most: -1},
		short:    "say what is wrong with the wiring of jobs",
		long: `Reads each job file with the layers that it stands on, runs every rule over it, and says
what is wrong: where, against which limit, and what to do. A kit, an add-on or a platform
may stand in the place of a job; what it still needs is said as notes.

Findings that a job waives are listed with the reason, and so is what could not be checked
for want of a length, a rating or a size.`,
		examples: []string{
			"lugwright check examples/tern-point/jobs/tern-point-14.yaml",
			"lugwright check --level error --output sarif examples/tern-point/jobs/tern-point-shuttle-3.yaml",
		},
		flags: func(set *pflag.FlagSet) {
			flagChoice(set, &o.level, "level", "lowest level that is listed and counts for the exit code",
				"warning", "error", "note")
			flagChoice(set, &o.output, "output", "form of the answer", "text", "json", "sarif")
			flagRoot(set, &o.root)
		},
		run: func(c *call) exit { return runCheck(c, o) },
	}
}

func runCheck(c *call, o checkOptions) exit {
	r := report.Report{Version: version, Rules: rules.All(), Least: levelOf(o.level)}
	code := clean
	for _, file := range c.args {
		_, found := c.judge(file, o.root)
		r.Jobs = append(r.Jobs, found)
		code = max(code, verdict(found, r.Least))
	}
	// A write error is remembered by the stream.
	switch o.output {
	case "json":
		_ = report.JSON(c.stdout, r)
	case "sarif":
		_ = report.SARIF(c.stdout, r)
	default:
		_ = report.Text(c.stdout, r, c.textOptions(c.stdout))
	}
	return code
}

// verdict is the exit code that one job asks for.
func verdict(found report.Job, least diag.Level) exit {
	switch {
	case found.Unusable:
		return unusable
	case diag.Worst(found.Findings) >= least:
		return findings
	}
	return clean
}
