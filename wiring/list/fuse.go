package list

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/handbook"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// FuseEntry is one fuse, or one empty channel of a block.
type FuseEntry struct {
	Fuse     *wiring.Fuse
	Name     string           // "F1", or "A1.3" for a channel
	Terminal *wiring.Terminal // on its far side from the supply; nil: inside the device
	Colour   string           // of its body; empty: that style has none, or it is not known
	Feeds    []*wiring.Part   // consumers behind it, up to the next fuse
	Next     []string         // names of the next fuses behind it
	Thinnest *wiring.Wire     // of the wires behind it, up to the next fuse; nil: none of known size
	Size     quantity.Size    // of that wire, at its thinnest
	Wires    []*wiring.Wire   // behind it, up to the next fuse
	Both     bool             // supplies reach both of its ends
}

// Free reports whether nothing hangs on the fuse.
func (e FuseEntry) Free() bool { return len(e.Wires) == 0 && len(e.Feeds) == 0 && len(e.Next) == 0 }

// Fuses lists the fuses and breakers of a cart, and the empty channels of its blocks, in the
// order of parts and channels. What is behind a fuse is found by the way of copper, switches,
// contacts, electronic switches and diodes, in any of their positions, from its end away from
// the batteries to the next fuses.
func Fuses(h *wiring.Harness, t *handbook.Tables) []FuseEntry {
	g := path.New(h)
	s := suppliesOf(g)
	var all []FuseEntry
	for _, p := range h.Parts {
		for _, e := range p.Elements {
			if f, ok := e.(*wiring.Fuse); ok {
				all = append(all, entry(g, t, f, s))
			}
		}
	}
	return all
}

// FuseName is a fuse as people call it: its part, and the channel in a block.
func FuseName(f *wiring.Fuse) string {
	switch {
	case f.Channel > 0:
		return fmt.Sprintf("%s.%d", f.Part.Designation, f.Channel)
	case fusesIn(f.Part) > 1:
		return f.Ref()
	}
	return f.Part.Designation
}

func fusesIn(p *wiring.Part) int {
	n := 0
	for _, e := range p.Elements {
		if _, ok := e.(*wiring.Fuse); ok {
			n++
		}
	}
	return n
}

// onward is what carries a fuse's current on to what it feeds.
const onward = path.Conductors | path.Switch | path.Contact | path.Driver | path.Diode

// supplies is where current comes from, and where it goes back to.
type supplies struct {
	batteries, all []wiring.NodeID // positives
	negative       map[int]bool    // copper groups
}

func suppliesOf(g *path.Graph) supplies {
	s := supplies{negative: map[int]bool{}}
	for _, one := range g.Supplies(func(string) (path.Volts, bool) { return path.Volts{}, false }) {
		s.all = append(s.all, one.Plus)
		if one.Battery() {
			s.batteries = append(s.batteries, one.Plus)
		}
		s.negative[g.Copper(one.Bottom)] = true
		if len(one.Under) == 0 {
			s.negative[g.Copper(one.Minus)] = true
		}
	}
	return s
}

func entry(g *path.Graph, t *handbook.Tables, f *wiring.Fuse, s supplies) FuseEntry {
	e := FuseEntry{Fuse: f, Name: FuseName(f)}
	if c, ok := t.FuseColour(f.Style, f.Rating); ok && f.Fitted {
		e.Colour = c.Colour
	}
	end, both := farEnd(g, f, s.batteries, s.all)
	e.Both, e.Terminal = both, g.Harness.Nodes[end].Terminal
	negative := func(n wiring.NodeID) bool { return s.negative[g.Copper(n)] }
	stop := func(n wiring.NodeID) bool { return negative(n) || slices.Contains(s.all, n) }
	reach := g.From(path.Through{Sorts: onward, Stop: stop}.Without(f), end)
	e.behind(g, t, func(n wiring.NodeID) bool { return reach.Has(n) && !negative(n) })
	return e
}

// farEnd is the end of a fuse away from the first group of supplies that reaches it.
func farEnd(g *path.Graph, f *wiring.Fuse, groups ...[]wiring.NodeID) (end wiring.NodeID, both bool) {
	for _, plus := range groups {
		fed := g.From(path.Through{Sorts: onward | path.Fuse}.Without(f), plus...)
		switch a, b := fed.Has(f.A), fed.Has(f.B); {
		case a && b:
			return f.B, true
		case a:
			return f.B, false
		case b:
			return f.A, false
		}
	}
	return f.B, false
}

// behind collects what a fuse feeds.
func (e *FuseEntry) behind(g *path.Graph, t *handbook.Tables, reached func(wiring.NodeID) bool) {
	least := quantity.SquareMillimetre(0)
	for _, edge := range g.Edges() {
		if !reached(edge.A) && !reached(edge.B) {
			continue
		}
		switch edge.Sort {
		case path.Wire:
			e.wire(t, edge.Wire, &least)
		case path.Fuse:
			if f := edge.Element.(*wiring.Fuse); f != e.Fuse {
				e.Next = appendNew(e.Next, FuseName(f))
			}
		case path.Load, path.Coil, path.Input, path.Sense, path.Charger:
			e.Feeds = appendNew(e.Feeds, edge.Part())
		}
	}
}

// wire notes a wire behind a fuse, and where it is thinnest.
func (e *FuseEntry) wire(t *handbook.Tables, w *wiring.Wire, least *quantity.SquareMillimetre) {
	e.Wires = appendNew(e.Wires, w)
	for _, p := range w.Pieces {
		if a := area(t, p.Size); a > 0 && (*least == 0 || a < *least) {
			*least, e.Thinnest, e.Size = a, w, p.Size
		}
	}
}

func appendNew[T comparable](list []T, one T) []T {
	if slices.Contains(list, one) {
		return list
	}
	return append(list, one)
}

// Spare is a sort of fuse to carry in the cart.
type Spare struct {
	Style  string
	Rating quantity.Ampere
	Volts  quantity.Volt // that it must be rated for; 0: not stated
	Colour string
	Fits   []string // names of the fuses that it replaces
}

// Spares lists one of each sort of fuse that is fitted, by style and rating (common practice,
// no published source). Breakers need none.
func Spares(entries []FuseEntry) []Spare {
	var all []Spare
	for _, e := range entries {
		f := e.Fuse
		if !f.Fitted || f.Rating == 0 || f.Style == "breaker" {
			continue
		}
		at := slices.IndexFunc(all, func(s Spare) bool { return s.Style == f.Style && s.Rating == f.Rating && s.Volts == f.Volts })
		if at < 0 {
			at = len(all)
			all = append(all, Spare{Style: f.Style, Rating: f.Rating, Volts: f.Volts, Colour: e.Colour})
		}
		all[at].Fits = append(all[at].Fits, e.Name)
	}
	slices.SortStableFunc(all, func(a, b Spare) int {
		return cmp.Or(strings.Compare(a.Style, b.Style), cmp.Compare(a.Rating, b.Rating))
	})
	return all
}
