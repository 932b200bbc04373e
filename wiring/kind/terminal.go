package kind

import (
	"fmt"
	"slices"
	"strings"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/colour"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/source"
)

// terminalSpec is one entry of `terminals`; its name may be a range.
type terminalSpec struct {
	name   string
	form   wiring.Form
	holds  *source.Node // a count, or the name of a rating
	rated  *source.Node // a current, or the name of a rating
	spoken string
	also   []string
	pin    string
	torque quantity.NewtonMetre
	lead   wiring.LeadWire
	poles  []string
	at     *source.Node
}

// terminalKeys are the keys of a terminal, in the order of the reference.
var terminalKeys = []struct{ name, doc string }{
	{"form", "`stud M8`, `screw M4`, `spade 6.3`, `clamp`, `pin`, `lead`, `port` or `joint`"},
	{"name", "what it is called when spoken"},
	{"also", "other names"},
	{"pin", "its connector pin, accepted in references"},
	{"holds", "how many wires it takes; default: stud 4, spade, screw and clamp 2, joint 8, else 1"},
	{"rated", "most current through it"},
	{"torque", "the maker's; left out: unknown"},
	{"colour", "of a lead"},
	{"size", "of a lead"},
	{"length", "of a lead"},
	{"lug", "at the end of a lead, such as ring M8"},
	{"poles", "conductors of a port; a port without poles carries data only"},
}

// formHolds is how many wires a form takes if nothing is said: common practice, no
// published source, but for the four lugs of a stud (FAA AC 43.13-1B 11-174).
var formHolds = map[wiring.FormType]int{
	wiring.Stud: 4, wiring.Screw: 2, wiring.Spade: 2, wiring.Clamp: 2,
	wiring.Pin: 1, wiring.Lead: 1, wiring.Port: 1, wiring.Joint: 8,
}

func (r *reader) readTerminals(n *source.Node) {
	if n == nil {
		return
	}
	for _, e := range n.Entries {
		r.setTerminal(r.readTerminal(e))
	}
}

func (r *reader) setTerminal(t terminalSpec) {
	for i := range r.d.terminals {
		if wiring.Fold(r.d.terminals[i].name) == wiring.Fold(t.name) {
			r.d.terminals[i] = t
			return
		}
	}
	r.d.terminals = append(r.d.terminals, t)
}

func (r *reader) readTerminal(e source.Entry) terminalSpec {
	t := terminalSpec{name: e.Key.Text, at: e.Key}
	for _, f := range e.Value.Entries {
		switch f.Key.Text {
		case "form":
			t.form = r.form(f.Value)
		case "name":
			t.spoken = r.text(f.Value, "name")
		case "also":
			for _, item := range f.Value.Items {
				t.also = append(t.also, r.text(item, "also"))
			}
		case "pin":
			t.pin = r.text(f.Value, "pin")
		case "holds":
			t.holds = f.Value
		case "rated":
			t.rated = f.Value
		case "torque":
			t.torque = quantity.NewtonMetre(r.quantity(f.Value, "torque", quantity.Torque).Value)
		case "poles":
			for _, item := range f.Value.Items {
				t.poles = append(t.poles, r.text(item, "poles"))
			}
		default:
			if !r.leadKey(&t.lead, f) {
				r.unknownTerminalKey(e.Key.Text, f.Key)
			}
		}
	}
	if t.form.Type == "" {
		r.fault(e.Key, "terminal "+t.name+" has no form", "For example: "+t.name+": {form: spade 6.3}")
		t.form.Type = wiring.Spade
	}
	return t
}

// leadKey reads one of the keys of a lead; ok is false if the key is none.
func (r *reader) leadKey(l *wiring.LeadWire, f source.Entry) (ok bool) {
	switch f.Key.Text {
	case "colour", "color":
		c, err := colour.Parse(f.Value.Text)
		if err != nil {
			r.fault(f.Value, err.Error())
		}
		l.Colour = c
	case "size":
		s, err := quantity.ParseSize(f.Value.Text)
		if err != nil {
			r.fault(f.Value, "size "+err.Error())
		}
		l.Size = s
	case "length":
		l.Length = r.quantity(f.Value, "length", quantity.Length)
	case "lug":
		l.Lug = r.text(f.Value, "lug")
	default:
		return false
	}
	return true
}

func (r *reader) unknownTerminalKey(terminal string, key *source.Node) {
	known := make([]string, len(terminalKeys))
	for i, k := range terminalKeys {
		known[i] = k.name
	}
	r.fault(key, fmt.Sprintf("unknown key %s in terminal %s%s", key.Text, terminal, source.DidYouMean(key.Text, known)))
}

func (r *reader) form(n *source.Node) wiring.Form {
	typ, size, _ := strings.Cut(r.text(n, "form"), " ")
	f := wiring.Form{Type: wiring.FormType(typ), Size: strings.TrimSpace(size)}
	if _, ok := formHolds[f.Type]; !ok {
		forms := []string{"stud", "screw", "spade", "clamp", "pin", "lead", "port", "joint"}
		r.fault(n, "no form "+typ+source.DidYouMean(typ, forms), "Forms: "+strings.Join(forms, ", "))
		f.Type = wiring.Spade
	}
	return f
}

func (r *reader) quantity(n *source.Node, key string, d quantity.Dimension) quantity.Amount {
	a, err := quantity.Parse(n.Text, d)
	if n.Kind == source.Scalar && err != nil {
		r.fault(n, key+" "+err.Error())
	}
	return a
}

// buildTerminals makes the part's terminals and nodes.
func (b *builder) buildTerminals() {
	for _, spec := range b.d.terminals {
		for _, m := range b.members(spec.name, spec.at.Span) {
			b.addTerminal(spec, m)
		}
	}
	for _, name := range b.d.hidden {
		id := b.addNode(name, nil)
		b.part.Hidden = append(b.part.Hidden, id)
	}
}

func (b *builder) addTerminal(spec terminalSpec, m member) {
	t := &wiring.Terminal{
		Part: b.part, Name: m.name, Form: spec.form, Holds: formHolds[spec.form.Type],
		Spoken: spec.spoken, Also: spec.also, Pin: spec.pin, Torque: spec.torque,
		Node: wiring.NoNode, At: spec.at.Span,
	}
	if spec.holds != nil {
		t.Holds = max(1, b.countOf(spec.holds))
	}
	if spec.rated != nil {
		t.Rated = quantity.Ampere(b.amountOf(spec.rated, use{dim: quantity.Current}, 0))
	}
	switch spec.form.Type {
	case wiring.Lead:
		lead := spec.lead
		t.Lead = &lead
		t.Node = b.addNode(m.name, t)
	case wiring.Port:
		for _, pole := range spec.poles {
			id := b.addNode(m.name+"."+pole, t)
			if _, taken := b.nodes[wiring.Fold(pole)]; !taken {
				b.nodes[wiring.Fold(pole)] = id
			}
			t.Poles = append(t.Poles, wiring.Pole{Name: pole, Node: id})
		}
	default:
		t.Node = b.addNode(m.name, t)
	}
	b.part.Terminals = append(b.part.Terminals, t)
}

func (b *builder) addNode(name string, t *wiring.Terminal) wiring.NodeID {
	id := wiring.NodeID(len(b.h.Nodes))
	b.h.Nodes = append(b.h.Nodes, wiring.Node{Part: b.part, Terminal: t, Name: name})
	b.nodes[wiring.Fold(name)] = id
	return id
}

// applyLeads changes the part's leads where a job says that this unit's are others.
func (b *builder) applyLeads(given Given) {
	for _, e := range given.leads {
		t := b.part.Terminal(e.Key.Text)
		if t == nil || t.Lead == nil {
			b.fault(e.Key.Span, fmt.Sprintf("%s has no lead %s%s", b.part.Designation, e.Key.Text,
				source.DidYouMean(e.Key.Text, b.leadNames())), "Leads: "+strings.Join(b.leadNames(), ", "))
			continue
		}
		r := &reader{}
		for _, f := range e.Value.Entries {
			if !r.leadKey(t.Lead, f) {
				r.unknownTerminalKey(e.Key.Text, f.Key)
			}
			b.part.Where["leads."+t.Name+"."+f.Key.Text] = f.Value.Span
		}
		b.findings = append(b.findings, r.findings...)
	}
}

func (b *builder) leadNames() []string {
	var names []string
	for _, t := range b.part.Terminals {
		if t.Lead != nil {
			names = append(names, t.Name)
		}
	}
	slices.Sort(names)
	return names
}
