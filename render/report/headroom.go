package report

import (
	"fmt"
	"io"
	"math"

	"github.com/lugwright/lugwright/wiring/figure"
	"github.com/lugwright/lugwright/wiring/headroom"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// Headroom is what is left on a cart, ready to be set.
type Headroom struct {
	Version string // of the program
	File    string // the job's
	*headroom.Room
}

// HeadroomText writes what is left for a person, in at most 80 columns unless the terminal
// is wider. The error is that of w.
func HeadroomText(w io.Writer, r Headroom, o TextOptions) error {
	if o.Width <= 0 {
		o.Width = readingsWidth
	}
	p := &readingsPrinter{printer: newPrinter(o, nil)}
	p.line(p.bold(oneLine(r.Harness.Identity.Number)) + "  " + oneLine(r.Harness.Identity.Title))
	if r.State != nil {
		p.filled("", "What is left with all of it on at once, in the state "+oneLine(r.State.Name)+".")
	}
	for _, x := range r.Reducers {
		p.reducer(x)
	}
	for _, b := range r.Blocks {
		p.channels(b)
	}
	for _, n := range r.Negatives {
		p.filled("", fmt.Sprintf("%s holds %d wires: %d free.", oneLine(n.Terminal.Ref()), n.Terminal.Holds, n.Free()))
	}
	for _, x := range r.Packs {
		p.pack(x)
	}
	p.times(r)
	for _, u := range r.Unknown {
		p.hanging("", "Not known: "+oneLine(u)+".")
	}
	_, err := w.Write(p.out.Bytes())
	return err
}

// left is an amount of current that is left, in words.
func left(amps quantity.Ampere, known bool) string {
	switch {
	case !known:
		return "its limit is not stated"
	case amps < 0:
		return fmt.Sprintf("%v too much", shortAmps(-amps))
	}
	return fmt.Sprintf("%v left", shortAmps(amps))
}

// shortAmps rounds to a tenth: nobody adds a lamp by hundredths.
func shortAmps(a quantity.Ampere) quantity.Ampere {
	return quantity.Ampere(math.Round(float64(a)*10) / 10)
}

func (p *readingsPrinter) reducer(r figure.ReducerRoom) {
	p.line("")
	last, known := r.Left()
	peak, _ := r.LeftAtPeak()
	p.line(p.bold(oneLine(r.Converter.Ref())) + fmt.Sprintf("  %v", r.Limit))
	p.filled("  ", fmt.Sprintf("For ever %v: %s. At worst %v: %s.", shortAmps(r.Continuous), left(last, known), shortAmps(r.Peak), left(peak, known)))
}

func (p *readingsPrinter) channels(b figure.BlockRoom) {
	p.line("")
	p.line(p.bold(oneLine(b.Part.Designation)) + "  " + oneLine(b.Part.Name()))
	p.line("  channel  fuse    carries  left")
	for _, k := range b.Channels {
		fuse := "none"
		if k.Fuse.Fitted {
			fuse = k.Fuse.Rating.String()
		}
		if k.Free() {
			p.line(fmt.Sprintf("  %7d  %-7s free", k.Number, fuse))
			continue
		}
		rest := "-"
		if amps, ok := k.Left(); ok {
			rest = shortAmps(amps).String()
		}
		p.line(fmt.Sprintf("  %7d  %-7s %-8s %s", k.Number, fuse, shortAmps(k.Amps), rest))
	}
	for _, f := range b.Feeds {
		amps, known := f.Left()
		p.filled("  ", fmt.Sprintf("%s carries %v: %s.", oneLine(f.Terminal.Ref()), shortAmps(f.Amps), left(amps, known)))
	}
}

func (p *readingsPrinter) pack(r figure.PackRoom) {
	p.line("")
	amps, known := r.Left()
	p.line(p.bold(oneLine(r.Source.Base().Part.Designation)) + fmt.Sprintf("  %v for ever", r.Continuous))
	p.filled("  ", fmt.Sprintf("Gives %v: %s.", shortAmps(r.Amps), left(amps, known)))
}

// times tells for how long the cart lasts and charges.
func (p *readingsPrinter) times(r Headroom) {
	p.line("")
	if l := r.Lights; l != nil {
		p.filled("", fmt.Sprintf("Standing with everything on: %.1f hours from %v to %v.", l.Hours(), l.From, l.To))
	}
	if l := r.Parked; l != nil {
		p.filled("", fmt.Sprintf("Parked with the key off: %.0f days from %v to %v.", l.Days(), l.From, l.To))
	}
	if c := r.Charge; c != nil {
		p.filled("", fmt.Sprintf("Charging from %v: %.1f hours, the taper of %.1f among them.", c.From, float64(c.Total())/3600, float64(c.Tapering)/3600))
	}
}
