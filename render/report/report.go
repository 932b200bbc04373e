// Package report turns findings into what people and programs read: text for a terminal,
// JSON, SARIF 2.1.0, and the long explanation of a rule. It judges nothing and looks
// nothing up; what it is given is what it says.
//
// A [Report] is data. [Text], [JSON] and [SARIF] each write the whole of it in one call,
// the same bytes for the same report; [Explain] and [Rules] write about rules alone.
package report

import (
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/rule"
)

// Report is what one run of the checks has to say, about one job or many.
type Report struct {
	Version string       // of the program
	Rules   []*rule.Rule // every rule that ran, in the order of the list of rules
	Jobs    []Job        // in the order in which they were asked for
	Least   diag.Level   // lowest level that is shown; 0 shows everything
}

// Job is what was found about one job file.
type Job struct {
	File       string            // as the user named it, with forward slashes
	Number     string            // identification number; empty where the file could not be read
	Title      string            //
	Unusable   bool              // the file cannot be checked: its findings are faults of the input
	Findings   []diag.Finding    // sorted; waived ones are among them
	NotChecked []rule.NotChecked // what rules could not judge, so that silence never looks like a pass
	Files      *diag.Files       // to quote lines from; may be nil
}

// Count is how many findings a job or a report has. A waived finding counts as waived
// alone.
type Count struct {
	Errors, Warnings, Notes, Waived, NotChecked int
}

// Count counts what was found about the job, whatever the level shown.
func (j Job) Count() Count {
	c := Count{NotChecked: len(j.NotChecked)}
	for _, f := range j.Findings {
		switch {
		case f.Waived != nil:
			c.Waived++
		case f.Level == diag.Error:
			c.Errors++
		case f.Level == diag.Warning:
			c.Warnings++
		default:
			c.Notes++
		}
	}
	return c
}

// Count adds up the jobs.
func (r Report) Count() Count {
	var sum Count
	for _, j := range r.Jobs {
		c := j.Count()
		sum.Errors += c.Errors
		sum.Warnings += c.Warnings
		sum.Notes += c.Notes
		sum.Waived += c.Waived
		sum.NotChecked += c.NotChecked
	}
	return sum
}

// shown reports whether a finding is to be listed among the open ones.
func (r Report) shown(f diag.Finding) bool { return f.Waived == nil && f.Level >= r.Least }
