package rules

import (
	"fmt"
	"regexp"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/rule"
)

func returnComplete() *rule.Rule {
	return &rule.Rule{
		ID:    "return-complete",
		Title: "every consumer's negative reaches the negative of the source that feeds it",
		Level: diag.Error,
		Why: "The grounds are what a conversion forgets: the factory harness ground and the negative of each socket that hung on part of " +
			"the old string leave with the old batteries, and what they served is dead or, worse, finds its way back through another " +
			"device, with up to 40 V of the wrong sign across a 12 V one. On an isolated reducer, 12 V loads returned to the pack's negative are dead as well. " +
			"A return that loses 3 % is too thin or too long; one that loses 10 % is no return.",
		Do: "Land the ground on the negative of the source that feeds it: pack negative for what hangs on the pack, the fuse block's negative " +
			"for what hangs on the block.",
		Source: "Common practice, no published source; drop limits: ABYC E-11, from memory.",
		Wrong:  "W73: {from: E1.-, to: capped, colour: BK, size: 14 AWG, length: 4 ft}",
		Right:  "W73: {from: E1.-, to: A1.n, colour: BK, size: 14 AWG, length: 4 ft}",
		Run:    runReturnComplete,
	}
}

func runReturnComplete(p *rule.Pass) {
	r := returns{pass: p}
	for _, s := range p.Supplies() {
		r.feed = append(r.feed, p.Graph.From(carrying(), s.Plus))
		back := carrying()
		back.Against = true
		r.back = append(r.back, p.Graph.From(back, s.Minus))
	}
	for _, c := range consumers(p.Graph) {
		r.judge(c)
	}
	r.report()
	r.marked()
}

// carrying passes what carries a load's current: all metal, electronic switches, diodes,
// and resistors small enough to stand in series with a load.
func carrying() path.Through { return path.Through{Sorts: path.Conducting | path.Resistor, Ohms: 100} }

type returns struct {
	pass   *rule.Pass
	feed   []*path.Reach // by supply: what its positive reaches
	back   []*path.Reach // by supply: from where current comes back to its negative
	broken []brokenReturn
}

// brokenReturn is a group of nodes from which current does not get back.
type brokenReturn struct {
	group  wiring.NodeID // its smallest node
	minus  wiring.NodeID // negative of the first consumer
	supply *path.Supply
	lost   []string
	first  consumer
}

// judge finds a supply that the consumer's current can come from and go back to.
func (r *returns) judge(c consumer) {
	fedBy := -1
	for i := range r.pass.Supplies() {
		if r.feed[i].Has(c.plus) && r.returnsFrom(c.minus, i) {
			r.drop(c, r.pass.Supplies()[i])
			return
		}
		if r.feed[i].Has(c.minus) && r.returnsFrom(c.plus, i) {
			return // the wrong way round, but complete
		}
		if fedBy < 0 && r.feed[i].Has(c.plus) && !r.returnsFrom(c.plus, i) {
			fedBy = i
		}
	}
	if fedBy >= 0 {
		r.lose(c, r.pass.Supplies()[fedBy])
	}
}

// returnsFrom reports whether current gets from a node back to a supply in one position of
// all switches; the bridge of a controller is no return for what hangs on its input.
func (r *returns) returnsFrom(n wiring.NodeID, supply int) bool {
	if !r.back[supply].Has(n) {
		return false
	}
	_, ok := r.pass.Graph.Joined(carrying(), n, r.pass.Supplies()[supply].Minus)
	return ok
}

func (r *returns) lose(c consumer, s *path.Supply) {
	group := r.pass.Graph.From(carrying(), c.minus).Nodes()[0]
	for i := range r.broken {
		if r.broken[i].group == group && r.broken[i].supply == s {
			r.broken[i].lost = append(r.broken[i].lost, c.name())
			return
		}
	}
	r.broken = append(r.broken, brokenReturn{group: group, minus: c.minus, supply: s, lost: []string{c.name()}, first: c})
}

func (r *returns) report() {
	for _, b := range r.broken {
		end, w := r.loose(b)
		at, target := r.place(b, end, w), r.target(b.supply)
		lost := natural(b.lost)
		detail := fmt.Sprintf("Fed by %s; from %s no way leads back to %s.", b.supply.Element.Base().Part.Designation,
			r.pass.Graph.Name(b.minus), r.pass.Graph.Name(b.supply.Minus))
		advice := fmt.Sprintf("Lay a wire from %s to %s.", r.pass.Graph.Name(b.minus), target)
		if w != nil {
			detail += fmt.Sprintf(" %s ends %s.", w.Name(), end)
			advice = fmt.Sprintf("Land %s on %s.", w.Name(), target)
		}
		names := subjects(wiresAt(r.pass, b.minus), lost)
		if w != nil {
			names = subjects([]string{w.Name()}, names)
		}
		r.pass.Report(diag.Finding{
			Message: fmt.Sprintf("%s %s no return", list(lost), hasOrHave(lost)),
			Detail:  detail, Advice: advice, At: at,
			Related:  defined(b.first.part.Designation, b.first.part.At),
			Subjects: subjects(names, []string{b.first.part.Designation}),
		})
	}
}

func hasOrHave(names []string) string {
	if len(names) == 1 {
		return "has"
	}
	return "have"
}

// loose is the wire of a broken group that ends nowhere, and how its end is.
func (r *returns) loose(b brokenReturn) (*wiring.End, *wiring.Wire) {
	reach := r.pass.Graph.From(carrying(), b.minus)
	for _, w := range r.pass.Harness.Wires {
		for i, e := range w.Ends() {
			if other := w.Ends()[1-i]; e.Terminal == nil && other.Terminal != nil && reach.Has(other.Terminal.Node) {
				return e, w
			}
		}
	}
	return nil, nil
}

// place is the line that a finding about a broken return points at.
func (r *returns) place(b brokenReturn, end *wiring.End, w *wiring.Wire) diag.Span {
	if w != nil {
		return endSpan(w, end)
	}
	for _, e := range r.pass.Graph.At(b.minus) {
		if e.Wire != nil {
			return landing(e.Wire, e.Other(b.minus))
		}
	}
	return b.first.part.At
}

// wiresAt names the wires that land on a node.
func wiresAt(p *rule.Pass, n wiring.NodeID) []string {
	var names []string
	for _, e := range p.Graph.At(n) {
		if e.Wire != nil {
			names = append(names, e.Wire.Name())
		}
	}
	return names
}

// target is the terminal on which a supply's returns belong: the point that a layer names
// for them where it is on that supply's negative, else the negative itself.
func (r *returns) target(s *path.Supply) string {
	for _, name := range []string{"negative-12v", "pack-"} {
		if t, ok := pointTerminal(r.pass.Harness, name); ok && r.pass.Graph.SameCopper(t.Node, s.Minus) {
			return t.Ref()
		}
	}
	return r.pass.Graph.Name(s.Minus)
}

// drop compares what the return alone loses with the limits.
func (r *returns) drop(c consumer, s *path.Supply) {
	at := s.Own.Middle
	amps := c.amps(at)
	if amps <= 0 || at <= 0 {
		return
	}
	reach := r.pass.Graph.Least(carrying(), r.ohms, c.minus)
	way, ok := reach.To(s.Minus)
	if !ok {
		return
	}
	if w := r.unknown(way); w != nil {
		return
	}
	lost := quantity.Volt(float64(amps) * reach.Cost(s.Minus))
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
		Detail:   fmt.Sprintf("%v through %.2g ohm, by %s; the limit is %v.", amps, reach.Cost(s.Minus), way, limits.Drop),
		Advice:   "Lay a larger or a shorter return.",
		At:       returnSpan(way, c),
		Subjects: subjects([]string{c.part.Designation}, pathSubjects(way)),
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

func (r *returns) unknown(way path.Path) *wiring.Wire {
	for _, w := range way.Wires() {
		if _, known := wireOhms(r.pass, w); !known && !w.Cord() {
			r.pass.NotChecked(w.Name(), "the loss in this return is not known: it has no size or length", w.At)
			return w
		}
	}
	return nil
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

// groundWords are how people mark what is a ground.
var groundWords = regexp.MustCompile(`(?i)\b(ground|negative)\b`)

// marked judges what is marked as a ground, though no consumer on it may be modelled: a
// wire by what it is for, a splice or bus bar by its title.
func (r *returns) marked() {
	for _, w := range r.pass.Harness.Wires {
		if groundWords.MatchString(w.For) && len(w.Joins()) > 0 && !r.grounded(w.Joins()[0][0]) {
			r.ungrounded(w.Name(), w.At, w.For, w.Joins()[0][0])
		}
	}
	for _, part := range r.pass.Harness.Parts {
		if !onlyCopper(part) || !groundWords.MatchString(part.Title) || len(part.Terminals) == 0 {
			continue
		}
		if n := part.Terminals[0].Node; n >= 0 && !r.grounded(n) {
			r.ungrounded(part.Designation, part.At, part.Title, n)
		}
	}
}

// onlyCopper reports whether a part only joins wires: a splice, a bus bar.
func onlyCopper(p *wiring.Part) bool {
	for _, el := range p.Elements {
		if _, ok := el.(*wiring.Link); !ok {
			return false
		}
	}
	return true
}

func (r *returns) grounded(n wiring.NodeID) bool {
	for _, back := range r.back {
		if back.Has(n) {
			return true
		}
	}
	return len(r.back) == 0
}

func (r *returns) ungrounded(name string, at diag.Span, mark string, n wiring.NodeID) {
	for _, b := range r.broken {
		if r.pass.Graph.From(carrying(), b.minus).Has(n) {
			return
		}
	}
	target := "the negative of its source"
	if t, ok := pointTerminal(r.pass.Harness, "pack-"); ok {
		target = t.Ref()
	}
	r.pass.Report(diag.Finding{
		Message:  fmt.Sprintf("%s is marked %q and reaches no negative", name, mark),
		Detail:   fmt.Sprintf("From %s no way leads to the negative of any source.", r.pass.Graph.Name(n)),
		Advice:   fmt.Sprintf("Land it on %s.", target),
		At:       at,
		Subjects: subjects([]string{name}, wiresAt(r.pass, n)),
	})
}
