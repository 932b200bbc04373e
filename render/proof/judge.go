package proof

import (
	"fmt"
	"math"

	"github.com/lugwright/lugwright/render/ink"
)

// Fault is something on the paper that must not be.
type Fault struct {
	Kind string // "through-symbol", "text-on-wire"
	At   ink.Point
	Text string
}

// String is the fault as a line of a report.
func (f Fault) String() string {
	return fmt.Sprintf("%s at %.1f, %.1f: %s", f.Kind, f.At.X, f.At.Y, f.Text)
}

// The limits of lettering, in millimetres (ISO 3098; the floor is our own).
const (
	Lettering = 2.5
	Floor     = 2.2
)

// Report is what a drawing comes to.
type Report struct {
	Faults []Fault // hard: none is allowed
	Soft   Soft
}

// Soft is what is allowed in measure.
type Soft struct {
	Wires       int
	Crossings   int
	Bends       int
	MostBends   int     // of one wire
	Leaders     int     //
	Turned      int     // labels that read upwards
	NearForeign int     // labels that stand nearer to a foreign wire than to their own
	Fill        float64 // share of the sheet that is in use
	Smallest    float64 // height of the smallest capitals, mm
}

// The soft limits: how much of each a sheet may have.
const (
	MostCrossings   = 0.15 // a wire
	MostBends       = 1.0  // a wire
	MostBendsOfOne  = 8
	MostLeaders     = 0.12 // a wire
	MostNearForeign = 0.1  // a wire
	MostTurned      = 2
	LeastFill       = 0.5
	MostFill        = 0.9
)

// Judge looks for everything that could be misread. Wires are the names that must be there
// with a line and a label.
func (d *Drawing) Judge(wires []string) Report {
	var r Report
	_, r.Faults = d.Nets()
	add := func(kind string, at ink.Point, format string, args ...any) {
		r.Faults = append(r.Faults, Fault{kind, at, fmt.Sprintf(format, args...)})
	}
	d.judgePresence(wires, add)
	d.judgeLines(add)
	d.judgeText(add)
	r.Soft = d.measure()
	return r
}

type adder func(kind string, at ink.Point, format string, args ...any)

// judgePresence finds wires without a line or a label.
func (d *Drawing) judgePresence(wires []string, add adder) {
	line, words := map[string]bool{}, map[string]bool{}
	for i := range d.Wires {
		line[d.Wires[i].Name] = len(d.Wires[i].Runs) > 0
	}
	for _, t := range d.Texts {
		words[t.Owner] = true
	}
	for _, name := range wires {
		if !line[name] {
			add("unrouted", ink.Point{}, "%s has no line", name)
		}
		if !words[name] {
			add("unlabelled", ink.Point{}, "%s has no label", name)
		}
	}
}

// judgeLines finds lines that slant, leave the page, run along each other or through a
// symbol.
func (d *Drawing) judgeLines(add adder) {
	lines := append(append([]Wire{}, d.Wires...), d.Metal...)
	for i := range lines {
		w := &lines[i]
		if w.Slant {
			add("slant", w.Ends0(), "%s is neither level nor upright", w.Name)
		}
		for _, r := range w.Runs {
			if !d.Page.Holds(ink.Rect{Min: r.A, Max: r.B}) {
				add("off-page", r.A, "%s leaves the page", w.Name)
			}
			for _, k := range d.Inks {
				if !(k.Sleeve && k.Part == w.Name) && through(r, k.Box) {
					add("through-symbol", r.A, "%s runs through %s", w.Name, k.Part)
				}
			}
		}
		for j := range i {
			if p, ok := overlap(w, &lines[j]); ok {
				add("overlap", p, "%s and %s share a stretch", w.Name, lines[j].Name)
			}
		}
		for j := range d.Bars {
			if p, ok := overlap(w, &d.Bars[j]); ok {
				add("overlap", p, "%s runs along %s", w.Name, d.Bars[j].Name)
			}
		}
	}
}

// Ends0 is some point of the wire, for messages.
func (w *Wire) Ends0() ink.Point {
	if len(w.Ends) > 0 {
		return w.Ends[0]
	}
	return ink.Point{}
}

// through reports whether a run touches the inside of a box.
func through(r Run, b ink.Rect) bool {
	const in = 0.1
	return r.A.X < b.Max.X-in && r.B.X > b.Min.X+in && r.A.Y < b.Max.Y-in && r.B.Y > b.Min.Y+in ||
		flat(r, b)
}

// flat is the same for a mark without breadth, which a run crosses at a right angle.
func flat(r Run, b ink.Rect) bool {
	const in = 0.1
	switch {
	case r.Level() && b.Width() < 2*in && b.Height() > 2*in:
		return r.A.X < b.Min.X-in && r.B.X > b.Max.X+in && r.A.Y > b.Min.Y+in && r.A.Y < b.Max.Y-in
	case !r.Level() && b.Height() < 2*in && b.Width() > 2*in:
		return r.A.Y < b.Min.Y-in && r.B.Y > b.Max.Y+in && r.A.X > b.Min.X+in && r.A.X < b.Max.X-in
	}
	return false
}

// overlap finds a stretch that two wires share.
func overlap(a, b *Wire) (ink.Point, bool) {
	for _, r := range a.Runs {
		for _, o := range b.Runs {
			if r.Level() != o.Level() {
				continue
			}
			if r.Level() && math.Abs(r.A.Y-o.A.Y) < 0.2 && min(r.B.X, o.B.X)-max(r.A.X, o.A.X) > 0.1 {
				return ink.At(max(r.A.X, o.A.X), r.A.Y), true
			}
			if !r.Level() && math.Abs(r.A.X-o.A.X) < 0.2 && min(r.B.Y, o.B.Y)-max(r.A.Y, o.A.Y) > 0.1 {
				return ink.At(r.A.X, max(r.A.Y, o.A.Y)), true
			}
		}
	}
	return ink.Point{}, false
}

// judgeText finds words on words, on lines, on symbols and on enclosures, off the page, and
// too small.
func (d *Drawing) judgeText(add adder) {
	for i, t := range d.Texts {
		at := t.Box.Min
		if t.Capital < Floor-0.01 {
			add("small", at, "%q is %.2f mm high", t.String, t.Capital)
		}
		if !d.Page.Holds(t.Box) {
			add("off-page", at, "%q leaves the page", t.String)
		}
		for j := range i {
			if t.Box.Meets(d.Texts[j].Box) {
				add("text-on-text", at, "%q on %q", t.String, d.Texts[j].String)
			}
		}
		d.judgeTextOnLines(&t, add)
		for _, k := range d.Inks {
			if (k.Sleeve || k.Part != t.Owner) && t.Box.Meets(k.Box) {
				add("text-on-symbol", at, "%q on %s", t.String, k.Part)
			}
		}
		for _, k := range d.Boxes {
			if t.Box.Meets(k.Box) && !k.Box.Holds(t.Box) {
				add("text-on-enclosure", at, "%q on the frame of %s", t.String, k.Part)
			}
		}
	}
}

func (d *Drawing) judgeTextOnLines(t *Text, add adder) {
	for _, set := range [3][]Wire{d.Wires, d.Metal, d.Bars} {
		for i := range set {
			w := &set[i]
			for _, r := range w.Runs {
				line := ink.Rect{Min: r.A, Max: r.B}.Grow(w.Width / 2)
				if t.Box.Meets(line) {
					add("text-on-line", t.Box.Min, "%q on %s", t.String, w.Name)
				}
			}
		}
	}
	for j := range d.Texts {
		o := &d.Texts[j]
		if len(o.Leader) == 2 && o.Owner != t.Owner && cuts(o.Leader[0], o.Leader[1], t.Box) {
			add("leader-on-text", t.Box.Min, "the leader of %q on %q", o.String, t.String)
		}
	}
}
