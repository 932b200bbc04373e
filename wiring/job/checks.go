package job

import (
	"fmt"
	"sort"

	"github.com/lugwright/lugwright/wiring"
)

// checkAdded judges the wire that is joined to a lead.
func (r *reading) checkAdded(w *draftWire) {
	lead := w.end[from]
	if !lead.isLead() {
		lead = w.end[to]
	}
	t := lead.terminal
	if w.cut.vague() {
		r.fault(w.span(), fmt.Sprintf("%s adds wire to the lead %s and does not say its %s", w.name(), t.Ref(), missing(w.cut)),
			fmt.Sprintf("If the lead itself is other than the kind says: %s: {leads: {%s: {…}}}", t.Part.Designation, t.Name))
		return
	}
	l := t.Lead
	if l != nil && !w.cut.auto && w.cut.colour == l.Colour && w.cut.size == l.Size &&
		w.cut.length.Known() && w.cut.length.Value == l.Length.Value {
		r.warn(w.span(), fmt.Sprintf("%s adds a piece just like the lead itself (%s %s %s)", w.name(), l.Colour, l.Size, l.Length),
			"If nothing was added, leave colour, size and length out")
	}
}

// missing names what a joined piece does not say.
func missing(c conductor) string {
	switch {
	case !c.colour.Known() && !c.size.Known() && !c.auto:
		return "colour and size"
	case !c.colour.Known():
		return "colour"
	}
	return "size"
}

func (r *reading) checkExtensions(w *draftWire) {
	for _, x := range w.extend.value {
		if x.vague() {
			r.fault(x.at, fmt.Sprintf("%s is extended, and the %s of that piece is not said", w.name(), missing(x.conductor)),
				"Write extend: {colour: GN, size: 18 AWG, length: 14 in}")
		}
	}
}

// checkCapped reports a capped lead that is said to have wire added to it.
func (r *reading) checkCapped(w *draftWire) {
	for _, s := range []side{from, to} {
		far := w.end[s.other()]
		if w.end[s].isLead() && far.state == capped && w.hasCut && w.cutBy >= far.layer {
			r.fault(w.span(), fmt.Sprintf("%s is capped: colour, size and length belong to wire that is added", w.end[s].terminal.Ref()),
				"Leave them out, or say where it lands")
			w.hasCut = false
			return
		}
	}
}

// checkCord judges a wire that ends on a port.
func (r *reading) checkCord(w *draftWire) {
	a, b := w.end[from], w.end[to]
	if a.state != landed || b.state != landed {
		return
	}
	x, y := a.terminal, b.terminal
	isPort := func(t *wiring.Terminal) bool { return t.Form.Type == wiring.Port }
	switch {
	case isPort(x) && isPort(y):
		if px, py := poleNames(x), poleNames(y); px != py {
			r.fault(b.at, fmt.Sprintf("%s joins ports whose poles differ: %s has %s, %s has %s", w.name(), x.Ref(), px, y.Ref(), py))
		} else if len(w.extend.value) > 0 {
			r.fault(w.extend.value[0].at, fmt.Sprintf("%s is a ready-made cord, which is not extended", w.name()))
		}
	case isPort(x) || isPort(y):
		at, other := b.at, y
		if isPort(y) {
			other = x
		}
		r.fault(at, fmt.Sprintf("%s joins a port to %s: a port takes a cord from another port", w.name(), article(string(other.Form.Type))))
	}
}

// poleNames lists the poles of a port, sorted: "L N PE"; "no poles" for data alone.
func poleNames(t *wiring.Terminal) string {
	names := make([]string, 0, len(t.Poles))
	for _, p := range t.Poles {
		names = append(names, p.Name)
	}
	sort.Strings(names)
	text := ""
	for i, n := range names {
		if i > 0 {
			text += " "
		}
		text += n
	}
	if text == "" {
		return "no poles"
	}
	return text
}
