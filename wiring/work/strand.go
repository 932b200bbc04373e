package work

import (
	"slices"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/difference"
)

// Strand is one length of wire that one could hold in one's hands: a wire of the old cart, of
// the new one, or of both. Where a number stands for wire of another colour, size or length
// on the new cart, that is two strands.
type Strand struct {
	Name     string
	Old, New *wiring.Wire // as the carts have it; nil where it is not
	Was, Is  [2]Landing   // its ends, in one order
	Extend   [2][]wiring.Piece

	turned bool // New has the ends in the other order
}

// Landing is where an end is.
type Landing struct {
	Terminal *wiring.Terminal // of the bench; nil: nowhere
	Capped   bool
	Lug      string
}

// Wire is the strand as a cart has it: the new one if it is there.
func (s *Strand) Wire() *wiring.Wire {
	if s.New != nil {
		return s.New
	}
	return s.Old
}

// ownCopper reports whether anything of a wire is cut from the reel. If not it is the lead
// of a device, or two of them joined.
func ownCopper(w *wiring.Wire) bool {
	return slices.ContainsFunc(w.Pieces, func(p wiring.Piece) bool { return p.Kind != wiring.LeadPiece }) || len(w.Pieces) == 0
}

// fixed reports whether an end is where it is because the device came with it: a lead
// without a piece of wire. Of two leads joined to each other the first is taken for the wire.
func (s *Strand) fixed(i int, at [2]Landing, w *wiring.Wire) bool {
	if w == nil || ownCopper(w) || at[i].Terminal == nil || at[i].Terminal.Form.Type != wiring.Lead {
		return false
	}
	return i == 0 || at[0].Terminal == nil || at[0].Terminal.Form.Type != wiring.Lead
}

// fixedWas and fixedIs ask for the old and for the new cart.
func (s *Strand) fixedWas(i int) bool { return s.fixed(i, s.Was, s.Old) }
func (s *Strand) fixedIs(i int) bool  { return s.fixed(i, s.Is, s.New) }

// fixedNow asks for a strand in whatever state: a lead stays a lead.
func (s *Strand) fixedNow(i int) bool { return s.fixedWas(i) || s.fixedIs(i) }

// gatherStrands makes one strand of what is the same length of wire on both carts.
func (b *bench) gatherStrands() {
	names := map[string]string{}
	for _, c := range b.changed.Changes {
		if c.Class == difference.Renumbered {
			names[wiring.Fold(c.New)] = wiring.Fold(c.Old)
		}
	}
	olds := map[string]*Strand{}
	for _, w := range b.old.Wires {
		s := &Strand{Name: w.Name(), Old: w, Was: b.landings(w, b.olds)}
		olds[wiring.Fold(w.Name())] = s
		b.strands = append(b.strands, s)
	}
	for _, w := range b.new.Wires {
		name := wiring.Fold(w.Name())
		if was, ok := names[name]; ok {
			name = was
		}
		is := b.landings(w, b.news)
		if s := olds[name]; s != nil && s.take(w, is) {
			continue
		}
		b.strands = append(b.strands, &Strand{Name: w.Name(), New: w, Is: is})
	}
	for _, s := range b.strands {
		for _, w := range []*wiring.Wire{s.Old, s.New} {
			if w != nil {
				b.strandOf[w] = s
			}
		}
	}
	slices.SortStableFunc(b.strands, func(x, y *Strand) int {
		switch {
		case wiring.Less(x.Name, y.Name):
			return -1
		case wiring.Less(y.Name, x.Name):
			return 1
		}
		return before(x.Old != nil, y.Old != nil)
	})
}

func (b *bench) landings(w *wiring.Wire, of map[string]*Device) (out [2]Landing) {
	for i, e := range w.Ends() {
		out[i] = Landing{Terminal: b.spot(e.Terminal, of), Capped: e.Capped, Lug: e.Lug}
	}
	return out
}

// take makes a strand of the old cart the wire of the new one, if it is the same length of
// wire, as it was or extended.
func (s *Strand) take(w *wiring.Wire, is [2]Landing) bool {
	straight := matches(s.Was, is)
	crosswise := matches(s.Was, [2]Landing{is[1], is[0]})
	pieces := ownPieces(w)
	turned := crosswise > straight
	if turned {
		is[0], is[1] = is[1], is[0]
		slices.Reverse(pieces)
	}
	extend, ok := extended(ownPieces(s.Old), pieces)
	if !ok || !s.leadsStay(is) {
		return false
	}
	s.Name, s.New, s.Is, s.Extend, s.turned = w.Name(), w, is, extend, turned
	return true
}

func matches(a, b [2]Landing) int {
	n := 0
	for i := range a {
		if a[i].Terminal != nil && a[i].Terminal == b[i].Terminal {
			n++
		}
	}
	return n
}

// leadsStay reports whether a strand without copper of its own is a lead of the same device.
func (s *Strand) leadsStay(is [2]Landing) bool {
	if ownCopper(s.Old) {
		return true
	}
	for i := range is {
		if s.fixedWas(i) && is[i].Terminal == s.Was[i].Terminal {
			return true
		}
	}
	return false
}

func ownPieces(w *wiring.Wire) []wiring.Piece {
	return slices.DeleteFunc(slices.Clone(w.Pieces), func(p wiring.Piece) bool { return p.Kind == wiring.LeadPiece })
}

// extended reports whether the new pieces are the old ones, with more at either end.
func extended(old, new []wiring.Piece) (extend [2][]wiring.Piece, ok bool) {
	for at := 0; at+len(old) <= len(new); at++ {
		if slices.EqualFunc(old, new[at:at+len(old)], samePiece) && (len(old) > 0 || len(new) == 0) {
			extend[0] = slices.Clone(new[:at])
			slices.Reverse(extend[0])
			extend[1] = slices.Clone(new[at+len(old):])
			return extend, true
		}
	}
	return extend, false
}

// samePiece reports whether two pieces can be one length of wire: what is known of both is
// the same.
func samePiece(a, b wiring.Piece) bool {
	switch {
	case a.Colour.Known() && b.Colour.Known() && a.Colour != b.Colour:
		return false
	case a.Size.Known() && b.Size.Known() && a.Size != b.Size:
		return false
	case a.Length.Known() && b.Length.Known() && !a.Reckoned && !b.Reckoned:
		return a.Length.Value == b.Length.Value
	}
	return true
}
