package report

import (
	"fmt"
	"io"
	"strings"

	"github.com/lugwright/lugwright/wiring/handbook"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/sizing"
)

// Choice is a conductor and a fuse for a run, ready to be set.
type Choice struct {
	Version string // of the program
	sizing.Choice
}

// ChoiceText writes a choice for a person: what to take, what asked for it, and which rows
// of which tables say so. The error is that of w.
func ChoiceText(w io.Writer, c Choice, o TextOptions) error {
	if o.Width <= 0 {
		o.Width = readingsWidth
	}
	p := &readingsPrinter{printer: newPrinter(o, nil)}
	p.line(p.bold(fmt.Sprintf("%v behind a %s fuse of %v", c.Size, c.Style, c.Fuse)))
	p.hanging("", c.run())
	p.line("")
	for _, n := range c.Needs {
		p.need(n)
	}
	p.line("")
	p.filled("", c.sums())
	for _, f := range c.Faults {
		p.hanging("", "Does not do: "+oneLine(f)+".")
	}
	_, err := w.Write(p.out.Bytes())
	return err
}

// need sets one requirement: its name, the size that it asks for, and why.
func (p *readingsPrinter) need(n sizing.Need) {
	size, mark := "any", ""
	if n.Size.Known() {
		size = n.Size.String()
	}
	if n.Decides {
		mark = " This decides."
	}
	head := "  " + pad(n.What, needColumn) + pad(size, sizeColumn)
	for i, line := range wrap(n.Text+"."+mark+" ("+n.Source+")", p.width-columns(head)) {
		if i > 0 {
			head = strings.Repeat(" ", columns(head))
		}
		p.line(head + line)
	}
}

// Columns of the list of needs, in characters.
const (
	needColumn = 10
	sizeColumn = 9
)

// run tells what was asked, in one sentence.
func (c Choice) run() string {
	r := c.Run
	text := fmt.Sprintf("For %v at %v", r.Amps, r.Volts)
	if r.Loop > 0 {
		text += fmt.Sprintf(", %s there and back", r.Loop.In(quantity.Inch))
	}
	text += ", ambient " + c.Run.Ambient.String()
	if r.Bundle > 1 {
		text += fmt.Sprintf(", %d in the bundle", r.Bundle)
	}
	return text + "."
}

// sums tells what the choice comes to.
func (c Choice) sums() string {
	text := fmt.Sprintf("It may carry %v, behind a fuse of %v at most.", c.Carries.Amps, c.Most)
	if c.Loss > 0 {
		text += fmt.Sprintf(" It loses %.2g V, %.2g %% of %v.", float64(c.Loss), 100*float64(c.Share), c.Run.Volts)
	}
	if _, fuse, ok := handbook.Default().FAAProtector(c.Size); ok {
		text += fmt.Sprintf(" In a hot bundle AC 43.13-1B Table 11-3 gives it a fuse of %v.", fuse)
	}
	return text
}

// Cord is the extension cord of a charger.
type Cord struct {
	Version string
	Amps    quantity.Ampere // AC input
	Length  quantity.Metre
	Size    quantity.Size
}

// CordText writes a cord for a person. The error is that of w.
func CordText(w io.Writer, c Cord) error {
	_, err := fmt.Fprintf(w, "%v: the thinnest extension cord for a charger of %v AC on %s\n"+
		"(the table that UL 1236 chargers print in their manuals; lengths between columns take the longer one)\n",
		c.Size, c.Amps, c.Length.In(quantity.Inch))
	return err
}
