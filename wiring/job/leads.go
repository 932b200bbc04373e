package job

import (
	"fmt"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
)

// adopt gives a number to the wire of a lead that a lower layer spoke of without one, and
// lands its other end.
func (r *reading) adopt(e *entry, ends [2]draftEnd) *draftWire {
	for _, s := range []side{from, to} {
		if !ends[s].isLead() {
			continue
		}
		w := r.leads[ends[s].terminal]
		if w == nil || w.wire.Number != "" {
			continue
		}
		far := ends[s.other()]
		if other := r.leads[far.terminal]; far.isLead() && other != nil && other != w && other.wire.Number == "" {
			other.gone = true
			delete(r.leads, far.terminal)
		}
		near := w.sideOf(ends[s].terminal)
		if far.state != unknown {
			r.land(e.layer, w, near.other(), far)
		}
		return w
	}
	return nil
}

// sideOf is the side on which a wire has a lead.
func (w *draftWire) sideOf(t *wiring.Terminal) side {
	if w.end[to].state == landed && w.end[to].terminal == t {
		return to
	}
	return from
}

// readLead changes the wire of a lead that is named by its terminal, or makes it.
func (r *reading) readLead(e *entry) {
	t := r.terminal(e.name, scope{layer: e.layer, at: e.key.Span, who: ""})
	if t == nil {
		return
	}
	e.name = t.Ref()
	if t.Form.Type != wiring.Lead {
		r.fault(e.key.Span, fmt.Sprintf("%s is no lead but %s: a wire that is cut takes a number", t.Ref(), article(string(t.Form.Type))))
		return
	}
	if e.ends[from] != "" && e.ends[to] != "" {
		r.fault(e.f["from"].Value.Span, fmt.Sprintf("%s is one end itself: give the other one only, as to", e.name))
		return
	}
	if w := r.leads[t]; w != nil {
		if r.saidTwice(e, w, t) {
			return
		}
		r.changeWire(e, w, int(w.sideOf(t)))
		return
	}
	r.newLead(e, t)
}

// saidTwice reports a lead that one layer lands twice: by the number of its wire, or by the
// lead at the other end, and by its own name.
func (r *reading) saidTwice(e *entry, w *draftWire, t *wiring.Terminal) bool {
	far := w.end[w.sideOf(t).other()]
	if e.ends[from] == "" && e.ends[to] == "" || far.layer != e.index {
		return false
	}
	f := r.fault(e.key.Span, fmt.Sprintf("%s is a wire of this layer already, %s: %s", e.name, w.name(), w.route()), "Put both together")
	f.Related = []diag.Place{{Span: far.at, Label: "landed here"}}
	return true
}

// newLead makes the wire of a lead that nobody has spoken of.
func (r *reading) newLead(e *entry, t *wiring.Terminal) {
	if e.f == nil || !r.roomForWire(e) {
		return
	}
	given := to
	if e.ends[from] != "" {
		given = from
	}
	if e.ends[given] == "" {
		if e.body.Get("from") == nil && e.body.Get("to") == nil {
			r.missingEnd(&entry{layer: e.layer, name: e.name, key: e.key, f: e.f, ends: [2]string{e.name, ""}}, to)
		}
		return
	}
	ends := [2]draftEnd{{state: landed, terminal: t, at: e.key.Span, layer: e.index}, r.entryEnd(e, given)}
	if ends[to].state == landed && ends[to].terminal == t {
		r.fault(ends[to].at, fmt.Sprintf("%s goes from %s to itself", e.name, t.Ref()))
		return
	}
	w := r.addWire(e, ends)
	r.mergeWire(e, w, to)
}
