package report

import (
	"fmt"
	"io"
	"strings"

	"github.com/lugwright/lugwright/wiring/meter"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// readingsWidth is where tables of readings break when nobody says how wide the terminal is:
// such a table is taken to the cart on paper or on a telephone.
const readingsWidth = 80

// ReadingsText writes readings for a person: a table of terminals by states, set in as many
// blocks as the width asks for, then how long to wait, what keeps each main contact open and
// what stays live with the main switch off. The error is that of w.
func ReadingsText(w io.Writer, r Readings, o TextOptions) error {
	if o.Width <= 0 {
		o.Width = readingsWidth
	}
	p := &readingsPrinter{printer: newPrinter(o, nil), Readings: r}
	p.heading()
	p.table()
	p.legend()
	p.failed()
	p.waits()
	p.mains()
	p.live()
	_, err := w.Write(p.out.Bytes())
	return err
}

// readingsPrinter sets readings.
type readingsPrinter struct {
	*printer
	Readings
	marks map[string]bool // that stand in the table
}

func (p *readingsPrinter) heading() {
	h := p.Survey.Bench.Harness
	p.line(p.bold(oneLine(h.Identity.Number)) + "  " + oneLine(h.Identity.Title))
	p.filled("", "What a 10 Mohm meter shows, in volts, after capacitors ran down.")
	p.filled("", fmt.Sprintf("Black probe on %s%s%s.", p.reference(), p.exceptions(), p.charge()))
}

func (p *readingsPrinter) reference() string {
	return oneLine(p.Survey.Bench.Name(p.Reference()))
}

// exceptions promises the places that are read against something else.
func (p *readingsPrinter) exceptions() string {
	for _, g := range p.groups() {
		for _, spot := range g.spots {
			if p.Black(spot) != p.Reference() {
				return " but where another is named"
			}
		}
	}
	return ""
}

// filled writes text broken at the width, each line behind a margin.
func (p *readingsPrinter) filled(margin, text string) {
	for _, line := range wrap(text, p.width-len(margin)) {
		p.line(margin + line)
	}
}

// hanging writes text broken at the width; lines after the first stand further in.
func (p *readingsPrinter) hanging(margin, text string) {
	for i, line := range wrap(text, p.width-len(margin)-2) {
		if i > 0 {
			line = "  " + line
		}
		p.line(margin + line)
	}
}

func (p *readingsPrinter) failed() {
	for _, f := range p.Survey.Failed {
		p.line("")
		p.filled("", oneLine(f.Error()))
	}
}

// waits tells how long the readings take to become true.
func (p *readingsPrinter) waits() {
	for _, w := range p.Waits() {
		p.line("")
		p.line(p.bold("Wait, in " + listed(w.States, "and") + ":"))
		for _, line := range w.Lines {
			p.hanging("  ", line)
		}
	}
}

// patience is a time as somebody waits it, rounded up: "9 s", "3 min".
func patience(t quantity.Second) string {
	if t <= 90 {
		return fmt.Sprintf("%d s", ceil(float64(t)))
	}
	return fmt.Sprintf("%d min", ceil(float64(t)/60))
}

func ceil(x float64) int {
	n := int(x)
	if float64(n) < x {
		n++
	}
	return n
}

// mains tells what keeps each main contact open.
func (p *readingsPrinter) mains() {
	for i, m := range p.Survey.Bench.Mains() {
		p.line("")
		p.line(p.bold("Main contact " + m.Coil.Part.Designation))
		for _, one := range merged(p.Survey.Sheets, func(s *meter.Sheet) []string { return p.hold(s.Holds()[i]) }) {
			verdict := "closed"
			if len(one.lines) > 1 || one.lines[0] != closedLine {
				verdict = "open"
			}
			p.hanging("  ", verdict+" in "+listed(one.states, "and"))
			if verdict == "closed" {
				continue
			}
			for _, line := range one.lines {
				indent := len(line) - len(strings.TrimLeft(line, " "))
				p.hanging(strings.Repeat(" ", 4+indent), strings.TrimLeft(line, " "))
			}
		}
	}
}

const closedLine = "closed"

// hold tells what keeps a main contact open, one line a condition.
func (p *readingsPrinter) hold(h meter.Hold) []string {
	if h.Closed {
		return []string{closedLine}
	}
	words := breaker{p.Survey.Bench}
	return words.wants("", h.Wants)
}

// live tells what stays live with the main switch off.
func (p *readingsPrinter) live() {
	for _, name := range meter.OffStates() {
		s := p.Survey.Sheet(name)
		if s == nil {
			continue
		}
		p.line("")
		p.line(p.bold("Live in " + name + ", by what stands between it and its supply"))
		for _, g := range liveGroups(p.Survey.Bench, s) {
			p.hanging("  ", g.volts()+" V "+g.title+": "+strings.Join(g.names, ", "))
		}
	}
}
