package main

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"

	"github.com/spf13/pflag"

	"github.com/lugwright/lugwright/render/report"
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diagnosis"
	"github.com/lugwright/lugwright/wiring/meter"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/source"
)

type diagnoseOptions struct {
	saw, not, read       []string
	charge, output, root string
	wired, pairs         bool
}

func diagnoseCommand() *command {
	var o diagnoseOptions
	return &command{
		name:     "diagnose",
		operands: operands{name: "JOB", least: 1, most: 1},
		short:    "find the one thing that is wrong, from what was seen and what a meter reads",
		long: `Lists the faults that fit what was seen and read, and names the next measurement: the one
that tells them apart best for the trouble of taking it, with what each outcome would mean.
Give its result with --read and call again. On a terminal, without --read, it asks until
nothing is left to ask; an empty line skips a place that cannot be reached, q ends.

A reading is PLACE@STATE=VOLTS. A place is a terminal, against the negative that the
program names; a wire, from end to end; or POST>TERMINAL, for what is lost between them.
Readings have a tolerance; where no fault fits all of them, the ones in the way are named.
The JSON is described by render/report/diagnosis.schema.json.`,
		examples: []string{
			`lugwright diagnose examples/tern-point/jobs/tern-point-14.yaml --saw "does not move"`,
			`lugwright diagnose examples/tern-point/jobs/tern-point-14.yaml --read U1.interlock@driving=0V`,
		},
		flags: func(set *pflag.FlagSet) {
			set.StringArrayVar(&o.saw, "saw", nil, "`words` of what was seen; may be given again")
			set.StringArrayVar(&o.not, "not", nil, "`words` of what is not so; may be given again")
			set.StringArrayVar(&o.read, "read", nil, "`reading` that was taken; may be given again")
			set.StringVar(&o.charge, "charge", "", "`share` to which the pack is charged, such as 60%; else as the states say")
			flagJustWired(set, &o.wired)
			set.BoolVar(&o.pairs, "pairs", false, "two things may be wrong at once")
			flagChoice(set, &o.output, "output", "form of the answer", "text", "json")
			flagRoot(set, &o.root)
		},
		run: func(c *call) exit { return runDiagnose(c, o) },
	}
}

func runDiagnose(c *call, o diagnoseOptions) exit {
	h, found := c.load(c.args[0], o.root)
	if h == nil {
		return c.unusableInput(found)
	}
	charge, err := chargeOf(o.charge)
	if err != nil {
		return badCall(c, "--charge: "+err.Error())
	}
	ctx := context.Background()
	// The only error is that of a context that ends, which this one does not.
	table, _ := diagnosis.NewTable(ctx, h, diagnosis.Options{SOC: charge, JustWired: o.wired})
	one := table.Open()
	if err := fill(one, h, o); err != nil {
		return c.refuse("%v", err)
	}
	if o.pairs {
		_ = one.Pairs(ctx)
	}
	d := report.Diagnosis{Version: version, File: c.args[0], Case: one}
	switch {
	case o.output == "json":
		// A write error is remembered by the stream.
		_ = report.DiagnosisJSON(c.stdout, d)
	case len(o.read) == 0 && c.stdin.terminal && c.stdout.terminal:
		return c.converse(d)
	default:
		_ = report.DiagnosisText(c.stdout, d, c.textOptions(c.stdout))
	}
	return clean
}

// chargeOf reads a state of charge; none is 0.
func chargeOf(s string) (quantity.Ratio, error) {
	if s == "" {
		return 0, nil
	}
	a, err := quantity.Parse(s, quantity.Share)
	if err != nil {
		return 0, err
	}
	if a.Value <= 0 || a.Value > 1 {
		return 0, fmt.Errorf("%s is no state of charge: write a share above 0%% and up to 100%%", s)
	}
	return quantity.Ratio(a.Value), nil
}

// fill puts into a case what the flags say. The error names every fault of them.
func fill(one *diagnosis.Case, h *wiring.Harness, o diagnoseOptions) error {
	var faults []error
	for i, words := range append(append([]string{}, o.saw...), o.not...) {
		k, err := one.Table.Find(words)
		if err != nil {
			faults = append(faults, err)
			continue
		}
		one.Answer(k, i < len(o.saw))
	}
	for _, words := range o.read {
		r, err := one.ParseReading(words)
		var place *diagnosis.PlaceError
		if errors.As(err, &place) {
			err = errors.New(place.Error() + source.DidYouMean(place.Place, placeNames(h)))
		}
		if err != nil {
			faults = append(faults, err)
			continue
		}
		one.Readings = append(one.Readings, r)
	}
	return errors.Join(faults...)
}

func placeNames(h *wiring.Harness) []string {
	var names []string
	for _, spot := range meter.New(h).Terminals() {
		names = append(names, spot.Name)
	}
	for _, w := range h.Wires {
		names = append(names, w.Name())
	}
	return names
}

// converse asks on a terminal until nothing is left to ask.
func (c *call) converse(d report.Diagnosis) exit {
	in := bufio.NewScanner(c.stdin)
	options := c.textOptions(c.stdout)
	d.Asked = true
	if len(d.Case.Saw) == 0 {
		if !c.askWhatWasSeen(in, d) {
			return clean
		}
	}
	// A write error is remembered by the stream.
	_ = report.DiagnosisText(c.stdout, d, options)
	for {
		step, ok := d.Case.Next()
		if !ok {
			return clean
		}
		answer, ok := c.ask(in, step)
		if !ok {
			return clean
		}
		if err := take(d.Case, step, answer); err != nil {
			fmt.Fprintf(c.stdout, "%v\n", err)
			continue
		}
		_ = report.DiagnosisStep(c.stdout, d, options)
	}
}

// askWhatWasSeen shows what an owner can have seen and takes the numbers. It reports false
// if the person wants no more.
func (c *call) askWhatWasSeen(in *bufio.Scanner, d report.Diagnosis) bool {
	fmt.Fprintln(c.stdout, "What was seen? Its numbers or words, an empty line for nothing of this, q to end.")
	_ = report.DiagnosisComplaints(c.stdout, d, c.textOptions(c.stdout))
	all := d.Case.Table.Complaints()
	for {
		line, ok := c.line(in, "seen: ")
		if !ok {
			return false
		}
		if line == "" {
			return true
		}
		if n, err := strconv.Atoi(line); err == nil && n >= 1 && n <= len(all) {
			d.Case.Answer(all[n-1], true)
			return true
		}
		k, err := d.Case.Table.Find(line)
		if err != nil {
			fmt.Fprintf(c.stdout, "%v\n", err)
			continue
		}
		d.Case.Answer(k, true)
		return true
	}
}

// ask prompts for the answer to a step.
func (c *call) ask(in *bufio.Scanner, step diagnosis.Step) (string, bool) {
	if step.Question != nil {
		return c.line(in, "y or n: ")
	}
	return c.line(in, step.Measurement.Name()+", volts: ")
}

// line prompts and reads a line. It reports false at the end of input, and at q.
func (c *call) line(in *bufio.Scanner, prompt string) (string, bool) {
	fmt.Fprint(c.stdout, prompt)
	if !in.Scan() {
		if err := in.Err(); err != nil && !errors.Is(err, io.EOF) {
			c.complain("standard input: %v", err)
		}
		return "", false
	}
	line := strings.TrimSpace(in.Text())
	return line, line != "q"
}

// take puts an answer into a case. The error says what to answer instead.
func take(one *diagnosis.Case, step diagnosis.Step, answer string) error {
	if q := step.Question; q != nil {
		switch strings.ToLower(answer) {
		case "y", "yes":
			one.Answer(*q, true)
		case "n", "no":
			one.Answer(*q, false)
		case "":
			one.SkipQuestion(*q)
		default:
			return fmt.Errorf("answer y or n; an empty line if it cannot be tried")
		}
		return nil
	}
	if answer == "" {
		one.Skip(step.Measurement)
		return nil
	}
	r, err := one.ParseReading(step.Measurement.Name() + "=" + answer)
	if err != nil {
		return err
	}
	one.Readings = append(one.Readings, r)
	return nil
}
