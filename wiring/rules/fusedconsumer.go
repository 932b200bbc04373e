package rules

import (
	"fmt"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/rule"
)

func fusedConsumer() *rule.Rule {
	return &rule.Rule{
		ID:    "fused-consumer",
		Title: "every ungrounded conductor passes a fuse or breaker",
		Level: diag.Error,
		Why: "A 16S pack drives about 5 kA into a short at its posts; its own electronics are no fuse. " +
			"16 AWG wire with that current is at its insulation's limit in some milliseconds and burning a moment later. " +
			"A reducer of 25 A is gentler, and still heats 18 AWG beyond what it may carry. " +
			"It is not only loads that count: an interlock lead, a meter lead or a coil lead chafes through just as well.",
		Do: "Take the wire from a fused channel, or put a fuse into it as near to the source as can be, within 7 in. " +
			"Where a source cannot give more than its smallest wire may carry (a memory lead of 1 A), no fuse is needed.",
		Source: "33 CFR 183.455(a) and (b); 46 CFR 183.380(c) for control, interlock and indicator leads. Boat law: a yardstick for a cart.",
		Wrong: `parts:
  P1: {kind: buzzer}
wires:
  W72: {from: G1.+, to: P1.+, colour: OG, size: 16 AWG, length: 4 ft}
  W73: {from: P1.-, to: X3.5, colour: BK, size: 16 AWG, length: 4 ft}
`,
		Right: `parts:
  P1: {kind: buzzer}
wires:
  W72: {from: X13, to: P1.+, colour: OG, size: 16 AWG, length: 4 ft}   # behind the 5 A fuse of the key circuit
  W73: {from: P1.-, to: X3.5, colour: BK, size: 16 AWG, length: 4 ft}
`,
		Run: runFusedConsumer,
	}
}

func runFusedConsumer(p *rule.Pass) {
	for _, s := range p.Supplies() {
		u := unfused{pass: p, supply: s, through: unfusedThrough(p, s)}
		u.reach = p.Graph.From(u.through, s.Plus)
		u.feeds()
		u.capped()
		u.report()
		if !s.Battery() {
			u.thin()
		}
	}
}

// unfusedThrough passes what lets a fault current through without opening: all metal but
// fuses, in any position in which the supply can be on; electronic switches other than
// those of a drive; diodes; and resistors too small to matter.
func unfusedThrough(p *rule.Pass, s *path.Supply) path.Through {
	t := faultThrough(p, s)
	t.Sorts &^= path.Fuse
	return t
}

// faultThrough passes what lets a fault current of a supply through, fuses among it. What
// comes to a battery's post from elsewhere is left there: the battery itself drives more.
func faultThrough(p *rule.Pass, s *path.Supply) path.Through {
	posts := map[wiring.NodeID]bool{}
	for _, b := range p.Supplies() {
		if b.Battery() && b != s {
			posts[b.Plus] = true
		}
	}
	t := path.Through{Sorts: path.Conducting | path.Resistor, Ohms: negligible}
	return t.Only(func(e *path.Edge) bool {
		return whileOn(s, e) && (e.Sort != path.Driver || !p.Controller(e.Part()))
	}).Until(p.Negative).Until(func(n wiring.NodeID) bool { return posts[n] && !s.Battery() })
}

// negligible is a resistance through which a battery still drives what burns a wire: the
// field of a series motor, a shunt.
const negligible = quantity.Ohm(0.1)

// whileOn reports whether a hand switch can be closed while the supply is on: a charge
// inlet's reed is open while its charger is plugged in.
func whileOn(s *path.Supply, e *path.Edge) bool {
	if e.Sort != path.Switch {
		return true
	}
	control, position := onlyWhile(s.Element)
	return control != e.Control() || e.ClosedIn(position)
}

// onlyWhile is the position of a control that a supply waits for, where it waits for one.
func onlyWhile(el wiring.Element) (*wiring.Control, string) {
	var when *wiring.Condition
	switch el := el.(type) {
	case *wiring.Source:
		when = el.When
	case *wiring.Charger:
		when = el.When
	case *wiring.Converter:
		when = el.When
	}
	if when == nil || when.Op != wiring.Set {
		return nil, ""
	}
	return when.Control, when.Position
}

// unfused is what one supply reaches without a fuse.
type unfused struct {
	pass    *rule.Pass
	supply  *path.Supply
	through path.Through
	reach   *path.Reach
	faults  []unfusedFault
}

// unfusedFault is one wire that leaves a fused point, or the supply, without a fuse.
type unfusedFault struct {
	wire  *wiring.Wire
	at    wiring.NodeID // where it leaves
	path  path.Path     // to the first thing that it feeds
	feeds []string
	level diag.Level
	why   string
}

// feeds finds what is fed without a fuse over more wire than a pigtail.
func (u *unfused) feeds() {
	for _, e := range u.pass.Graph.Edges() {
		if e.Sort&taking == 0 || battery(e.Part()) {
			continue
		}
		for _, n := range []wiring.NodeID{e.A, e.B} {
			if u.reach.Has(n) && !u.pass.Negative(n) {
				u.fed(e.Part().Designation, n, nil)
			}
		}
	}
}

// battery reports whether a part is a battery, whose own electronics are its own affair.
func battery(p *wiring.Part) bool {
	for _, el := range p.Elements {
		if _, ok := el.(*wiring.Source); ok {
			return true
		}
	}
	return false
}

// capped finds live wires that end insulated and have no fuse.
func (u *unfused) capped() {
	for _, w := range u.pass.Harness.Wires {
		for i, e := range w.Ends() {
			if other := w.Ends()[1-i]; e.Capped && other.Terminal != nil && u.reach.Has(other.Terminal.Node) && !u.pass.Negative(other.Terminal.Node) {
				u.fed("a capped end", other.Terminal.Node, w)
			}
		}
	}
}

// fed judges one thing that is fed at a node; last is a wire beyond the node, if any.
func (u *unfused) fed(what string, n wiring.NodeID, last *wiring.Wire) {
	way, _ := u.reach.To(n)
	wires := way.Wires()
	if last != nil {
		wires = append(wires, last)
	}
	if len(wires) == 0 || shortEnough(wires) {
		return
	}
	level, why := u.judge(wires)
	if level == 0 {
		return
	}
	wire, at := u.culprit(way, last)
	for i := range u.faults {
		if f := &u.faults[i]; f.wire == wire && f.at == at {
			f.feeds = append(f.feeds, what)
			if level > f.level {
				f.level, f.why, f.path = level, why, way
			}
			return
		}
	}
	u.faults = append(u.faults, unfusedFault{wire: wire, at: at, path: way, feeds: []string{what}, level: level, why: why})
}

// shortEnough reports whether wires are together known to be no longer than a pigtail.
func shortEnough(wires []*wiring.Wire) bool {
	total := quantity.Metre(0)
	for _, w := range wires {
		length, _, known := w.Length()
		if !known {
			return false
		}
		total += length
	}
	return total <= pigtail*1.001
}

// accessoryFuse is the largest supply behind which nothing asks for a fuse as long as its
// wires stand it. Our own choice: the usual fuse of a small accessory.
const accessoryFuse = quantity.Ampere(5)

// judge says how bad it is that the supply feeds something over these wires without a
// fuse; level 0: not at all.
func (u *unfused) judge(wires []*wiring.Wire) (diag.Level, string) {
	if u.supply.Battery() {
		return diag.Error, u.faultCurrent()
	}
	if name, carries, weak := weakest(u.pass, wires, u.supply.Limit); weak {
		return diag.Error, fmt.Sprintf("%s gives up to %v, and %s may carry %v.", u.name(), u.supply.Limit, name, carries)
	}
	if u.supply.Limit > accessoryFuse {
		return diag.Warning, fmt.Sprintf("%s gives up to %v: the wires stand that, a device that fails may not.", u.name(), u.supply.Limit)
	}
	return 0, ""
}

// faultCurrent says what the battery, with those that it stands on, drives into a short.
func (u *unfused) faultCurrent() string {
	ohms, known := quantity.Ohm(0), true
	for _, s := range append([]*path.Supply{u.supply}, u.supply.Under...) {
		inside := s.Element.(*wiring.Source).Ohms
		ohms += inside
		known = known && inside > 0
	}
	full := u.supply.Top().Full
	if !known || full <= 0 {
		return "Nothing opens if it chafes through; a pack's own electronics are no fuse."
	}
	return fmt.Sprintf("Nothing opens if it chafes through: %s drives up to %v into a short (%s behind %v), and its own electronics are no fuse.",
		u.name(), over(full, ohms), volts(full), ohms)
}

func (u *unfused) name() string { return u.supply.Element.Base().Part.Designation }

// culprit is the wire that leaves the protected way: the one behind the first point of the
// path where a fuse begins and was passed by, else the first wire of all.
func (u *unfused) culprit(way path.Path, last *wiring.Wire) (*wiring.Wire, wiring.NodeID) {
	var first *wiring.Wire
	at := way.Begin
	for _, s := range way.Steps {
		if s.Edge.Wire == nil {
			continue
		}
		if first == nil {
			first, at = s.Edge.Wire, s.From
		}
		if fuseAt(u.pass.Graph, s.From) {
			return s.Edge.Wire, s.From
		}
	}
	if first == nil || last != nil && fuseAt(u.pass.Graph, way.End) {
		return last, way.End
	}
	return first, at
}

func fuseAt(g *path.Graph, n wiring.NodeID) bool {
	for _, e := range g.At(n) {
		if e.Sort == path.Fuse {
			return true
		}
	}
	return false
}

func (u *unfused) report() {
	g := u.pass.Graph
	for _, f := range u.faults {
		feeds := natural(f.feeds)
		u.pass.Report(diag.Finding{
			Level:    f.level,
			Message:  fmt.Sprintf("%s leaves %s without a fuse and feeds %s", f.wire.Name(), g.Name(f.at), list(feeds)),
			Detail:   fmt.Sprintf("%s: no fuse on this way. %s", f.path, f.why),
			Advice:   u.advice(f),
			At:       landing(f.wire, f.at),
			Related:  defined(u.name(), u.supply.Element.Base().Part.At),
			Subjects: subjects([]string{f.wire.Name(), g.Name(f.at)}, pathSubjects(f.path), partNames(u.pass, feeds)),
		})
	}
}

// partNames keeps the names that are parts.
func partNames(p *rule.Pass, names []string) []string {
	var parts []string
	for _, n := range names {
		if p.Harness.Part(n) != nil {
			parts = append(parts, n)
		}
	}
	return parts
}

func (u *unfused) advice(f unfusedFault) string {
	distance := u.pass.Harness.Limits.FuseDistance.In(quantity.Inch)
	fuse := fmt.Sprintf("ut a fuse into it within %s of %s.", distance, u.pass.Graph.Name(f.at))
	if channel := freeChannel(u.pass, f.path.End); channel != "" {
		return fmt.Sprintf("Move %s to a free fused channel, %s, or p%s", f.wire.Name(), channel, fuse)
	}
	return "P" + fuse
}

// thin finds wires of a limited supply that may carry less than it gives, whatever they
// lead to.
func (u *unfused) thin() {
	for _, w := range u.pass.Harness.Wires {
		n, ok := u.inside(w)
		if !ok {
			continue
		}
		name, carries, weak := weakest(u.pass, []*wiring.Wire{w}, u.supply.Limit)
		if !weak || u.reported(w) {
			continue
		}
		u.pass.Report(diag.Finding{
			Message:  fmt.Sprintf("%s is fed by %s without a fuse and may carry less than that gives", w.Name(), u.name()),
			Detail:   fmt.Sprintf("%s gives up to %v; %s may carry %v.", u.name(), u.supply.Limit, name, carries),
			Advice:   fmt.Sprintf("Put a fuse of at most %v at the beginning of %s, or lay a larger wire.", carries, w.Name()),
			At:       landing(w, n),
			Subjects: subjects([]string{w.Name()}, []string{u.name()}),
		})
	}
}

// inside reports whether the supply feeds a wire without a fuse, and from which node.
func (u *unfused) inside(w *wiring.Wire) (wiring.NodeID, bool) {
	for _, pair := range w.Joins() {
		if u.reach.Has(pair[0]) && u.reach.Has(pair[1]) && !u.pass.Negative(pair[0]) {
			return pair[0], true
		}
	}
	return wiring.NoNode, false
}

func (u *unfused) reported(w *wiring.Wire) bool {
	for _, f := range u.faults {
		for _, on := range f.path.Wires() {
			if on == w && f.level == diag.Error {
				return true
			}
		}
	}
	return false
}

// weakest finds the piece of some wires that may carry least, if that is less than a
// current, and says what it is. What has no known size is said to be not checked.
func weakest(p *rule.Pass, wires []*wiring.Wire, amps quantity.Ampere) (name string, least quantity.Ampere, weak bool) {
	for _, w := range wires {
		for _, piece := range w.Pieces {
			if isPigtail(piece) || piece.Auto {
				continue
			}
			if !piece.Size.Known() {
				if !w.Cord() {
					p.NotChecked(w.Name(), "it has no size, so nobody can say what it may carry", w.Span("size"))
				}
				continue
			}
			c, err := pieceCarries(p, w, piece.Size, 0)
			if err != nil {
				p.NotChecked(w.Name(), err.Error(), w.Span("size"))
				continue
			}
			if c.amps < amps && (!weak || c.amps < least) {
				name, least, weak = fmt.Sprintf("%s (%v, %s)", w.Name(), piece.Size, c.basis), c.amps, true
			}
		}
	}
	return name, least, weak
}
