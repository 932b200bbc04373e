package main

import (
	"context"
	"errors"
	"fmt"
	"strings"

	"github.com/spf13/pflag"

	"github.com/lugwright/lugwright/cmd/lugwright/folder"
	"github.com/lugwright/lugwright/render"
	"github.com/lugwright/lugwright/render/format"
	"github.com/lugwright/lugwright/render/report"
	"github.com/lugwright/lugwright/render/sheet"
	"github.com/lugwright/lugwright/render/sheet/frame"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/rules"
)

type drawOptions struct {
	into, paper, units, report, root string
	sheets, as                       []string
	force                            bool
}

func drawCommand() *command {
	var o drawOptions
	return &command{
		name:     "draw",
		operands: operands{name: "JOB", least: 1, most: 1},
		short:    "draw the sheets of a job into a folder",
		long: `Reads a job, runs every rule over it, and draws its sheets into a folder, which is made if
need be, with a list of what was found beside them. What is open stands on each sheet and on
standard error; what the job waives stands on the sheets with the reason. The names of the
files go to standard output.

With errors open the sheets are drawn all the same, so that the fault can be seen, and the
exit code is 1. A file that the program did not write, or that was changed since, is only
replaced with --force. Either all files are written or none.`,
		examples: []string{
			"lugwright draw examples/tern-point/jobs/tern-point-14.yaml -o sheets",
			"lugwright draw examples/tern-point/jobs/tern-point-14.yaml -o letter --sheet 1 --paper letter",
		},
		flags: func(set *pflag.FlagSet) {
			set.StringVarP(&o.into, "out", "o", "", "`folder` that the files go to")
			set.StringSliceVar(&o.sheets, "sheet", nil, "`sheets` that are wanted, by name, number or title; else all")
			flagChoices(set, &o.as, "as", "forms of the files", formatWords()...)
			flagChoice(set, &o.paper, "paper", "paper that the sheets are for, lying", paperWords()...)
			flagChoice(set, &o.units, "units", "units of lengths and torques", unitWords...)
			flagChoice(set, &o.report, "report", "how well the schematic reads, on standard output after the names of the files", reportWords...)
			set.BoolVar(&o.force, "force", false, "replace files whoever wrote them")
			flagRoot(set, &o.root)
		},
		run: func(c *call) exit { return runDraw(c, o) },
	}
}

// paperWords lists the papers as flags name them.
func paperWords() []string {
	var words []string
	for _, p := range frame.Papers() {
		words = append(words, strings.ToLower(p.Name))
	}
	return words
}

// formatWords lists the forms as flags name them.
func formatWords() []string {
	var words []string
	for _, f := range format.All() {
		words = append(words, f.ID)
	}
	return words
}

// unitWords are the systems of units as flags name them, in the order of their constants.
var unitWords = []string{"written", "inch", "metric"}

// unitsOf is the system that a word of --units means.
func unitsOf(word string) quantity.System {
	switch word {
	case "inch":
		return quantity.Inch
	case "metric":
		return quantity.Metric
	}
	return quantity.AsWritten
}

func runDraw(c *call, o drawOptions) exit {
	if o.into == "" {
		return badCall(c, "say where the sheets go: -o FOLDER")
	}
	paper, err := frame.PaperNamed(o.paper)
	if err != nil {
		return c.refuse("%v", err)
	}
	h, found := c.judge(c.args[0], o.root)
	if h == nil {
		return c.unusableInput(found)
	}
	out := folder.New(o.into, folder.Options{Own: render.Stamped, Force: o.force})
	options := render.Options{Paper: paper, Units: unitsOf(o.units), Sheets: o.sheets}
	for _, word := range o.as {
		options.Formats = append(options.Formats, format.Named(word))
	}
	drawn, err := render.Packet(context.Background(), h, found, out, options)
	var asked *render.SheetError
	switch {
	case errors.As(err, &asked):
		return c.refuse("%v", asked)
	case err != nil:
		return c.refuse("%v", err)
	}
	written, err := out.Commit()
	if err != nil {
		return c.unwritten(err)
	}
	for _, path := range written {
		fmt.Fprintln(c.stdout, path)
	}
	if err := tellQuality(c.stdout, drawn, o.report); err != nil {
		return c.refuse("%v", err)
	}
	return c.tellOpen(found, drawn)
}

// unwritten says why files could not be written.
func (c *call) unwritten(err error) exit {
	var foreign *folder.ForeignError
	if errors.As(err, &foreign) {
		c.complain("%v\nnothing was written; --force replaces what is there", err)
	} else {
		c.complain("%v", err)
	}
	return unwritten
}

// tellOpen says on standard error what is wrong with the cart, or with the drawing.
func (c *call) tellOpen(found report.Job, drawn *sheet.Document) exit {
	code := clean
	for _, one := range drawn.Sheets {
		if !one.Whole() {
			c.complain("sheet %d (%s) is incomplete and must not be built from%s%s", one.Number, one.Name(),
				listed("not drawn", one.Undrawn), listed("without its words", one.Unlabelled))
			code = findings
		}
	}
	r := report.Report{Rules: rules.All(), Jobs: []report.Job{found}, Least: diag.Warning}
	// An error of standard error has nowhere to be told.
	_ = report.Findings(c.stderr, r, c.textOptions(c.stderr))
	return max(code, verdict(found, diag.Error))
}

// listed is "; what: a, b", or nothing for an empty list.
func listed(what string, list []string) string {
	if len(list) == 0 {
		return ""
	}
	return "; " + what + ": " + strings.Join(list, ", ")
}
