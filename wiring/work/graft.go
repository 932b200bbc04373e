package work

import (
	"reflect"

	"github.com/lugwright/lugwright/wiring"
)

// graft copies a part of one harness so that its nodes lie behind those of another one. All
// nodes move by the same number; the frame is one frame. What the part's elements wait for
// and are moved by are copies too, controls are the part's own.
//
// It goes by the types of fields and not by the list of elements, so that an element that is
// new to the model is copied like the others.
func graft(p *wiring.Part, by wiring.NodeID) *wiring.Part {
	g := &grafter{by: by, own: map[wiring.Element]wiring.Element{}}
	out := *p
	out.Terminals = make([]*wiring.Terminal, len(p.Terminals))
	for i, t := range p.Terminals {
		out.Terminals[i] = g.terminal(t, &out)
	}
	out.Elements = make([]wiring.Element, len(p.Elements))
	for i, e := range p.Elements {
		c := reflect.New(reflect.TypeOf(e).Elem())
		c.Elem().Set(reflect.ValueOf(e).Elem())
		out.Elements[i] = c.Interface().(wiring.Element)
		out.Elements[i].Base().Part = &out
		g.own[e] = out.Elements[i]
	}
	for _, e := range out.Elements {
		g.fields(reflect.ValueOf(e).Elem())
	}
	return &out
}

type grafter struct {
	by  wiring.NodeID
	own map[wiring.Element]wiring.Element // the copy of an element
}

func (g *grafter) terminal(t *wiring.Terminal, p *wiring.Part) *wiring.Terminal {
	out := *t
	out.Part, out.Node, out.Wires = p, g.node(t.Node), nil
	out.Poles = nil
	for _, pole := range t.Poles {
		out.Poles = append(out.Poles, wiring.Pole{Name: pole.Name, Node: g.node(pole.Node)})
	}
	return &out
}

// node moves a node; the frame stays, and what is no node stays none.
func (g *grafter) node(n wiring.NodeID) wiring.NodeID {
	if n <= wiring.FrameNode {
		return n
	}
	return n + g.by
}

// fields moves every node of a struct and puts copies for the elements that it points at.
func (g *grafter) fields(v reflect.Value) {
	for i := range v.NumField() {
		f := v.Field(i)
		switch x := f.Interface().(type) {
		case wiring.NodeID:
			f.Set(reflect.ValueOf(g.node(x)))
		case []wiring.NodeID:
			f.Set(reflect.ValueOf(g.nodes(x)))
		case map[string][][]wiring.NodeID:
			f.Set(reflect.ValueOf(g.ways(x)))
		case *wiring.Coil:
			if c, ok := g.own[x].(*wiring.Coil); ok && x != nil {
				f.Set(reflect.ValueOf(c))
			}
		case *wiring.Condition:
			f.Set(reflect.ValueOf(g.condition(x)))
		}
	}
}

func (g *grafter) nodes(all []wiring.NodeID) []wiring.NodeID {
	var out []wiring.NodeID
	for _, n := range all {
		out = append(out, g.node(n))
	}
	return out
}

func (g *grafter) ways(all map[string][][]wiring.NodeID) map[string][][]wiring.NodeID {
	out := map[string][][]wiring.NodeID{}
	for position, groups := range all {
		for _, group := range groups {
			out[position] = append(out[position], g.nodes(group))
		}
	}
	return out
}

func (g *grafter) condition(c *wiring.Condition) *wiring.Condition {
	if c == nil {
		return nil
	}
	out := *c
	if own, ok := g.own[c.Element]; ok {
		out.Element = own
	}
	out.Of = nil
	for _, of := range c.Of {
		out.Of = append(out.Of, g.condition(of))
	}
	return &out
}
