package path

import "github.com/lugwright/lugwright/wiring"

// edgesOf returns the edges of one element.
func edgesOf(el wiring.Element) []*Edge {
	switch el := el.(type) {
	case *wiring.Resistor:
		return one(Resistor, el, el.A, el.B)
	case *wiring.Link:
		return star(el)
	case *wiring.Fuse:
		if !el.Fitted {
			return nil
		}
		return one(Fuse, el, el.A, el.B)
	case *wiring.Switch:
		return switchEdges(el)
	case *wiring.Coil:
		return one(Coil, el, el.A, el.B)
	case *wiring.Contact:
		return one(Contact, el, el.A, el.B)
	case *wiring.Diode:
		return one(Diode, el, el.A, el.B)
	case *wiring.Capacitor:
		return one(Capacitor, el, el.A, el.B)
	case *wiring.Source:
		return one(Source, el, el.A, el.B)
	case *wiring.Charger:
		return one(Charger, el, el.A, el.B)
	case *wiring.Converter:
		return append(one(Input, el, el.InA, el.InB), one(Output, el, el.OutA, el.OutB)...)
	case *wiring.Load:
		return one(Load, el, el.A, el.B)
	case *wiring.Sense:
		if el.AC {
			return nil
		}
		return one(Sense, el, el.At, el.To)
	case *wiring.Driver:
		return one(Driver, el, el.A, el.B)
	}
	return nil
}

func one(sort Sort, el wiring.Element, a, b wiring.NodeID) []*Edge {
	return []*Edge{{Sort: sort, Element: el, A: a, B: b}}
}

func star(el *wiring.Link) []*Edge {
	var edges []*Edge
	for i, n := range el.Join {
		if i > 0 {
			edges = append(edges, &Edge{Sort: Link, Element: el, A: el.Join[0], B: n})
		}
	}
	return edges
}

// switchEdges gives one edge a pair of nodes, whatever number of positions joins it.
func switchEdges(el *wiring.Switch) []*Edge {
	var edges []*Edge
	for _, position := range el.Control.Positions {
		for _, group := range el.Closes[position] {
			for i := 1; i < len(group); i++ {
				edges = closedIn(edges, el, group[0], group[i], position)
			}
		}
	}
	return edges
}

func closedIn(edges []*Edge, el *wiring.Switch, a, b wiring.NodeID, position string) []*Edge {
	for _, e := range edges {
		if e.A == a && e.B == b || e.A == b && e.B == a {
			e.positions = append(e.positions, position)
			return edges
		}
	}
	return append(edges, &Edge{Sort: Switch, Element: el, A: a, B: b,
		control: el.Control, positions: []string{position}})
}
