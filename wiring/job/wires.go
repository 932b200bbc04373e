package job

import (
	"fmt"
	"strings"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/source"
)

// entry is one wire of a layer: a member of a range has its own ends.
type entry struct {
	*layer
	name string // number or lead, with the suffix
	key  *source.Node
	body *source.Node
	f    map[string]source.Entry
	ends [2]string // what `from` and `to` say; empty: nothing
}

// phrase is the wire as messages speak of it: "wire W71".
func (e *entry) phrase() string { return "wire " + e.name }

// readWires lays the wires of a layer and changes those of lower layers. Numbered wires
// come first: a lead without a number is the wire that has one, if there is one.
func (r *reading) readWires(l *layer) {
	n := l.get("wires")
	if n == nil {
		return
	}
	seen := map[string]diag.Span{}
	var leads []entry
	for _, e := range r.entries(n, "wires") {
		for _, one := range r.wireEntries(l, e) {
			if r.twice(seen, one.name, one.key.Span) {
				continue
			}
			if strings.Contains(one.name, ".") {
				leads = append(leads, one)
			} else if r.goodNumber(one) {
				r.readWire(&one)
			}
		}
	}
	for i := range leads {
		r.readLead(&leads[i])
	}
}

// wireEntries splits an entry into its wires, ranges in step.
func (r *reading) wireEntries(l *layer, e source.Entry) []entry {
	names := r.expand(e.Key)
	if len(names) == 0 {
		return nil
	}
	f := r.wireFields(l, e)
	var ends [2][]string
	for _, s := range []side{from, to} {
		n := f[s.String()].Value
		if n == nil {
			continue
		}
		if ends[s] = r.inStep(l, s.String(), n, e.Key, len(names)); ends[s] == nil {
			return nil
		}
	}
	entries := make([]entry, len(names))
	for i, name := range names {
		entries[i] = entry{layer: l, name: l.name(name), key: e.Key, body: e.Value, f: f}
		for s := range ends {
			if ends[s] != nil {
				entries[i].ends[s] = ends[s][i%len(ends[s])]
			}
		}
	}
	return entries
}

func (r *reading) wireFields(l *layer, e source.Entry) map[string]source.Entry {
	if e.Value.Kind == source.Null {
		return nil
	}
	if e.Value.Kind != source.Map {
		r.fault(e.Value.Span, fmt.Sprintf("a map of keys belongs here, in wire %s", l.name(e.Key.Text)), "Write {from: …, to: …}")
		return nil
	}
	return r.fields(e.Value, wireKeys, "in wire "+l.name(e.Key.Text))
}

// inStep writes out the range of an end, which has as many members as there are wires, or
// is one terminal for all of them.
func (r *reading) inStep(l *layer, name string, n, key *source.Node, count int) []string {
	if l.Kind == wiring.ListLayer && source.IsRange(n.Text) {
		r.listFault(l, n, fmt.Sprintf("%s is a range, and a wire list has one row a wire", n.Text))
		return nil
	}
	members := r.expandAs(n, name)
	if len(members) > 1 && len(members) != count {
		r.fault(n.Span, fmt.Sprintf("%s is %s, %s is %s", key.Text, plural(count, "wire"), n.Text, plural(len(members), "terminal")))
		return nil
	}
	return members
}

// readWire lays a wire, or changes the one of that number.
func (r *reading) readWire(e *entry) {
	w := r.findWire(e.name)
	switch {
	case r.isPart(e), r.isGone(e):
	case w == nil:
		r.newWire(e)
	case e.ends[from] != "" && e.ends[to] != "":
		r.numberTaken(e, w)
	default:
		r.changeWire(e, w, -1)
	}
}

// newWire lays a wire that no lower layer has.
func (r *reading) newWire(e *entry) {
	if e.f == nil {
		return
	}
	for _, s := range []side{from, to} {
		if e.ends[s] == "" {
			if e.body.Get(s.String()) == nil {
				r.missingEnd(e, s)
			}
			return
		}
	}
	if !r.roomForWire(e) {
		return
	}
	ends := [2]draftEnd{r.entryEnd(e, from), r.entryEnd(e, to)}
	if !r.goodEnds(e, ends) {
		return
	}
	w := r.adopt(e, ends)
	if w == nil {
		w = r.addWire(e, ends)
	}
	w.wire.Number, w.wire.At = e.name, e.key.Span
	r.wires[wiring.Fold(e.name)] = w
	r.mergeWire(e, w, to)
}

func (r *reading) missingEnd(e *entry, s side) {
	have := e.ends[s.other()]
	if have == "" {
		r.lost(e.key.Span, fmt.Sprintf("%s has no from and no to, and no lower layer has a wire %s", e.name, e.name),
			fmt.Sprintf("Say where it lands: %s: {from: …, to: …}", e.name))
		return
	}
	r.lost(e.key.Span, fmt.Sprintf("%s has no %s: say where it lands, or %s: capped", e.name, s, s))
}

func (r *reading) roomForWire(e *entry) bool {
	if len(r.laid) < MostWires {
		return true
	}
	r.once("wires", e.key.Span, fmt.Sprintf("more than %d wires", MostWires))
	return false
}

// entryEnd reads the end that an entry gives.
func (r *reading) entryEnd(e *entry, s side) draftEnd {
	n := e.f[s.String()].Value
	return r.end(e.ends[s], scope{layer: e.layer, who: e.prefix(n), at: n.Span})
}

// prefix is what messages about a value of the entry begin with.
func (e *entry) prefix(n *source.Node) string {
	if c, ok := e.column[n]; ok {
		return "column " + c + ": "
	}
	return e.phrase() + ": "
}

// goodEnds judges both ends of a new wire together.
func (r *reading) goodEnds(e *entry, ends [2]draftEnd) bool {
	at := e.f["to"].Value.Span
	switch {
	case ends[from].state == landed && ends[to].state == landed && ends[from].terminal == ends[to].terminal:
		r.fault(at, fmt.Sprintf("%s goes from %s to itself", e.name, ends[from].terminal.Ref()))
	case ends[from].state == capped && ends[to].state == capped:
		r.fault(at, fmt.Sprintf("%s is capped at both ends", e.name))
	default:
		return true
	}
	return false
}

// addWire makes a wire between two ends.
func (r *reading) addWire(e *entry, ends [2]draftEnd) *draftWire {
	w := &draftWire{
		wire:   &wiring.Wire{Origin: e.Layer, At: e.key.Span, Where: map[string]diag.Span{}},
		end:    ends,
		origin: e.layer,
	}
	r.laid = append(r.laid, w)
	for s, end := range ends {
		r.lead(w, end)
		w.wire.Where[side(s).String()] = end.at
		if end.point == interlockPoint {
			w.wire.Interlock = true
		}
	}
	w.isLaid = ends[from].state != absent && ends[to].state != absent
	return w
}

// changeWire merges an entry into a wire of a lower layer. lead is the side of the lead by
// which the entry names it, -1 if it is named by its number.
func (r *reading) changeWire(e *entry, w *draftWire, lead int) {
	if e.f == nil {
		return
	}
	extends := to
	for _, s := range []side{from, to} {
		if e.ends[s] == "" {
			continue
		}
		end := r.entryEnd(e, s)
		lands := s
		if lead >= 0 {
			lands = side(lead).other()
		}
		extends = lands
		if end.state == unknown || !r.canLand(e, w, lands, end) {
			continue
		}
		r.land(e.layer, w, lands, end)
		w.isLaid = w.isLaid || end.state != absent && w.end[lands.other()].state != absent
	}
	if lead >= 0 && e.ends[from] == "" && e.ends[to] == "" {
		extends = side(lead).other()
	}
	r.mergeWire(e, w, extends)
}

// canLand judges a move of one end together with the other end.
func (r *reading) canLand(e *entry, w *draftWire, s side, end draftEnd) bool {
	if far := w.end[s.other()]; end.state == landed && far.state == landed && far.terminal == end.terminal {
		r.fault(end.at, fmt.Sprintf("%s goes from %s to itself", e.name, end.terminal.Ref()))
		return false
	}
	return true
}

// plural is "1 wire", "5 wires".
func plural(n int, word string) string {
	if n == 1 {
		return "1 " + word
	}
	return fmt.Sprintf("%d %ss", n, word)
}

// listFault reports a cell of a wire list by its column.
func (r *reading) listFault(l *layer, n *source.Node, message string) {
	r.fault(n.Span, "column "+l.column[n]+": "+message)
}
