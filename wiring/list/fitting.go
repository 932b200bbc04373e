package list

import (
	"cmp"
	"slices"
	"strings"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/handbook"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// FittingSort says what is put on a wire.
type FittingSort string

// The sorts of fitting.
const (
	LugFitting    FittingSort = "lug"
	JointFitting  FittingSort = "joint"
	CapFitting    FittingSort = "cap"         // on an end that is not used
	SleeveFitting FittingSort = "heat-shrink" // one over each lug, joint and cap: common practice, no published source
)

// Fitting is a number of equal things that are crimped or shrunk on to wires of one size.
type Fitting struct {
	Sort  FittingSort
	What  string        // "ring M8", "butt"; empty for caps and heat-shrink
	Size  quantity.Size // of the wire; zero: not known
	Count int
	On    []*wiring.Wire // in the order of wires, one entry a piece
}

// Fittings counts what the work needs on the ends of its wires, by sort and wire size: lugs
// on what is cut and on leads that come without one, joints between pieces, caps on ends
// that are not used, and heat-shrink for all of them. A lug that says "none" is none.
func Fittings(h *wiring.Harness, t *handbook.Tables) []Fitting {
	var f fittings
	for _, w := range h.Wires {
		if w.Cord() || WireStatus(w) == AsFound {
			continue
		}
		f.ends(w)
		f.joints(w)
	}
	slices.SortStableFunc(f.all, func(a, b Fitting) int {
		return cmp.Or(
			cmp.Compare(slices.Index(fittingOrder, a.Sort), slices.Index(fittingOrder, b.Sort)),
			strings.Compare(a.What, b.What),
			cmp.Compare(area(t, b.Size), area(t, a.Size)),
			strings.Compare(a.Size.String(), b.Size.String()))
	})
	return f.all
}

var fittingOrder = []FittingSort{LugFitting, JointFitting, CapFitting, SleeveFitting}

type fittings struct{ all []Fitting }

func (f *fittings) add(sort FittingSort, what string, size quantity.Size, w *wiring.Wire) {
	f.count(sort, what, size, w)
	f.count(SleeveFitting, "", size, w)
}

func (f *fittings) count(sort FittingSort, what string, size quantity.Size, w *wiring.Wire) {
	at := slices.IndexFunc(f.all, func(x Fitting) bool { return x.Sort == sort && x.What == what && x.Size == size })
	if at < 0 {
		at = len(f.all)
		f.all = append(f.all, Fitting{Sort: sort, What: what, Size: size})
	}
	f.all[at].Count++
	f.all[at].On = append(f.all[at].On, w)
}

func (f *fittings) ends(w *wiring.Wire) {
	if len(w.Pieces) == 0 {
		return
	}
	for i, e := range w.Ends() {
		p := w.Pieces[i*(len(w.Pieces)-1)]
		switch {
		case e.Capped:
			f.add(CapFitting, "", p.Size, w)
		case e.Lug == "" || e.Lug == "none":
		case isCut(w, p) || p.Kind == wiring.LeadPiece && bare(w, i):
			f.add(LugFitting, e.Lug, p.Size, w)
		}
	}
}

// bare reports whether a lead arrives at an end without a lug of its own.
func bare(w *wiring.Wire, end int) bool {
	t := w.Ends()[1-end].Terminal
	return len(w.Pieces) == 1 && t != nil && t.Lead != nil && t.Lead.Lug == ""
}

// joints counts those at pieces that the work adds. Pieces that meet on a stud or in a plug
// are not spliced.
func (f *fittings) joints(w *wiring.Wire) {
	for i, p := range w.Pieces {
		if i > 0 && (p.Joint == "butt" || p.Joint == "solder") && (isCut(w, p) || isCut(w, w.Pieces[i-1])) {
			f.add(JointFitting, p.Joint, p.Size, w)
		}
	}
}
