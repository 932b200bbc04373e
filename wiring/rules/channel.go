package rules

import (
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/rule"
)

// freeChannel finds a fused channel without a wire whose bus suits the consumers at a
// node: "A1.5"; empty if there is none.
func freeChannel(p *rule.Pass, n wiring.NodeID) string {
	band := bandAt(p.Graph, n)
	if band == (wiring.Band{}) {
		return ""
	}
	for _, part := range p.Harness.Parts {
		for _, el := range part.Elements {
			f, ok := el.(*wiring.Fuse)
			if !ok || f.Channel == 0 {
				continue
			}
			t := p.Harness.Nodes[f.B].Terminal
			if t != nil && len(t.Wires) == 0 && busSuits(p, f.A, band) {
				return t.Ref()
			}
		}
	}
	return ""
}

// bandAt is the working band of the loads at a node.
func bandAt(g *path.Graph, n wiring.NodeID) wiring.Band {
	for _, e := range g.At(n) {
		if l, ok := e.Element.(*wiring.Load); ok && l.Works != (wiring.Band{}) {
			return l.Works
		}
	}
	return wiring.Band{}
}

// busSuits reports whether a supply inside the band, and none outside it, reaches a node.
func busSuits(p *rule.Pass, n wiring.NodeID, band wiring.Band) bool {
	suits := false
	for _, s := range p.Supplies() {
		if !p.Graph.From(path.Through{Sorts: path.Metal}, s.Plus).Has(n) {
			continue
		}
		if s.Own.Full > band.High || s.Own.Floor < band.Low {
			return false
		}
		suits = true
	}
	return suits
}
