package kind

import (
	"fmt"
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
// terminal and every element that could be built.
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
		elements: map[string]wiring.Element{},
		auto:     map[int]bool{},
		channels: map[string]int{},
	}
	b.rate(given)
	b.buildTerminals()
	b.applyLeads(given)
	b.buildControls()
	for i := range d.elements {
		b.buildElements(&d.elements[i])
	}
	for _, finish := range b.pending {
		finish()
	}
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
	elements map[string]wiring.Element
	pending  []func()       // what needs all elements: conditions and coils by name
	auto     map[int]bool   // channels whose fuse is `auto`
	channels map[string]int // highest number that a map rating was asked for
	mapKeys  []mapKey
	findings []diag.Finding
}

func (b *builder) buildControls() {
	for _, c := range b.d.controls {
		b.part.Controls = append(b.part.Controls, &wiring.Control{Part: b.part, Name: c.name, Positions: c.positions})
	}
}

// member is one name that a range stands for. number is its number, 0 without a range.
type member struct {
	name   string
	number int
}

// members writes out a name that may be a range whose end may be a rating: "1..channels",
// "a1..pins".
func (b *builder) members(name string, at diag.Span) []member {
	low, high, isRange := strings.Cut(name, "..")
	if !isRange {
		return []member{{name: name}}
	}
	prefix := strings.TrimRight(low, "0123456789")
	from, err := strconv.Atoi(low[len(prefix):])
	to, toErr := strconv.Atoi(strings.TrimPrefix(high, prefix))
	if toErr != nil {
		rating, ok := b.part.Ratings[high]
		if to = rating.Count; !ok {
			return nil // a needed rating that is missing has been reported
		}
	}
	if err != nil || to < from || to-from >= source.MostInRange {
		b.fault(at, fmt.Sprintf("%s: %s is no range that counts up", b.part.Designation, name))
		return nil
	}
	var out []member
	for n := from; n <= to; n++ {
		out = append(out, member{prefix + strconv.Itoa(n), n})
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

// amountOf is a quantity that may be the name of a rating, for a channel of a map rating.
// It is 0 where nothing is given.
func (b *builder) amountOf(n *source.Node, u use, channel int) float64 {
	r, ok := b.part.Ratings[n.Text]
	if !ok {
		a, _ := quantity.Parse(n.Text, u.dim) // checked when the kind was read
		return a.Value
	}
	if r.Channel != nil {
		b.channels[n.Text] = max(b.channels[n.Text], channel)
		return r.Channel[channel].Value
	}
	return r.Amount.Value
}

// buildElements makes one element, or one a number of the ranges that it mentions.
func (b *builder) buildElements(spec *elementSpec) {
	times := 1
	ranges := b.d.rangesOf(spec)
	repeated := len(ranges) > 0
	for i, text := range ranges {
		n := len(b.members(text, spec.at.Span))
		if i > 0 && n != times {
			b.fault(spec.at.Span, fmt.Sprintf("%s.%s: the ranges %s are not equally long",
				b.part.Designation, spec.name, strings.Join(ranges, " and ")))
			return
		}
		times = n
	}
	for i := range times {
		a := &args{b: b, spec: spec, step: i}
		a.base = wiring.ElementBase{Name: spec.name, Part: b.part, At: spec.at.Span}
		if repeated {
			a.number = b.members(ranges[0], spec.at.Span)[i].number
			if a.number == 0 {
				a.number = i + 1
			}
			a.base.Name += strconv.Itoa(a.number)
		}
		if e := spec.typ.build(a); e != nil {
			b.part.Elements = append(b.part.Elements, e)
			b.elements[e.Base().Name] = e
		}
	}
}

// rangesOf lists the ranges in an element that make it repeat, in the order of its
// parameters. A range in a list of nodes that stands for all of them does not.
func (d *Definition) rangesOf(spec *elementSpec) []string {
	var found []string
	for _, p := range spec.typ.params {
		value := spec.body.Get(p.name)
		if value == nil {
			continue
		}
		switch p.shape {
		case oneNode:
			found = appendRange(found, value.Text)
		case twoNodes:
			for _, item := range value.Items {
				found = appendRange(found, item.Text)
			}
		case someWays:
			for _, way := range waysOf(value) {
				for _, item := range way.nodes {
					found = appendRange(found, item.Text)
				}
			}
		}
	}
	return found
}

func appendRange(list []string, text string) []string {
	if source.IsRange(text) {
		return append(list, text)
	}
	return list
}

// way is one group of nodes that a position joins.
type way struct {
	position *source.Node
	nodes    []*source.Node
}

// waysOf reads `{POSITION: [a, b]}` and `{POSITION: [[a, b], [c, d]]}`.
func waysOf(n *source.Node) []way {
	var ways []way
	for _, e := range n.Entries {
		if len(e.Value.Items) > 0 && e.Value.Items[0].Kind == source.List {
			for _, group := range e.Value.Items {
				ways = append(ways, way{e.Key, group.Items})
			}
			continue
		}
		ways = append(ways, way{e.Key, e.Value.Items})
	}
	return ways
}
