package report

import (
	"fmt"
	"io"
	"strings"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diagnosis"
	"github.com/lugwright/lugwright/wiring/symptom"
)

// Diagnosis is where the search for a fault stands.
type Diagnosis struct {
	Version string // of the program
	File    string // the job's
	Case    *diagnosis.Case
	Asked   bool // the person was asked what was seen, and need not be again
}

// mostNamed is how many candidates are named: a screenful. JSON has them all.
const mostNamed = 12

// DiagnosisText writes where the search stands for a person: what is known, what fits, and
// what to measure next. The error is that of w.
func DiagnosisText(w io.Writer, d Diagnosis, o TextOptions) error {
	p := newDiagnosisPrinter(d, o)
	h := d.Case.Table.Cart.Harness
	p.line(p.bold(oneLine(h.Identity.Number)) + "  " + oneLine(h.Identity.Title))
	for _, c := range MeasuringCautions {
		p.entry("  ", c)
	}
	p.line("")
	p.known()
	if !d.Asked && len(d.Case.Saw)+len(d.Case.SawNot)+len(d.Case.Readings) == 0 {
		p.open()
	} else {
		p.standing()
	}
	_, err := w.Write(p.out.Bytes())
	return err
}

// DiagnosisStep writes the part of [DiagnosisText] that changes from answer to answer: what
// fits, and what to do next. The error is that of w.
func DiagnosisStep(w io.Writer, d Diagnosis, o TextOptions) error {
	p := newDiagnosisPrinter(d, o)
	p.standing()
	_, err := w.Write(p.out.Bytes())
	return err
}

// DiagnosisComplaints writes what an owner can have seen, numbered from 1. The error is that
// of w.
func DiagnosisComplaints(w io.Writer, d Diagnosis, o TextOptions) error {
	p := newDiagnosisPrinter(d, o)
	for i, c := range d.Case.Table.Complaints() {
		p.entry(fmt.Sprintf("%4d  ", i+1), oneLine(c.Text()))
	}
	_, err := w.Write(p.out.Bytes())
	return err
}

func newDiagnosisPrinter(d Diagnosis, o TextOptions) *diagnosisPrinter {
	if o.Width <= 0 {
		o.Width = readingsWidth
	}
	return &diagnosisPrinter{newPrinter(o, nil), d}
}

type diagnosisPrinter struct {
	*printer
	Diagnosis
}

// open says what can be answered when nothing is known yet.
func (p *diagnosisPrinter) open() {
	p.entry("", "Say what was seen, with --saw, in these words or enough of them:")
	for _, c := range p.Case.Table.Complaints() {
		p.entry("  ", oneLine(c.Text()))
	}
	p.entry("", "or begin with a reading, such as "+p.sampleFlag()+".")
}

// sampleFlag is a reading at the first place and in the first state that moves anything.
func (p *diagnosisPrinter) sampleFlag() string {
	all := p.Case.Table.Measurements()
	return flagOf(all[len(all)/2].Name(), "12.3V")
}

func flagOf(name, value string) string { return fmt.Sprintf("--read %q", name+"="+value) }

// known says what was seen and read.
func (p *diagnosisPrinter) known() {
	for _, k := range p.Case.Saw {
		p.entry("seen      ", oneLine(k.Text()))
	}
	for _, k := range p.Case.SawNot {
		p.entry("not seen  ", oneLine(k.Text()))
	}
	for _, r := range p.Case.Readings {
		p.entry("read      ", oneLine(fmt.Sprintf("%s: %s %s (healthy %s)", r.State.Name, placeWords(r.Measurement),
			quantityOf(r.Measurement, r.Volts), quantityOf(r.Measurement, p.Case.Table.Healthy(r.Measurement)))))
	}
}

// standing says what fits and what comes next.
func (p *diagnosisPrinter) standing() {
	fit := p.Case.Candidates()
	if len(fit) == 0 {
		p.contradiction()
		return
	}
	p.line("")
	p.line(p.bold(fmt.Sprintf("%d of %d causes fit:", len(fit), len(p.Case.Table.Candidates))))
	for i, k := range fit {
		if i == mostNamed {
			p.entry("  ", fmt.Sprintf("and %d rarer", len(fit)-i))
			break
		}
		class := ""
		if len(k.Faults) > 0 {
			class = k.Faults[0].Mode.Class.String()
		}
		p.entry(fmt.Sprintf("  %-10s  ", class), oneLine(k.Name()))
	}
	p.line("")
	step, ok := p.Case.Next()
	switch {
	case ok && step.Question != nil:
		p.question(*step.Question)
	case ok:
		p.measure(step.Measurement)
	case len(fit) == 1:
		p.entry("", "Nothing else fits. Look there.")
	default:
		p.entry("", "No reading tells these apart. Look at each of them.")
	}
}

func (p *diagnosisPrinter) question(k symptom.Complaint) {
	p.entry(p.bold("Ask")+"   ", oneLine(fmt.Sprintf("is it so that %s? In %s: %s.", k.Text(), k.State.Name, p.setting(k.State))))
	p.entry("      ", oneLine(fmt.Sprintf("yes: --saw %q; no: --not %q", k.Key(), k.Key())))
}

// measure says how to take a measurement, and what it tells.
func (p *diagnosisPrinter) measure(m diagnosis.Measurement) {
	t := p.Case.Table
	red, black := t.Probes(m)
	p.entry(p.bold("Set")+"   ", oneLine(m.State.Name+": "+p.setting(m.State)))
	p.entry(p.bold("Read")+"  ", oneLine(fmt.Sprintf("red probe on %s, black on %s; healthy: %s", red, black, quantityOf(m, t.Healthy(m)))))
	for _, o := range p.Case.Outcomes(m) {
		p.entry("      ", oneLine(fmt.Sprintf("%s: %s", p.between(m, o), p.fewNames(o.Candidates))))
	}
	p.entry("      ", oneLine("then "+flagOf(m.Name(), "...V")))
}

// between is a value, or the ends of a range of them.
func (p *diagnosisPrinter) between(m diagnosis.Measurement, o diagnosis.Outcome) string {
	low, high := quantityOf(m, o.Low), quantityOf(m, o.High)
	if low == high {
		return low
	}
	return strings.TrimSuffix(low, " V") + " to " + high
}

// fewNames names the likeliest of some candidates.
func (p *diagnosisPrinter) fewNames(all []*diagnosis.Candidate) string {
	const few = 3
	var names []string
	for i, k := range all {
		if i == few {
			return strings.Join(names, ", ") + fmt.Sprintf(" or %d more", len(all)-i)
		}
		names = append(names, k.Name())
	}
	return listed(names, "or")
}

func (p *diagnosisPrinter) setting(s *wiring.State) string {
	return Settings(p.Case.Table.Cart.Harness, s)
}

// contradiction says that nothing fits, and which readings are in the way.
func (p *diagnosisPrinter) contradiction() {
	p.line("")
	p.entry("", p.bold("No single fault fits all of that."))
	odd := p.Case.Contradicts()
	for _, r := range odd {
		p.entry("  ", oneLine(fmt.Sprintf("Without %s something fits: read it again, in the right state, with the pack as full as was said (--charge).",
			r.Name()+"="+quantityOf(r.Measurement, r.Volts))))
	}
	if len(odd) == 0 && len(p.Case.Saw) > 1 {
		p.entry("  ", "No one fault shows all of these at once: take away what may have another cause.")
	}
	p.entry("  ", "Or two things are wrong at once: --pairs looks for them.")
}
