package report

import (
	"fmt"
	"io"
	"strings"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/meter"
	"github.com/lugwright/lugwright/wiring/path"
)

// Trace is what feeds a place in several states, ready to be set.
type Trace struct {
	Version string // of the program
	File    string // the job's
	Survey  *meter.Survey
	Spots   []meter.Spot // a terminal, or the poles of a port
}

// TraceText writes a trace for a person: state by state what the place reads, what feeds it
// and by which way, or where the way is cut. Of a single state it sets the way as a ladder
// with the voltage at each terminal. The error is that of w.
func TraceText(w io.Writer, t Trace, o TextOptions) error {
	if o.Width <= 0 {
		o.Width = readingsWidth
	}
	p := &tracePrinter{readingsPrinter{printer: newPrinter(o, nil), Readings: Readings{Survey: t.Survey}}}
	for i, spot := range t.Spots {
		if i > 0 {
			p.line("")
		}
		p.spot(spot)
	}
	p.failed()
	_, err := w.Write(p.out.Bytes())
	return err
}

type tracePrinter struct{ readingsPrinter }

func (p *tracePrinter) spot(spot meter.Spot) {
	part := spot.Terminal.Part
	title := oneLine(part.Name())
	if spot.Terminal.Spoken != "" {
		title = oneLine(spot.Terminal.Spoken) + ", " + title
	}
	p.line(p.bold(oneLine(spot.Name)) + "  " + title)
	p.filled("", "Black probe on "+oneLine(p.Survey.Bench.Name(p.Black(spot)))+".")
	if len(p.Survey.Sheets) == 1 {
		p.ladder(p.Survey.Sheets[0], spot)
		return
	}
	for _, one := range p.alike(spot) {
		p.line("")
		p.hanging("", p.statesRead(one.states, spot))
		for _, line := range one.lines {
			p.indented(line)
		}
	}
}

// indented writes a line that stands as far in as it begins with blanks.
func (p *tracePrinter) indented(line string) {
	text := strings.TrimLeft(line, " ")
	p.hanging(strings.Repeat(" ", 2+len(line)-len(text)), text)
}

// alike puts together the states in which the same is to be said of a place.
func (p *tracePrinter) alike(spot meter.Spot) []alike {
	return merged(p.Survey.Sheets, func(s *meter.Sheet) []string { return p.words(s.Trace(spot.Node)) })
}

// statesRead names states with what a place reads in them, once if it is the same in all.
func (p *tracePrinter) statesRead(states []string, spot meter.Spot) string {
	var each []string
	same := true
	first := p.Survey.Sheet(states[0]).ReadAt(spot.Node).String()
	for _, name := range states {
		reads := p.Survey.Sheet(name).ReadAt(spot.Node).String()
		same = same && reads == first
		each = append(each, p.bold(name)+" "+reads)
	}
	switch {
	case same && len(states) == len(p.Survey.Sheets):
		return p.bold("every state") + ": " + first
	case same:
		return p.bold(listed(states, "and")) + ": " + first
	}
	return strings.Join(each, ", ")
}

// words tells a trace: what feeds the place, or why nothing does, then the way.
func (p *tracePrinter) words(t meter.Trace) []string {
	words := breaker{p.Survey.Bench}
	lines := []string{p.verdict(t)}
	if t.Break != nil {
		lines = append(lines, words.wants("  ", t.Break.Wants)...)
	}
	if len(t.Feed.Steps) > 0 {
		lines = append(lines, oneLine(t.Feed.String()))
	}
	for _, way := range t.Behind {
		lines = append(lines, oneLine(p.fedBy(way)))
	}
	if note := proofWords(t.Reading.Proof); note != "" {
		lines = append(lines, note)
	}
	return lines
}

// fedBy tells how a converter is fed itself.
func (p *tracePrinter) fedBy(way path.Path) string {
	part := p.Survey.Bench.Harness.Nodes[way.End].Part
	return part.Designation + " by " + way.String()
}

func (p *tracePrinter) verdict(t meter.Trace) string {
	words := breaker{p.Survey.Bench}
	if t.Reading.Mains {
		return "mains: alternating current, not solved here"
	}
	switch t.Verdict {
	case meter.Fed:
		return "fed by " + oneLine(t.Supply.Base().Part.Designation)
	case meter.Return:
		return "on the way back to " + oneLine(t.Supply.Base().Part.Designation)
	case meter.Dead:
		line := "dead, " + words.cut(t.Break)
		if !t.Break.Supply {
			line += fmt.Sprintf("; %v as far as %s", t.Break.Reads, oneLine(p.Survey.Bench.Name(t.Break.Before)))
		}
		return line
	}
	if t.Empty != nil {
		return "no way leads there: " + oneLine(t.Empty.Ref()) + " is an empty channel"
	}
	if !t.Reading.Floating {
		return "no way leads there from any supply; what it hangs on holds it near the negative"
	}
	return "no way leads there from any supply"
}

// proofWords warns of a reading that is not what it looks like.
func proofWords(p meter.Proof) string {
	switch p {
	case meter.Precharged:
		return "The reading proves nothing: it comes through a resistor past an open contact."
	case meter.Asleep:
		return "The reading proves nothing: the battery is off, and such posts show anything."
	case meter.ThroughConsumer:
		return "It comes through a consumer that is not switched on: proves that one whole, and no more."
	}
	return ""
}

// ladder sets the way of one state, terminal by terminal with volts.
func (p *tracePrinter) ladder(s *meter.Sheet, spot meter.Spot) {
	t := s.Trace(spot.Node)
	p.line("")
	p.line(p.bold(oneLine(s.State.Name)) + ": " + t.Reading.String())
	lines := p.words(t)
	if len(t.Feed.Steps) > 0 {
		// The ladder stands in the place of the way.
		lines = without(lines, oneLine(t.Feed.String()))
	}
	for _, line := range lines {
		p.indented(line)
	}
	if t.Verdict != meter.Nowhere {
		p.rungs(s, t)
	}
}

func without(lines []string, one string) []string {
	var rest []string
	for _, line := range lines {
		if line != one {
			rest = append(rest, line)
		}
	}
	return rest
}

// rungs lists the terminals of a way with their volts, and between them what is passed.
func (p *tracePrinter) rungs(s *meter.Sheet, t meter.Trace) {
	nodes := []wiring.NodeID{t.Feed.Begin}
	for _, step := range t.Feed.Steps {
		nodes = append(nodes, step.To)
	}
	wide := 0
	for _, n := range nodes {
		wide = max(wide, columns(oneLine(p.Survey.Bench.Name(n))))
	}
	p.line("")
	for i, n := range nodes {
		if i > 0 {
			p.rung(t, t.Feed.Steps[i-1])
		}
		r := s.ReadAt(n)
		p.line("  " + pad(oneLine(p.Survey.Bench.Name(n)), wide) + "  " + pad("", max(0, 5-len(meter.Tenths(r.Volts)))) + r.String())
	}
}

// rung is what lies between two terminals: a wire with its colour, or a part.
func (p *tracePrinter) rung(t meter.Trace, step path.Step) {
	words := breaker{p.Survey.Bench}
	name := ""
	switch w := step.Edge.Wire; {
	case w != nil:
		name = oneLine(w.Name())
	case step.Edge.Sort == path.Link:
		name = "inside " + oneLine(step.Edge.Part().Designation)
	default:
		name = step.Edge.Element.Type() + " " + oneLine(words.elementName(step.Edge.Element))
	}
	if t.Break != nil && !t.Break.Supply && step.Edge.Element == t.Break.Element && step.From == t.Break.Before {
		name += "  < cut here"
	}
	p.line("    | " + name)
}
