package kind

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/source"
)

// Build fills a part of this kind: Kind, Ratings, Terminals, Controls, Elements, Hidden,
// and Where for each rating and lead that was given ("rating", "fuses.3",
// "leads.enable.colour"). It appends the part's nodes to h.Nodes and makes Nodes[0] the
// frame if it is missing. p.Designation and p.At must be set.
//
// given holds what the layers wrote for this part that is not a key of every part; a name
// that is no rating of the kind is a finding. After findings the part still has every
// terminal, and every element that could be built: all that an element names is there.
func (d *Definition) Build(h *wiring.Harness, p *wiring.Part, given Given) []diag.Finding {
	if len(h.Nodes) == 0 {
		h.Nodes = append(h.Nodes, wiring.Node{Name: "frame"})
	}
	if p.Where == nil {
		p.Where = map[string]diag.Span{}
	}
	p.Kind = &d.Kind
	b := &builder{
		d: d, h: h, part: p,
		nodes:    map[string]wiring.NodeID{"frame": wiring.FrameNode},
		ranges:   map[string][]member{},
		elements: map[string]wiring.Element{},
		auto:     map[string]map[int]bool{},
		channels: map[string]int{},
	}
	b.rate(given)
	b.buildTerminals()
	b.applyLeads(given)
	b.buildControls()
	for i := range d.elements {
		if !d.elements[i].faulty {
			b.buildElements(&d.elements[i])
		}
	}
	b.finish()
	b.checkChannels()
	diag.Sort(b.findings)
	return b.findings
}

// builder makes one part.
type builder struct {
	d        *Definition
	h        *wiring.Harness
	part     *wiring.Part
	nodes    map[string]wiring.NodeID // by folded name
	ranges   map[string][]member      // those that were written out already
	elements map[string]wiring.Element
	pending  []pending               // what needs all elements: conditions, coils by name
	auto     map[string]map[int]bool // by rating: channels that are `auto`
	channels map[string]int          // by rating: the highest channel that was asked for
	mapKeys  []mapKey
	findings []diag.Finding
}

// pending is work on an element that waits for the others.
type pending struct {
	a *args
	f func() bool
}

func (b *builder) fault(at *source.Node, message string, advice ...string) {
	b.findings = append(b.findings, source.Fault(at.Span, message, advice...))
}

func (b *builder) buildControls() {
	for _, c := range b.d.controls {
		b.part.Controls = append(b.part.Controls, &wiring.Control{Part: b.part, Name: c.name, Positions: c.positions})
	}
}

func (b *builder) control(name string) *wiring.Control {
	for _, c := range b.part.Controls {
		if c.Name == name {
			return c
		}
	}
	return nil
}

// member is one name that a range stands for.
type member struct {
	name   string
	number int
}

// members writes out a name that may be a range whose end may be a rating: "1..channels",
// "a1..pins". It is empty if that rating has no value, which has been reported.
func (b *builder) members(n *source.Node) []member {
	known, ok := b.ranges[n.Text]
	if !ok {
		known = b.writeOut(n)
		b.ranges[n.Text] = known
	}
	return known
}

func (b *builder) writeOut(n *source.Node) []member {
	span, isRange := cutRange(n.Text)
	if !isRange {
		return []member{{name: n.Text}}
	}
	high, err := quantity.ParseCount(span.high)
	if err != nil {
		high = b.part.Ratings[span.high].Count
	}
	var out []member
	for i := span.low; i <= high; i++ {
		out = append(out, member{span.prefix + strconv.Itoa(i), i})
	}
	return out
}

// countOf is a count that may be the name of a rating.
func (b *builder) countOf(n *source.Node) int {
	if r, ok := b.part.Ratings[n.Text]; ok {
		return r.Count
	}
	count, _ := quantity.ParseCount(n.Text) // checked when the kind was read
	return count
}

// ampsOf is a current that may be the name of a rating.
func (b *builder) ampsOf(n *source.Node) quantity.Ampere {
	if r, ok := b.part.Ratings[n.Text]; ok {
		return quantity.Ampere(r.Amount.Value)
	}
	a, _ := quantity.Parse(n.Text, quantity.Current) // checked when the kind was read
	return quantity.Ampere(a.Value)
}

// buildElements makes one element, or one a number of the ranges that it mentions.
func (b *builder) buildElements(spec *elementSpec) {
	ranges := spec.typ.ranges(spec.body)
	if len(ranges) == 0 {
		b.buildElement(&args{b: b, spec: spec})
		return
	}
	members := b.members(ranges[0])
	for _, other := range ranges[1:] {
		if n := len(b.members(other)); n != len(members) {
			b.fault(spec.at, fmt.Sprintf("%s.%s: %s is %d terminals, %s is %d", b.part.Designation, spec.name,
				ranges[0].Text, len(members), other.Text, n))
			return
		}
	}
	for i, m := range members {
		b.buildElement(&args{b: b, spec: spec, step: i, number: m.number})
	}
}

// numbered is the name of a repeated element.
func numbered(name string, number int) string {
	if number == 0 {
		return name
	}
	return name + strconv.Itoa(number)
}

func (b *builder) buildElement(a *args) {
	a.base = wiring.ElementBase{Name: numbered(a.spec.name, a.number), Part: b.part, At: a.spec.at.Span}
	e := a.spec.typ.build(a)
	if a.incomplete {
		return
	}
	if _, taken := b.elements[a.base.Name]; taken {
		b.fault(a.spec.at, fmt.Sprintf("%s: two elements are named %s", b.part.Designation, a.base.Name))
		return
	}
	b.part.Elements = append(b.part.Elements, e)
	b.elements[a.base.Name] = e
}

// finish does what waited for all elements. An element that names one which could not be
// made is taken out, and so on until all that is named is there.
func (b *builder) finish() {
	for again := true; again; {
		again = false
		for _, p := range b.pending {
			if b.elements[p.a.base.Name] != nil && !p.f() {
				delete(b.elements, p.a.base.Name)
				again = true
			}
		}
	}
	b.part.Elements = slices.DeleteFunc(b.part.Elements, func(e wiring.Element) bool {
		return b.elements[e.Base().Name] == nil
	})
}

// buildTerminals makes the part's terminals and nodes.
func (b *builder) buildTerminals() {
	for _, spec := range b.d.terminals {
		name := *spec.at
		name.Text = spec.name
		for _, m := range b.members(&name) {
			b.addTerminal(spec, m)
		}
	}
	for _, h := range b.d.hidden {
		b.part.Hidden = append(b.part.Hidden, b.addNode(h, h.Text, nil))
	}
	b.shortenPoles()
}

func (b *builder) addTerminal(spec terminalSpec, m member) {
	t := &wiring.Terminal{
		Part: b.part, Name: m.name, Form: spec.form, Holds: formHolds[spec.form.Type],
		Spoken: spec.spoken, Torque: spec.torque, Node: wiring.NoNode, At: spec.at.Span,
	}
	for _, also := range spec.also {
		t.Also = append(t.Also, also.Text)
	}
	if spec.pin != nil {
		t.Pin = spec.pin.Text
	}
	if spec.holds != nil {
		t.Holds = max(1, b.countOf(spec.holds))
	}
	if spec.rated != nil {
		t.Rated = b.ampsOf(spec.rated)
	}
	b.part.Terminals = append(b.part.Terminals, t)
	if spec.form.Type == wiring.Port {
		for _, pole := range spec.poles {
			t.Poles = append(t.Poles, wiring.Pole{Name: pole.Text, Node: b.addNode(pole, m.name+"."+pole.Text, t)})
		}
		return
	}
	if spec.form.Type == wiring.Lead {
		lead := spec.lead
		t.Lead = &lead
	}
	t.Node = b.addNode(spec.at, m.name, t)
}

func (b *builder) addNode(at *source.Node, name string, t *wiring.Terminal) wiring.NodeID {
	id := wiring.NodeID(len(b.h.Nodes))
	b.h.Nodes = append(b.h.Nodes, wiring.Node{Part: b.part, Terminal: t, Name: name})
	if _, taken := b.nodes[wiring.Fold(name)]; taken {
		b.fault(at, fmt.Sprintf("%s: this %s has two nodes called %s", b.part.Designation, b.d.Name, name))
	}
	b.nodes[wiring.Fold(name)] = id
	return id
}

// shortenPoles lets a pole be called without its port where that is enough.
func (b *builder) shortenPoles() {
	ports := map[string]int{}
	for _, t := range b.part.Terminals {
		for _, p := range t.Poles {
			ports[wiring.Fold(p.Name)]++
		}
	}
	for _, t := range b.part.Terminals {
		for _, p := range t.Poles {
			name := wiring.Fold(p.Name)
			if _, taken := b.nodes[name]; !taken && ports[name] == 1 {
				b.nodes[name] = p.Node
			}
		}
	}
}

// applyLeads changes the part's leads where a job says that this unit's are others.
func (b *builder) applyLeads(given Given) {
	r := &reader{}
	for _, e := range given.leads {
		t := b.part.Terminal(e.Key.Text)
		if t == nil || t.Lead == nil {
			b.noLead(e.Key)
			continue
		}
		for _, f := range r.entries(e.Value, "lead "+t.Name, "{colour: GN, length: 20 in}") {
			if !r.leadKey(t.Lead, f) {
				r.fault(f.Key, fmt.Sprintf("unknown key %s in lead %s%s", f.Key.Text, t.Name,
					source.DidYouMean(f.Key.Text, leadKeys)), "A lead has "+strings.Join(leadKeys, ", "))
				continue
			}
			key := f.Key.Text
			if key == "color" {
				key = "colour"
			}
			b.part.Where["leads."+t.Name+"."+key] = f.Value.Span
		}
	}
	b.findings = append(b.findings, r.findings...)
}

var leadKeys = []string{"colour", "size", "length", "lug"}

func (b *builder) noLead(key *source.Node) {
	var names []string
	for _, t := range b.part.Terminals {
		if t.Lead != nil {
			names = append(names, t.Name)
		}
	}
	has := article(b.d.Name) + " has none"
	if len(names) > 0 {
		has = "it has " + strings.Join(names, ", ")
	}
	b.fault(key, fmt.Sprintf("%s has no lead %s: %s", b.part.Designation, key.Text, has))
}
