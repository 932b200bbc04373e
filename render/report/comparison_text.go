package report

import (
	"fmt"
	"io"

	"github.com/lugwright/lugwright/wiring/difference"
)

// ComparisonText writes what changed for a person: parts, wires, stacks; + for what is new,
// - for what is gone, ~ for what is otherwise. The error is that of w.
func ComparisonText(w io.Writer, c Comparison, o TextOptions) error {
	if o.Width <= 0 {
		o.Width = readingsWidth
	}
	p := &comparisonPrinter{newPrinter(o, nil), c}
	p.heading()
	for _, what := range []difference.What{difference.APart, difference.AWire, difference.AStack} {
		p.section(what)
	}
	p.revision()
	_, err := w.Write(p.out.Bytes())
	return err
}

// comparisonPrinter sets a comparison.
type comparisonPrinter struct {
	*printer
	Comparison
}

func (p *comparisonPrinter) heading() {
	h := p.New.Harness
	p.line(p.bold(oneLine(h.Identity.Number)) + "  " + oneLine(h.Identity.Title))
	for _, one := range []struct {
		word string
		cart Compared
	}{{"old", p.Old}, {"new", p.New}} {
		p.entry(one.word+"  ", one.cart.name())
	}
	if p.None() {
		p.line("")
		p.line("No differences.")
	}
}

func (c Compared) name() string {
	if c.AsFound {
		return "the cart as it came (" + oneLine(c.File) + ")"
	}
	return oneLine(c.File)
}

// section sets the changes of one sort of thing; things that changed in several ways get a
// line each, and their name once.
func (p *comparisonPrinter) section(what difference.What) {
	long, last := 0, ""
	for _, c := range p.Changes {
		if c.What == what {
			long = max(long, columns(oneLine(c.Name)))
		}
	}
	if long == 0 {
		return
	}
	p.line("")
	p.line(p.bold(map[difference.What]string{
		difference.APart: "Parts", difference.AWire: "Wires", difference.AStack: "Stacks, from the face of the terminal outwards",
	}[what]))
	for _, c := range p.Changes {
		if c.What != what {
			continue
		}
		name := oneLine(c.Name)
		if name == last {
			name = ""
		}
		last = oneLine(c.Name)
		p.entry(fmt.Sprintf("  %s %-*s  ", sign(c.Class), long, name), changeWords(c))
	}
}

// sign stands before a change, as comparisons of texts have it.
func sign(c difference.Class) string {
	switch c {
	case difference.Added:
		return "+"
	case difference.Removed:
		return "-"
	}
	return "~"
}

// changeWords is a change in words.
func changeWords(c difference.Change) string {
	words := string(c.Class)
	switch {
	case c.Class == difference.Added:
		return c.New
	case c.Class == difference.Removed:
		return c.Old
	case c.Class == difference.Stacked:
		return "was " + orNothing(c.Old) + ", is " + orNothing(c.New)
	case c.Class == difference.Covered:
		return words + ", was on " + c.Old
	case c.Class == difference.Extended && c.Old == "":
		return words + " by " + c.New
	case c.Key != "" && !plain[c.Class]:
		words += ", " + c.Key + ":"
	}
	return words + " from " + orNothing(c.Old) + " to " + orNothing(c.New)
}

// plain are the classes that say which fact is another.
var plain = map[difference.Class]bool{difference.Recoloured: true, difference.Resized: true, difference.Recut: true}

func orNothing(text string) string {
	if text == "" {
		return "nothing"
	}
	return text
}

// revision offers a line for the revision list.
func (p *comparisonPrinter) revision() {
	note := p.Note(noteWidth)
	if note == "" || p.Old.AsFound {
		return
	}
	p.line("")
	p.line(p.bold("For the revision list of the new job"))
	p.line(fmt.Sprintf("  %s: {date: , by: , note: %q}", orNothing(p.nextRevision()), note))
}
