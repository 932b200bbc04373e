package rules

import (
	"errors"
	"fmt"
	"sort"
	"strings"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/figure"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/rule"
)

func reducerBudget() *rule.Rule {
	return &rule.Rule{
		ID:    "reducer-budget",
		Title: "what can be on together fits what the reducer gives, and what is left is said",
		Level: diag.Warning,
		Why: "A reducer of 25 A that is asked for 30 A lets its voltage fall: the radio restarts when the lights go on, and the lamps dim when the horn blows. " +
			"In its limit it runs at its hottest, and most switch off above some 85 C. The sum of all nameplates says too much, though: a horn sounds for a second, a turn lamp is on half of the time.",
		Do:     "Take the next larger reducer, take LED lamps for filament ones, or move what works at pack voltage to the pack.",
		Source: "Common practice, no published source: continuous loads within the rating; those with the largest button held within 120 % of it, where current limits usually lie.",
		Wrong: `parts:
  T2: {amps: 5 A}
  E1: {kind: light-bar, power: 72 W, place: front}
wires:
  W72: {from: A1.1, to: E1.+, colour: OG, size: 14 AWG, length: 4 ft}
  W73: {from: E1.-, to: A1.n, colour: BK, size: 14 AWG, length: 4 ft}
`,
		Right: `parts:
  T2: {amps: 25 A}
  E1: {kind: light-bar, power: 72 W, place: front}
wires:
  W72: {from: A1.1, to: E1.+, colour: OG, size: 14 AWG, length: 4 ft}
  W73: {from: E1.-, to: A1.n, colour: BK, size: 14 AWG, length: 4 ft}
`,
		Run: runReducerBudget,
	}
}

// limits of what a reducer may be asked for, against its rating: for a moment, and from
// which rating its budget is worth telling. Common practice, no published source.
const (
	moment    = 1.2
	worthTold = quantity.Ampere(2)
)

func runReducerBudget(p *rule.Pass) {
	worst := map[*wiring.Converter]figure.ReducerRoom{}
	var order []*wiring.Converter
	for _, s := range busiestStates(p.Harness) {
		rooms, err := p.Figures().ReducerRooms(p.Context(), s, 0)
		var unsettled *figure.Unsettled
		if errors.As(err, &unsettled) {
			p.NotChecked("reducers in the state "+s.Name, err.Error(), s.At)
		}
		for _, r := range rooms {
			before, seen := worst[r.Converter]
			if !seen {
				order = append(order, r.Converter)
			}
			if !seen || r.Runs && r.Continuous > before.Continuous {
				worst[r.Converter] = r
			}
		}
	}
	for _, c := range order {
		judgeRoom(p, worst[c])
	}
}

// busiestStates is the built-in state in which everything is on, and every state that a job
// adds of its own; all states where there is no such one.
func busiestStates(h *wiring.Harness) []*wiring.State {
	var busy []*wiring.State
	all := h.State("everything on")
	for _, s := range h.States {
		if s == all || all == nil || !s.Stock {
			busy = append(busy, s)
		}
	}
	return busy
}

func judgeRoom(p *rule.Pass, r figure.ReducerRoom) {
	if !r.Runs || r.Converter.OutA == wiring.NoNode {
		return
	}
	if r.Limit <= 0 {
		p.NotChecked(r.Converter.Ref(), "it has no rated current", r.Converter.Part.At)
		return
	}
	part := r.Converter.Part
	f := diag.Finding{
		Detail: upper(consumersOf(r)) + "." + inrushWords(r),
		At:     part.Span("amps"), Related: defined(part.Designation, part.At), States: []string{r.State.Name},
		Subjects: subjects([]string{part.Designation}, roomParts(r)),
	}
	switch {
	case float64(r.Peak) > moment*float64(r.Limit):
		f.Level = diag.Error
		f.Message = fmt.Sprintf("%s is asked for %s at once and gives %v", roomName(r), tenth(r.Peak), r.Limit)
		f.Advice = "Take a larger one, or less that is on together."
	case float64(r.Continuous) > rounded*float64(r.Limit):
		f.Message = fmt.Sprintf("%s is asked for %s for long and gives %v", roomName(r), tenth(r.Continuous), r.Limit)
		f.Advice = "Take a larger one, or less that is on together."
	case r.Limit >= worthTold && len(r.Consumers) > 0 && !p.Controller(part):
		left, _ := r.Left()
		f.Level = diag.Note
		f.Message = fmt.Sprintf("%s has %s left of %v", roomName(r), tenth(left), r.Limit)
		f.Advice = "Stay within it when more is fitted."
	default:
		return
	}
	p.Report(f)
}

// roomName is the part, or the output where the part has several.
func roomName(r figure.ReducerRoom) string {
	outputs := 0
	for _, el := range r.Converter.Part.Elements {
		if _, ok := el.(*wiring.Converter); ok {
			outputs++
		}
	}
	if outputs > 1 {
		return r.Converter.Ref()
	}
	return r.Converter.Part.Designation
}

// roomParts names what hangs on a converter, the largest first.
func roomParts(r figure.ReducerRoom) []string {
	var names []string
	for _, k := range byAmps(r.Consumers) {
		names = append(names, k.Element.Base().Part.Designation)
	}
	return names
}

// byAmps lists what hangs on a converter, the largest first. What one part takes in several
// ways that last alike counts together.
func byAmps(ks []figure.Consumer) []figure.Consumer {
	var sorted []figure.Consumer
	for _, k := range ks {
		last := len(sorted) - 1
		if last >= 0 && sorted[last].Element.Base().Part == k.Element.Base().Part && sorted[last].Duty == k.Duty {
			sorted[last].Amps += k.Amps
			continue
		}
		sorted = append(sorted, k)
	}
	sort.SliceStable(sorted, func(i, j int) bool { return sorted[i].Amps > sorted[j].Amps })
	return sorted
}

// consumersOf lists what hangs on a converter with how long it takes its current.
func consumersOf(r figure.ReducerRoom) string {
	var words []string
	for _, k := range byAmps(r.Consumers) {
		word := fmt.Sprintf("%s %s", k.Element.Base().Part.Designation, tenth(k.Amps))
		switch k.Duty {
		case figure.Momentary:
			word += " while a button is held"
		case figure.Intermittent:
			word += fmt.Sprintf(", %.0f %% of the time", 100*float64(k.Share))
		}
		words = append(words, word)
	}
	if len(words) == 0 {
		return "nothing"
	}
	return strings.Join(words, ", ")
}

// inrushWords says that lamps start slowly on a reducer that limits.
func inrushWords(r figure.ReducerRoom) string {
	if r.Inrush == nil || float64(r.Inrush.Inrush.Amps) <= moment*float64(r.Limit) {
		return ""
	}
	return fmt.Sprintf(" %s takes %v when it is switched on: the voltage falls for %v.", r.Inrush.Part.Designation, r.Inrush.Inrush.Amps, r.Inrush.Inrush.For)
}
