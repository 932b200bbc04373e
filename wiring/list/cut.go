package list

import (
	"cmp"
	"slices"
	"strings"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/colour"
	"github.com/lugwright/lugwright/wiring/handbook"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// Cut is one length of wire that is cut from a reel.
type Cut struct {
	Wire   *wiring.Wire
	Piece  wiring.Piece
	Number int       // of the piece on its wire, from 1
	Of     int       // pieces of the wire
	Ends   [2]CutEnd // towards From, and towards To
}

// CutEnd is what happens at one end of a cut.
type CutEnd struct {
	End   *wiring.End // nil: it is joined to the next piece
	Lug   string      // "ring M8"; empty: none
	Joint string      // "butt": how it is joined to the next piece; empty: it is not
}

// Reel is all cuts of one size and colour.
type Reel struct {
	Size    quantity.Size
	Colour  colour.Colour
	Cuts    []Cut
	Known   quantity.Metre // of the lengths that are known, together
	About   bool           // an estimate is among them
	Unknown int            // lengths that have to be measured
}

// Reels lists what is cut for the work, the thickest wire first: the pieces of wires that it
// lays, and those that lengthen what was there. Ready-made cords, and the leads that devices
// bring, are not cut.
func Reels(h *wiring.Harness, t *handbook.Tables) []Reel {
	var reels []Reel
	for _, w := range h.Wires {
		for i, p := range w.Pieces {
			if !isCut(w, p) {
				continue
			}
			c := Cut{Wire: w, Piece: p, Number: i + 1, Of: len(w.Pieces), Ends: cutEnds(w, i)}
			at := slices.IndexFunc(reels, func(r Reel) bool { return r.Size == p.Size && r.Colour == p.Colour })
			if at < 0 {
				at = len(reels)
				reels = append(reels, Reel{Size: p.Size, Colour: p.Colour})
			}
			reels[at].add(c)
		}
	}
	slices.SortStableFunc(reels, func(a, b Reel) int {
		return cmp.Or(
			cmp.Compare(area(t, b.Size), area(t, a.Size)),
			strings.Compare(a.Size.String(), b.Size.String()),
			strings.Compare(a.Colour.String(), b.Colour.String()))
	})
	return reels
}

func (r *Reel) add(c Cut) {
	r.Cuts = append(r.Cuts, c)
	if !c.Piece.Length.Known() {
		r.Unknown++
		return
	}
	r.Known += c.Piece.Length.Metres()
	r.About = r.About || c.Piece.Length.About
}

// isCut reports whether the work cuts a piece. What the platform describes is there already,
// unless a later layer says that it has another colour or size.
func isCut(w *wiring.Wire, p wiring.Piece) bool {
	switch p.Kind {
	case wiring.CutPiece:
		return !ofPlatform(w.Origin) || rewired(w)
	case wiring.ExtendPiece:
		return !ofPlatform(w.Origin) || p.At.File != w.At.File
	}
	return false
}

// rewired reports whether a later layer gives a wire of the platform another colour or size.
func rewired(w *wiring.Wire) bool {
	for _, key := range []string{"colour", "size"} {
		if at, ok := w.Where[key]; ok && at.Known() && at.File != w.At.File {
			return true
		}
	}
	return false
}

func cutEnds(w *wiring.Wire, i int) [2]CutEnd {
	var ends [2]CutEnd
	if i == 0 {
		ends[0] = CutEnd{End: &w.From, Lug: w.From.Lug}
	} else {
		ends[0] = CutEnd{Joint: w.Pieces[i].Joint}
	}
	if i == len(w.Pieces)-1 {
		ends[1] = CutEnd{End: &w.To, Lug: w.To.Lug}
	} else {
		ends[1] = CutEnd{Joint: w.Pieces[i+1].Joint}
	}
	return ends
}
