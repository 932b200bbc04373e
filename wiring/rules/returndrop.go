package rules

import (
	"fmt"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/rule"
)

// drop compares what the return alone loses with the limits.
func (r *returns) drop(c consumer, supply int) {
	s := r.pass.Supplies()[supply]
	at := s.Own.Middle
	amps := c.amps(at)
	if amps <= 0 || at <= 0 {
		return
	}
	if r.least[supply] == nil {
		r.least[supply] = r.pass.Graph.Least(returning(), r.ohms, s.Negatives()...)
	}
	found, ok := r.least[supply].To(c.minus)
	way, ohms := found.Reversed(), r.least[supply].Cost(c.minus)
	if !ok || r.unknown(way) {
		return
	}
	lost := quantity.Volt(float64(amps) * ohms)
	share := quantity.Ratio(float64(lost) / float64(at))
	limits := r.pass.Harness.Limits
	if share <= limits.Drop {
		return
	}
	level := diag.Warning
	if share > limits.DropOther {
		level = diag.Error
	}
	r.pass.Report(diag.Finding{
		Level:    level,
		Message:  fmt.Sprintf("the return of %s loses %s, %v of its supply", c.name(), volts(lost), share),
		Detail:   fmt.Sprintf("%v through %.2g ohm, by %s; the limit is %v.", amps, ohms, way, limits.Drop),
		Advice:   "Lay a larger or a shorter return.",
		At:       returnSpan(way, c),
		Subjects: subjects([]string{c.part.Designation}, waySubjects(r.pass.Graph, way)),
	})
}

func returnSpan(way path.Path, c consumer) diag.Span {
	for _, s := range way.Steps {
		if s.Edge.Wire != nil {
			return landing(s.Edge.Wire, s.To)
		}
	}
	return c.part.At
}

// ohms is the resistance of an edge, for the path of least resistance.
func (r *returns) ohms(e *path.Edge) float64 {
	switch el := e.Element.(type) {
	case nil:
		total, _ := wireOhms(r.pass, e.Wire)
		return total
	case *wiring.Resistor:
		return float64(el.Ohms)
	case *wiring.Fuse:
		return float64(el.Ohms)
	case *wiring.Switch:
		return float64(el.Ohms)
	case *wiring.Contact:
		return float64(el.Ohms)
	case *wiring.Driver:
		return float64(el.Ohms)
	}
	return 0
}

// unknown says that the loss in a return cannot be told where a wire of it has no size or
// length.
func (r *returns) unknown(way path.Path) bool {
	for _, w := range way.Wires() {
		if _, known := wireOhms(r.pass, w); !known && !w.Cord() {
			r.pass.NotChecked(w.Name(), "the loss in this return is not known: it has no size or length", w.At)
			return true
		}
	}
	return false
}

// wireOhms is the resistance of the known pieces of a wire, and whether all are known.
func wireOhms(p *rule.Pass, w *wiring.Wire) (ohms float64, known bool) {
	known = len(w.Pieces) > 0
	for _, piece := range w.Pieces {
		if !piece.Size.Known() || !piece.Length.Known() {
			known = false
			continue
		}
		one, err := p.Handbook.Resistance(piece.Size, piece.Length.Metres(), p.Harness.Assume.Conductor)
		if err != nil {
			known = false
			continue
		}
		ohms += float64(one)
	}
	return ohms, known
}
