package rules

import (
	"fmt"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/rule"
)

func fuseCanOpen() *rule.Rule {
	return &rule.Rule{
		ID:    "fuse-can-open",
		Title: "a source that limits its current can still open each fuse behind it at once",
		Level: diag.Note,
		Why: "A reducer that gives 30 A into a short cannot open a fuse of 25 A, takes minutes for 20 A and seconds for 15 A. Meanwhile " +
			"its voltage is down: a short in one lamp darkens everything that hangs on it, and no blown fuse tells which circuit it was.",
		Do:     "Make the largest channel half the reducer's limit or less, and divide what needs more; or take a reducer of twice the largest fuse.",
		Source: "Time gates of blade fuses, ISO 8820-3, from memory: 135 % opens within 600 s, 200 % within 5 s. That half is enough: common practice, no published source.",
		Wrong: `parts:
  A1: {fuses: {1: 20 A}}     # behind a reducer of 25 A, beside the USB outlet
  X5: {kind: usb-outlet, place: dash}
wires:
  W77: {from: A1.3, to: X5.+, colour: RD, size: 16 AWG, length: 2 ft}
  W78: {from: X5.-, to: A1.n, colour: BK, size: 16 AWG, length: 2 ft}
`,
		Right: `parts:
  A1: {fuses: {1: 10 A}}
  X5: {kind: usb-outlet, place: dash}
wires:
  W77: {from: A1.3, to: X5.+, colour: RD, size: 16 AWG, length: 2 ft}
  W78: {from: X5.-, to: A1.n, colour: BK, size: 16 AWG, length: 2 ft}
`,
		Run: runFuseCanOpen,
	}
}

// atOnce is how fast a fuse should clear a short; opensTwice is the multiple of its rating
// that is taken for enough where no gate is known. Common practice, no published source.
const (
	atOnce     = quantity.Second(5)
	opensTwice = 2
)

func runFuseCanOpen(p *rule.Pass) {
	for _, f := range elementsOf[*wiring.Fuse](p.Harness) {
		if !f.Fitted || f.Rating == 0 {
			continue
		}
		limit, from := limitedTo(p, f)
		if len(from) > 0 && !clears(p, f, limit) {
			reportSlow(p, f, limit, from)
		}
	}
}

// limitedTo is what the sources at a fuse give together, and their names; none if a battery
// is among them, if nothing feeds it, or if it is all that hangs there or stands behind
// another fuse that opens no later.
func limitedTo(p *rule.Pass, f *wiring.Fuse) (limit quantity.Ampere, from []string) {
	for _, s := range p.Supplies() {
		reach := p.Graph.From(path.Through{Sorts: path.Metal | path.Diode}.Without(f).Until(p.Negative), s.Plus)
		if !reach.Has(f.A) && !reach.Has(f.B) {
			continue
		}
		if s.Battery() || !first(p, f, s) {
			return 0, nil
		}
		limit += s.Limit
		from = append(from, supplyName(s))
	}
	return limit, once(from)
}

// first reports whether a fuse is the first on its way from a source that would open, and
// not all that hangs on that source.
func first(p *rule.Pass, f *wiring.Fuse, s *path.Supply) bool {
	through := path.Through{Sorts: path.Metal | path.Diode}.Without(f).Until(p.Negative)
	others := p.Graph.From(through, s.Plus)
	_, shared := others.First(func(n wiring.NodeID) bool {
		for _, e := range p.Graph.At(n) {
			if e.Sort&(path.Load|path.Coil) != 0 && e.A == n {
				return true
			}
		}
		return false
	})
	larger := p.Graph.From(through.Only(func(e *path.Edge) bool {
		other, fuse := e.Element.(*wiring.Fuse)
		return !fuse || other.Rating == 0 || other.Rating > f.Rating
	}), s.Plus)
	return shared && (larger.Has(f.A) || larger.Has(f.B))
}

// supplyName is the part of a source, or where a part has several the source itself.
func supplyName(s *path.Supply) string {
	base := s.Element.Base()
	for _, el := range base.Part.Elements {
		if el != s.Element && el.Type() == s.Element.Type() {
			return base.Ref()
		}
	}
	return base.Part.Designation
}

func clears(p *rule.Pass, f *wiring.Fuse, limit quantity.Ampere) bool {
	multiple := float64(limit / f.Rating)
	if within, known := p.Handbook.FuseOpens(f.Style, multiple); known {
		return within <= atOnce
	}
	return multiple >= opensTwice
}

func reportSlow(p *rule.Pass, f *wiring.Fuse, limit quantity.Ampere, from []string) {
	multiple := float64(limit / f.Rating)
	how := "It may never open."
	if within, known := p.Handbook.FuseOpens(f.Style, multiple); known {
		how = fmt.Sprintf("It is sure to open within %.0f s.", float64(within))
	}
	at := f.Part.At
	for _, key := range []string{fmt.Sprintf("fuses.%d", f.Channel), "rating"} {
		if span, ok := f.Part.Where[key]; ok {
			at = span
			break
		}
	}
	p.Report(diag.Finding{
		Message:  fmt.Sprintf("a short behind %s (%v) darkens all that hangs on %s, which gives %v", openerName(f), f.Rating, list(from), limit),
		Detail:   fmt.Sprintf("That is %.2g times the rating. %s", multiple, how),
		Advice:   fmt.Sprintf("Fit %v or less there, or divide the circuit.", limit/opensTwice),
		At:       at,
		Related:  defined(f.Part.Designation, f.Part.At),
		Subjects: subjects([]string{f.Part.Designation, f.Ref()}, from),
	})
}
