package job

import (
	"github.com/lugwright/lugwright/wiring"
)

// lugs says what is on each end of a wire: what was stated, else what follows.
func (r *reading) lugs(w *draftWire) {
	ends := w.wire.Ends()
	for _, s := range []side{from, to} {
		e := ends[s]
		if w.lug[s].set {
			e.Lug, e.Stated = w.lug[s].value, true
			continue
		}
		e.Lug = lugFor(w, s, e.Terminal)
	}
}

// lugFor is the lug that follows from the terminal. A lead that reaches by itself brings
// its own; at the device a lead has none, nor has a cord at its ports.
func lugFor(w *draftWire, s side, t *wiring.Terminal) string {
	if t == nil || t.Form.Type == wiring.Lead || t.Form.Type == wiring.Port {
		return ""
	}
	if outer := w.outermost(s); outer != nil && outer.Lug != "" {
		return outer.Lug
	}
	return LugOf(t.Form)
}

// outermost is the lead of the other end, if it is what arrives at this one.
func (w *draftWire) outermost(s side) *wiring.LeadWire {
	far := w.end[s.other()]
	if len(w.wire.Pieces) != 1 || !far.isLead() {
		return nil
	}
	return far.terminal.Lead
}

// LugOf is what is put on a wire for a terminal of a form: a ring for studs and screws, a
// receptacle for a spade, a ferrule for a clamp, a crimped contact for a pin; nothing where
// the terminal is a joint (common practice, no published source).
func LugOf(f wiring.Form) string {
	sized := func(word string) string {
		if f.Size == "" {
			return word
		}
		return word + " " + f.Size
	}
	switch f.Type {
	case wiring.Stud, wiring.Screw:
		return sized("ring")
	case wiring.Spade:
		return sized("spade")
	case wiring.Clamp:
		return "ferrule"
	case wiring.Pin:
		return "pin"
	}
	return ""
}
