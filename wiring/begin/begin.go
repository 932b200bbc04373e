// Package begin writes the first text of a job: platform, kit, accessories and lengths, with
// comments that say what to fill in. The job can be checked and drawn as it stands; what is
// not known yet is left out, and becomes a box to measure.
package begin

import (
	"context"
	"errors"
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/accessory"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/job"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// Request is what a job begins with.
type Request struct {
	Number, Title      string
	Cart, Customer, By string
	Date               string // of the first issue, ISO 8601; empty: no revision yet
	Platform, Kit      string // names of layers
	Insulation         quantity.Amount
	Lengths            []Length
	Accessories        []accessory.Request
}

// Length is how long one wire is.
type Length struct {
	Wire   string
	Length quantity.Amount
}

// Begun is a job that was begun.
type Begun struct {
	Text    []byte
	Harness *wiring.Harness
	Taps    []string // wires that hung on a part of the old string and are on a fused channel now
}

// Error is what is wrong with a request, all faults at once.
type Error struct{ Faults []string }

// Error returns one fault a line.
func (e *Error) Error() string { return strings.Join(e.Faults, "\n") }

// Job writes a job. load reads its text in the place of the file that it will be. The error
// is an *[Error], an *[accessory.Refusal] that names the accessory, or that of ctx.
func Job(ctx context.Context, load accessory.Load, r Request) (*Begun, error) {
	if faults := r.faults(); len(faults) > 0 {
		return nil, &Error{faults}
	}
	b := &Begun{Text: r.text()}
	if err := b.read(load); err != nil {
		return nil, err
	}
	if err := b.landTaps(load); err != nil {
		return nil, err
	}
	for _, a := range r.Accessories {
		plan, err := accessory.Add(ctx, b.Text, load, a)
		var refusal *accessory.Refusal
		if errors.As(err, &refusal) {
			return nil, &accessory.Refusal{Why: a.Kind + ": " + refusal.Why}
		} else if err != nil {
			return nil, err
		}
		b.Text = plan.Text
	}
	return b, b.read(load)
}

var (
	dateForm = regexp.MustCompile(`^\d{4}-\d{2}-\d{2}$`)
	lineForm = regexp.MustCompile(`^[^\r\n]*$`)
)

// faults lists what is wrong with a request.
func (r Request) faults() []string {
	var all []string
	for _, f := range []struct{ what, text string }{{"number", r.Number}, {"platform", r.Platform}, {"kit", r.Kit}} {
		if strings.TrimSpace(f.text) == "" {
			all = append(all, "no "+f.what+" is given")
		}
	}
	for _, text := range []string{r.Number, r.Title, r.Cart, r.Customer, r.By, r.Platform, r.Kit} {
		if !lineForm.MatchString(text) {
			all = append(all, fmt.Sprintf("%q is more than one line", text))
		}
	}
	if r.Date != "" && !dateForm.MatchString(r.Date) {
		all = append(all, r.Date+" is no date: write 2026-03-02")
	}
	return all
}

// text is the job without accessories.
func (r Request) text() []byte {
	var s strings.Builder
	line := func(key, value, comment string) {
		text := key + ": " + value
		if comment != "" {
			text = fmt.Sprintf("%-48s # %s", text, comment)
		}
		s.WriteString(text + "\n")
	}
	line("job", accessory.Quote(r.Number), "everything behind a # is for people")
	line("title", accessory.Quote(or(r.Title, "Conversion with "+r.Kit)), "stands on every sheet")
	for _, f := range []struct{ key, text string }{{"cart", r.Cart}, {"customer", r.Customer}, {"by", r.By}} {
		if f.text != "" {
			line(f.key, accessory.Quote(f.text), "")
		}
	}
	if r.Date != "" {
		s.WriteString("revisions:\n  A: {date: " + r.Date + ", by: " + accessory.Quote(or(r.By, "unknown")) + ", note: first issue}\n")
	}
	line("use", "["+accessory.Quote(r.Platform)+", "+accessory.Quote(r.Kit)+"]", "the cart before the work, and what goes in")
	if r.Insulation.Known() {
		line("assume", "{insulation: "+r.Insulation.String()+"}", "as printed on your wire")
	}
	if len(r.Lengths) > 0 {
		s.WriteString("\nwires:\n")
		for _, l := range r.Lengths {
			s.WriteString("  " + l.Wire + ": {length: " + accessory.Quote(l.Length.String()) + "}\n")
		}
	}
	return []byte(s.String())
}

func or(text, instead string) string {
	if text != "" {
		return text
	}
	return instead
}

// read reads the text as it stands, and gathers what is wrong with it.
func (b *Begun) read(load accessory.Load) error {
	h, findings, err := load(b.Text)
	if err != nil {
		return err
	}
	if h == nil {
		e := &Error{}
		for _, f := range findings {
			if f.Level == diag.Error {
				e.Faults = append(e.Faults, strings.TrimSpace(f.Message+" "+f.Advice))
			}
		}
		return e
	}
	b.Harness = h
	return nil
}

// landTaps puts wires that hung on a part of the old string of batteries on free fused
// channels: what they fed was 12 V, and is again. Their fuses are computed.
func (b *Begun) landTaps(load accessory.Load) error {
	for _, w := range b.Harness.Wires {
		for i, e := range w.Ends() {
			channel, ok := b.freeChannel()
			if !ok || !b.onBattery(e.Loose) {
				continue
			}
			side := [2]string{"from", "to"}[i]
			if err := b.land(load, w.Name(), side, e.Loose, channel); err != nil {
				return err
			}
			b.Taps = append(b.Taps, w.Name())
		}
	}
	return nil
}

// onBattery reports whether a terminal was on a battery that has gone.
func (b *Begun) onBattery(ref string) bool {
	name, _, _ := strings.Cut(ref, ".")
	for _, gone := range b.Harness.Before {
		if gone.Part.Designation != name {
			continue
		}
		for _, e := range gone.Part.Elements {
			if _, ok := e.(*wiring.Source); ok {
				return true
			}
		}
	}
	return false
}

func (b *Begun) land(load accessory.Load, wire, side, was string, channel *wiring.Fuse) error {
	block := channel.Part.Designation
	line := fmt.Sprintf("%s: {%s: %s.%d}   # was on %s, a tap of the old string", wire, side, block, channel.Channel, was)
	text, err := job.Insert(b.Text, job.Insertion{Section: "wires", Lines: []string{line}})
	if err != nil {
		return err
	}
	rating := "auto"
	for range 2 { // first to have it computed, then to write it down
		draft, err := job.PutFuse(text, block, channel.Channel, rating)
		if err != nil {
			return err
		}
		was := b.Text
		b.Text = draft
		if err := b.read(load); err != nil {
			b.Text = was
			return err
		}
		if f := channelOf(b.Harness.Part(block), channel.Channel); f != nil && f.Rating > 0 {
			rating = f.Rating.String()
		}
	}
	return nil
}

func channelOf(p *wiring.Part, channel int) *wiring.Fuse {
	for _, e := range p.Elements {
		if f, ok := e.(*wiring.Fuse); ok && f.Channel == channel {
			return f
		}
	}
	return nil
}

// freeChannel is the first fused channel on which nothing lands.
func (b *Begun) freeChannel() (*wiring.Fuse, bool) {
	for _, p := range b.Harness.Parts {
		for _, e := range p.Elements {
			f, ok := e.(*wiring.Fuse)
			if !ok || f.Channel == 0 {
				continue
			}
			if t := p.Terminal(strconv.Itoa(f.Channel)); t != nil && len(t.Wires) == 0 {
				return f, true
			}
		}
	}
	return nil, false
}
