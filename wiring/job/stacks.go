package job

import (
	"fmt"
	"sort"
	"strings"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/source"
)

// draftStack is an order of lugs as a layer states it.
type draftStack struct {
	terminal *wiring.Terminal
	layer    *layer
	key      *source.Node
	items    []*source.Node
}

// stacks takes the stacks of all layers, each whole, and compares them with what lands on
// their studs.
func (r *reading) stacks() {
	stated := map[*wiring.Terminal]draftStack{}
	for _, l := range r.layers {
		r.eachNamed(l, "stacks", func(l *layer, e source.Entry) {
			t := r.terminalOf(e.Key, l, "stack "+e.Key.Text+": ")
			if t != nil && r.built[t.Part].gone == still {
				stated[t] = draftStack{t, l, e.Key, r.items(e.Value, "a stack")}
			}
		})
	}
	for _, p := range r.h.Parts {
		for _, t := range p.Terminals {
			if s, ok := stated[t]; ok {
				r.stack(s)
			}
		}
	}
}

// terminalOf reads a reference to a terminal, or to a point that stands for one. Nil, in
// silence, for what a higher layer has removed.
func (r *reading) terminalOf(n *source.Node, l *layer, who string) *wiring.Terminal {
	text := r.text(n, "this reference")
	if text == "" {
		return nil
	}
	e := r.end(text, scope{layer: l, who: who, at: n.Span})
	if e.state == capped {
		r.fault(n.Span, who+"capped is no terminal")
	}
	return e.terminal
}

// stack checks one stack. Where a higher layer has changed what lands on the stud, the
// statement is out of date and the order is computed.
func (r *reading) stack(s draftStack) {
	listed, ok := r.stackWires(s)
	if !ok {
		return
	}
	if missing := unlisted(s.terminal.Wires, listed); missing != nil {
		r.incomplete(s, missing)
		return
	}
	r.h.Stacks = append(r.h.Stacks, wiring.Stack{Terminal: s.terminal, Wires: listed, At: s.key.Span})
}

// stackWires finds the wires that a stack lists; false if one does not land there.
func (r *reading) stackWires(s draftStack) ([]*wiring.Wire, bool) {
	var listed []*wiring.Wire
	good := true
	seen := map[string]diag.Span{}
	for _, item := range s.items {
		for _, name := range r.expand(item) {
			name = s.layer.name(name)
			w := r.wireCalled(name)
			switch {
			case r.twice(seen, name, item.Span):
				good = false
			case w != nil && (w.From.Terminal == s.terminal || w.To.Terminal == s.terminal):
				listed = append(listed, w)
			default:
				r.notThere(s, name, item.Span, w)
				good = false
			}
		}
	}
	return listed, good
}

// wireCalled finds a wire of the finished harness by number or lead.
func (r *reading) wireCalled(name string) *wiring.Wire {
	if w := r.h.Wire(name); w != nil {
		return w
	}
	if t := r.h.Terminal(name); t != nil && strings.Contains(name, ".") && t.Form.Type == wiring.Lead && len(t.Wires) > 0 {
		return t.Wires[0]
	}
	return nil
}

func (r *reading) notThere(s draftStack, name string, at diag.Span, w *wiring.Wire) {
	if r.flooded() {
		r.unlisted++
		return
	}
	if r.outOfDate(s, name) {
		return
	}
	ref := s.terminal.Ref()
	if w == nil {
		r.lost(at, fmt.Sprintf("stack %s: no wire %s%s", ref, name, r.alike(name, func() []string { return wireNames(s.terminal.Wires) })))
		return
	}
	r.fault(at, fmt.Sprintf("stack %s: %s does not land there: %s to %s", ref, w.Name(), w.From, w.To))
}

// outOfDate notes a stack that fitted until a higher layer changed a wire.
func (r *reading) outOfDate(s draftStack, name string) bool {
	for _, d := range r.dropped {
		if d.by.index > s.layer.index && wiring.Fold(d.wire.wire.Number) == wiring.Fold(name) {
			r.staleStack(s, fmt.Sprintf("%s was removed by %s", name, d.by))
			return true
		}
	}
	if w := r.wireCalled(name); w != nil {
		for _, m := range w.Moved {
			if r.layerOf(m.By).index > s.layer.index {
				r.staleStack(s, fmt.Sprintf("%s was moved by %s", w.Name(), r.layerOf(m.By)))
				return true
			}
		}
	}
	return false
}

func (r *reading) staleStack(s draftStack, why string) {
	r.note(s.key.Span, fmt.Sprintf("the stack of %s no longer fits: %s", s.terminal.Ref(), why),
		"Its order is computed; state it anew where it is to be as built")
}

// incomplete reports wires of a stud that its stack leaves out.
func (r *reading) incomplete(s draftStack, missing []*wiring.Wire) {
	later := map[string]bool{}
	for _, w := range missing {
		for _, l := range append([]*wiring.Layer{w.Origin}, w.Changed...) {
			if by := r.layerOf(l); by.index > s.layer.index {
				later[fmt.Sprintf("%s lands there since %s", w.Name(), by)] = true
			}
		}
	}
	if len(later) > 0 {
		reasons := make([]string, 0, len(later))
		for reason := range later {
			reasons = append(reasons, reason)
		}
		sort.Slice(reasons, func(i, j int) bool { return wiring.Less(reasons[i], reasons[j]) })
		r.staleStack(s, reasons[0])
		return
	}
	verb := "lands there too and is"
	if len(missing) > 1 {
		verb = "land there too and are"
	}
	r.lost(s.key.Span, fmt.Sprintf("stack %s: %s %s not in the list", s.terminal.Ref(), strings.Join(wireNames(missing), ", "), verb))
}

func wireNames(ws []*wiring.Wire) []string {
	names := make([]string, len(ws))
	for i, w := range ws {
		names[i] = w.Name()
	}
	return names
}

// unlisted are the wires that a list leaves out.
func unlisted(all, listed []*wiring.Wire) []*wiring.Wire {
	in := make(map[*wiring.Wire]bool, len(listed))
	for _, w := range listed {
		in[w] = true
	}
	var missing []*wiring.Wire
	for _, w := range all {
		if !in[w] {
			missing = append(missing, w)
		}
	}
	return missing
}

// layerOf finds the layer that a Layer of the harness came from.
func (r *reading) layerOf(l *wiring.Layer) *layer {
	for _, candidate := range r.layers {
		if candidate.Layer == l {
			return candidate
		}
	}
	return nil
}
