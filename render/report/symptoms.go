package report

import (
	"fmt"
	"io"
	"math"
	"strings"

	"github.com/lugwright/lugwright/wiring/diagnosis"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// Symptoms is a symptom chart.
type Symptoms struct {
	Version string // of the program
	File    string // the job's
	Table   *diagnosis.Table
	Entries []diagnosis.Entry
	Most    int // causes shown of each complaint; 0: all
}

// shown is the causes of an entry that are shown, and how many are not.
func (s Symptoms) shown(e diagnosis.Entry) (causes []diagnosis.Cause, more int) {
	if s.Most <= 0 || len(e.Causes) <= s.Most {
		return e.Causes, 0
	}
	return e.Causes[:s.Most], len(e.Causes) - s.Most
}

// MeasuringCautions are what must be read before anybody goes to a cart with a meter. The
// signal words are those of ANSI Z535.6.
var MeasuringCautions = []string{
	"WARNING: a short across a pack burns and blinds. One hand, fused probes, no rings, eye protection.",
	"WARNING: it may move when you find the fault. Raise and chock the wheels before you drive a state.",
	"Readings are computed for the cart as drawn. The makers' papers and local code come first; a licensed person answers for the work.",
}

// SymptomsText writes a symptom chart for a person. The error is that of w.
func SymptomsText(w io.Writer, s Symptoms, o TextOptions) error {
	if o.Width <= 0 {
		o.Width = readingsWidth
	}
	p := &symptomsPrinter{newPrinter(o, nil), s}
	h := s.Table.Cart.Harness
	p.line(p.bold(oneLine(h.Identity.Number)) + "  " + oneLine(h.Identity.Title))
	p.entry("", "What each single thing that can be wrong looks like, the likeliest cause first. In brackets stands what a healthy cart reads.")
	for _, c := range MeasuringCautions {
		p.entry("  ", c)
	}
	for _, e := range s.Entries {
		p.complaint(e)
	}
	_, err := w.Write(p.out.Bytes())
	return err
}

type symptomsPrinter struct {
	*printer
	Symptoms
}

func (p *symptomsPrinter) complaint(e diagnosis.Entry) {
	p.line("")
	p.entry("", p.bold(sentence(oneLine(e.Complaint.Text()))))
	causes, more := p.shown(e)
	for _, c := range causes {
		p.entry(fmt.Sprintf("  %-10s  ", occurrence(c)), oneLine(CauseNames(c)))
		for _, clue := range ClueLines(p.Table, c) {
			p.entry(strings.Repeat(" ", 14), oneLine(clue))
		}
	}
	if more > 0 {
		p.entry("  ", fmt.Sprintf("and %d rarer: lugwright symptoms --all, or lugwright diagnose", more))
	}
}

// occurrence is the class of the likeliest candidate of a cause.
func occurrence(c diagnosis.Cause) string {
	k := c.Candidates[0]
	if len(k.Faults) == 0 {
		return ""
	}
	return k.Faults[0].Mode.Class.String()
}

// CauseNames lists what a cause may be, in words.
func CauseNames(c diagnosis.Cause) string {
	var names []string
	for _, k := range c.Candidates {
		names = append(names, k.Name())
	}
	return listed(names, "or")
}

// ClueLines says what tells a cause from the others of its complaint: what else is seen,
// then the readings, a line for each state.
func ClueLines(t *diagnosis.Table, c diagnosis.Cause) []string {
	var lines, also, not []string
	for _, clue := range c.Clues {
		if clue.Question != nil {
			if clue.Yes {
				also = append(also, clue.Question.Text())
			} else {
				not = append(not, clue.Question.Text())
			}
		}
	}
	switch {
	case len(also) > 0:
		lines = append(lines, "also: "+strings.Join(also, ", "))
	case len(not) == len(c.Clues) && len(not) > 0:
		lines = append(lines, "not: "+strings.Join(not, ", "))
	}
	state := ""
	for _, clue := range c.Clues {
		if clue.Question != nil {
			continue
		}
		m := clue.Measurement
		words := fmt.Sprintf("%s %s (%s)", placeWords(m), quantityOf(m, clue.Volts), quantityOf(m, t.Healthy(m)))
		if m.State.Name == state {
			lines[len(lines)-1] += ", " + words
			continue
		}
		state = m.State.Name
		lines = append(lines, state+": "+words)
	}
	return lines
}

// placeWords is where a measurement is taken: "K1.out", "along W7", "from G1.+ to K1.out".
func placeWords(m diagnosis.Measurement) string {
	switch {
	case m.Wire != nil:
		return "along " + m.Wire.Name()
	case m.Post != nil:
		return "from " + m.Post.Name + " to " + m.Spot.Name
	}
	return m.Where()
}

// quantityOf is a value as a meter shows it on the range that suits: small losses with two
// decimals.
func quantityOf(m diagnosis.Measurement, v quantity.Volt) string {
	if m.Drop() && math.Abs(float64(v)) < 10 {
		return fmt.Sprintf("%.2f V", clean(math.Abs(float64(v)), 100))
	}
	return fmt.Sprintf("%.1f V", clean(float64(v), 10))
}

// clean rounds, and has no negative zero.
func clean(v, scale float64) float64 { return math.Round(v*scale)/scale + 0 }

// sentence begins a text with a capital.
func sentence(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}
