package rules

import (
	"fmt"
	"math"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/rule"
)

func wireReaches() *rule.Rule {
	return &rule.Rule{
		ID:    "wire-reaches",
		Title: "every wire is long enough for the way between its places",
		Level: diag.Warning,
		Why: "A wire that is cut 6 in short is found when the loom is laid, and ends as one more splice under the seat. The way counts along the runs that " +
			"the wire can lie in, not as the crow flies.",
		Do:     "State the length along the run, with slack at both ends, or leave it out: it is reckoned from the runs then.",
		Source: "Common practice, no published source. Without runs between two places, their distance along and above the floor is the least that a wire needs.",
		Wrong: `places:
  roof: {along: 40 in, height: 70 in}
parts:
  E1: {kind: light-bar, power: 18 W, place: roof}
wires:
  W71: {from: A1.3, to: E1.+, colour: RD, size: 16 AWG, length: 18 in}   # with the lead of the light 36 in, and the roof is 54 in away
  W72: {from: E1.-, to: A1.n, colour: BK, size: 16 AWG, length: 4 ft}
`,
		Right: `places:
  roof: {along: 40 in, height: 70 in}
parts:
  E1: {kind: light-bar, power: 18 W, place: roof}
wires:
  W71: {from: A1.3, to: E1.+, colour: RD, size: 16 AWG, length: 4 ft}
  W72: {from: E1.-, to: A1.n, colour: BK, size: 16 AWG, length: 4 ft}
`,
		Run: runWireReaches,
	}
}

func runWireReaches(p *rule.Pass) {
	for _, w := range p.Harness.Wires {
		from, to := placeAtEnd(p.Harness, w.From), placeAtEnd(p.Harness, w.To)
		length, _, known := w.Length()
		if from == nil || to == nil || from == to || !known || reckoned(w) {
			continue
		}
		need, how, ok := leastWay(p.Harness, from, to)
		if ok && float64(length)*rounded < float64(need) {
			reportShortWire(p, w, length, need, how)
		}
	}
}

func placeAtEnd(h *wiring.Harness, e wiring.End) *wiring.Place {
	if e.Terminal == nil {
		return nil
	}
	return h.Place(e.Terminal.Part.Place)
}

// reckoned reports whether the program itself found the length of a wire from the runs.
func reckoned(w *wiring.Wire) bool {
	for _, piece := range w.Pieces {
		if piece.Reckoned {
			return true
		}
	}
	return false
}

// leastWay is the shortest way between two places along runs; where no runs join them, how
// far apart they are.
func leastWay(h *wiring.Harness, from, to *wiring.Place) (quantity.Metre, string, bool) {
	if way, ok := alongRuns(h, from, to); ok {
		return way, "along the runs", true
	}
	if !from.Along.Known() || !to.Along.Known() {
		return 0, "", false
	}
	along := math.Abs(float64(from.Along.Metres() - to.Along.Metres()))
	up := 0.0
	if from.Height.Known() && to.Height.Known() {
		up = float64(from.Height.Metres() - to.Height.Metres())
	}
	return quantity.Metre(math.Hypot(along, up)), "as the crow flies", true
}

// alongRuns is the shortest way along runs, by relaxing every run as often as there are
// places (Bellman and Ford).
func alongRuns(h *wiring.Harness, from, to *wiring.Place) (quantity.Metre, bool) {
	far := map[*wiring.Place]float64{from: 0}
	for range h.Places {
		for _, run := range h.Runs {
			if run.Length.Known() {
				relax(far, run.From, run.To, float64(run.Length.Metres()))
				relax(far, run.To, run.From, float64(run.Length.Metres()))
			}
		}
	}
	way, ok := far[to]
	return quantity.Metre(way), ok
}

func relax(far map[*wiring.Place]float64, a, b *wiring.Place, length float64) {
	here, reached := far[a]
	if !reached {
		return
	}
	if there, ok := far[b]; !ok || here+length < there {
		far[b] = here + length
	}
}

func reportShortWire(p *rule.Pass, w *wiring.Wire, length, need quantity.Metre, how string) {
	p.Report(diag.Finding{
		Message:  fmt.Sprintf("%s is %s long, and its places are %s apart", w.Name(), inches(length), inches(need)),
		Detail:   fmt.Sprintf("From %s (%s) to %s (%s), %s; all its pieces counted.", w.From, w.From.Terminal.Part.Place, w.To, w.To.Terminal.Part.Place, how),
		Advice:   fmt.Sprintf("Cut it %s longer, and add slack at both ends.", inches(need-length)),
		At:       w.Span("length"),
		Related:  defined(w.Name(), w.At),
		Subjects: []string{w.Name(), w.From.String(), w.To.String()},
	})
}
