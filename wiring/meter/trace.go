package meter

import (
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/path"
)

// Verdict says in short what a trace found.
type Verdict uint8

// The verdicts.
const (
	Fed     Verdict = iota + 1 // a supply reaches the terminal: Trace.Feed
	Return                     // it is on the way back to a supply: Trace.Feed leads there
	Dead                       // something on the way to it is open: Trace.Break
	Nowhere                    // no way leads there from any supply
)

// String is the verdict in a word: "fed", "return", "dead", "nowhere".
func (v Verdict) String() string {
	switch v {
	case Fed:
		return "fed"
	case Return:
		return "return"
	case Dead:
		return "dead"
	}
	return "nowhere"
}

// Trace is what feeds a place in one state, or why nothing does.
type Trace struct {
	Reading Reading
	Verdict Verdict
	// Feed is the way from the supply to the place; for a Return the one from the place to
	// the bottom of the supply. Dead: the way that is meant to feed it, its break included.
	Feed   path.Path
	Supply wiring.Element // whose positive Feed begins at, or whose bottom it ends at; nil with Nowhere
	// Behind is how the converter that Feed begins at is fed itself, and so on down to a
	// battery, nearest first.
	Behind []path.Path
	Break  *Break       // Dead only
	Empty  *wiring.Fuse // Nowhere: an empty fuse channel that ends there, if one does
}

// Trace finds what feeds a node, or where the way to it is cut.
func (s *Sheet) Trace(n wiring.NodeID) Trace {
	t := Trace{Reading: s.ReadAt(n)}
	if way, supply, ok := s.returns(n); ok && !s.stiff.Has(n) {
		t.Verdict, t.Feed, t.Supply = Return, way, supply
		return t
	}
	way, supply, ok := s.way(n)
	if !ok {
		t.Verdict, t.Empty = Nowhere, s.emptyChannel(n)
		return t
	}
	t.Feed, t.Supply = way, supply.Element
	if cut := s.cut(way, supply, told{}); cut != nil {
		t.Verdict, t.Break = Dead, cut
		return t
	}
	t.Verdict, t.Behind = Fed, s.behind(supply)
	return t
}

// way is the least obstructed way by which a supply reaches a node.
func (s *Sheet) way(n wiring.NodeID) (path.Path, *path.Supply, bool) {
	best, least := -1, 0.0
	for i, supply := range s.bench.supplies {
		if !s.feeds[i].Has(n) {
			continue
		}
		cost := s.feeds[i].Cost(n)
		if !s.Point.Holds(supply.Element) {
			cost += costOpen
			if _, charger := supply.Element.(*wiring.Charger); charger {
				cost += costCharger
			}
		}
		if best < 0 || cost < least {
			best, least = i, cost
		}
	}
	if best < 0 {
		return path.Path{}, nil, false
	}
	way, ok := s.feeds[best].To(n)
	return way, s.bench.supplies[best], ok
}

// returns is the closed way from a node back to the bottom of a supply.
func (s *Sheet) returns(n wiring.NodeID) (path.Path, wiring.Element, bool) {
	way, ok := s.back.To(n)
	if !ok {
		return path.Path{}, nil, false
	}
	for _, supply := range s.bench.supplies {
		if supply.Bottom == way.Begin {
			return way.Reversed(), supply.Element, true
		}
	}
	return path.Path{}, nil, false
}

// behind follows converters back to what feeds them. Each is passed once, so that a ring of
// converters ends.
func (s *Sheet) behind(supply *path.Supply) []path.Path {
	var ways []path.Path
	seen := map[wiring.Element]bool{}
	for {
		c, ok := supply.Element.(*wiring.Converter)
		if !ok || seen[c] {
			return ways
		}
		seen[c] = true
		way, next, ok := s.way(c.InA)
		if !ok {
			return ways
		}
		ways, supply = append(ways, way), next
	}
}

// emptyChannel is the fuse channel without a fuse whose copper a node is on.
func (s *Sheet) emptyChannel(n wiring.NodeID) *wiring.Fuse {
	for _, p := range s.bench.Harness.Parts {
		for _, e := range p.Elements {
			f, ok := e.(*wiring.Fuse)
			if ok && !f.Fitted && (s.bench.graph.SameCopper(n, f.A) || s.bench.graph.SameCopper(n, f.B)) {
				return f
			}
		}
	}
	return nil
}
