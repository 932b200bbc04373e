package rules

import (
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/rule"
)

// interlockNeed is what an interlock lead must reach.
type interlockNeed struct {
	kind  wiring.InterlockKind
	nodes []wiring.NodeID // any of them will do; none: the lead stays open
	what  string          // "pack positive"
}

// interlockEnds tells the two ends of an interlock lead apart: the one at the device that
// watches it, and the one that is landed for it.
func interlockEnds(h *wiring.Harness, w *wiring.Wire) (device, landed *wiring.End) {
	if h.Interlock != nil {
		for i, e := range w.Ends() {
			for _, t := range h.Interlock.Terminals {
				if e.Terminal == t {
					return e, w.Ends()[1-i]
				}
			}
		}
	}
	if w.From.Terminal == nil {
		return &w.To, &w.From
	}
	return &w.From, &w.To
}

// neededBy finds what an interlock lead must reach: as a layer declares its kind; where
// none does, as the device at its end asks, which for most carts is pack positive. false
// if the harness has no such thing.
func neededBy(p *rule.Pass, device *wiring.End) (interlockNeed, bool) {
	kind, declared := wiring.InterlockPackPositive, false
	if il := p.Harness.Interlock; il != nil {
		kind, declared = il.Kind, il.At.Known()
	}
	if !declared && device.Terminal != nil {
		kind = askedKind(p, device.Terminal.Node, kind)
	}
	pack := highest(p)
	switch kind {
	case wiring.InterlockClosedWhenPlugged:
		return interlockNeed{kind: kind, what: "nothing"}, true
	case wiring.InterlockAuxPositive:
		low := lowPositives(p)
		return interlockNeed{kind: kind, nodes: low, what: "12 V positive"}, len(low) > 0
	case wiring.InterlockReturn:
		if pack == nil {
			return interlockNeed{}, false
		}
		return interlockNeed{kind: kind, nodes: []wiring.NodeID{pack.Bottom}, what: "pack negative"}, true
	}
	if pack == nil {
		return interlockNeed{}, false
	}
	return interlockNeed{kind: kind, nodes: []wiring.NodeID{pack.Plus}, what: "pack positive"}, true
}

// askedKind is the kind of interlock that the device's end tells of: a coil that is fed at
// its other end wants a return, an input that pack voltage would destroy wants 12 V.
func askedKind(p *rule.Pass, n wiring.NodeID, usual wiring.InterlockKind) wiring.InterlockKind {
	pack := highest(p)
	if pack == nil {
		return usual
	}
	for _, each := range p.Graph.From(path.Through{Sorts: path.Link}, n).Nodes() {
		for _, e := range p.Graph.At(each) {
			switch el := e.Element.(type) {
			case *wiring.Sense:
				if el.At == each && el.Above > 0 && el.Most > 0 && el.Most < pack.Top().Rested && len(lowPositives(p)) > 0 {
					return wiring.InterlockAuxPositive
				}
			case *wiring.Coil:
				if p.Graph.From(carrying(), pack.Plus).Has(e.Other(each)) {
					return wiring.InterlockReturn
				}
			}
		}
	}
	return usual
}

// controlBus is the voltage below which a supply counts as a 12 V bus: above 12 V
// lead-acid at charge, below any traction battery.
const controlBus = 20

// lowPositives lists the positives of the supplies of 12 V.
func lowPositives(p *rule.Pass) []wiring.NodeID {
	var low []wiring.NodeID
	for _, s := range p.Supplies() {
		if s.Own.Full > 6 && s.Top().Full < controlBus {
			low = append(low, s.Plus)
		}
	}
	return low
}

// lockout reports whether an edge is a contact that is there to stop the cart while it
// charges: worked by the plug, or by the presence of AC.
func lockout(e *path.Edge) bool {
	switch el := e.Element.(type) {
	case *wiring.Switch:
		return el.Control.Name == "plug"
	case *wiring.Driver:
		return watchesAC(el.When) || chargerOf(el.Part)
	case *wiring.Contact:
		return chargerOf(el.Part)
	}
	return false
}

// isolator reports whether an edge is a hand switch that only takes the whole pack away.
func isolator(e *path.Edge) bool {
	if e.Sort != path.Switch {
		return false
	}
	switch e.Control().Name {
	case "pack", "mated", "breaker", "service":
		return true
	}
	return false
}

func watchesAC(c *wiring.Condition) bool {
	if c == nil {
		return false
	}
	if s, ok := c.Element.(*wiring.Sense); ok && s.AC {
		return true
	}
	for _, each := range c.Of {
		if watchesAC(each) {
			return true
		}
	}
	return false
}

func chargerOf(p *wiring.Part) bool {
	for _, el := range p.Elements {
		if _, ok := el.(*wiring.Charger); ok {
			return true
		}
	}
	return false
}

// clean passes conductors, fuses, what isolates the whole pack, and lockout contacts; for
// a 12 V control positive also the key and whatever else a hand closes on its way.
func (n interlockNeed) clean(closed path.Setting) path.Through {
	return path.Through{Sorts: path.Metal | path.Driver, Setting: closed}.Only(func(e *path.Edge) bool {
		if e.Sort&(path.Conductors|path.Fuse) != 0 || lockout(e) || isolator(e) {
			return true
		}
		return e.Sort == path.Switch && n.kind == wiring.InterlockAuxPositive
	})
}

// met reports whether a search found what is needed.
func (n interlockNeed) met(r *path.Reach) bool {
	for _, each := range n.nodes {
		if r.Has(each) {
			return true
		}
	}
	return false
}
