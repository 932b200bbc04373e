package meter

import (
	"fmt"
	"math"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// Spot is somewhere to hold a red probe: a terminal, or one pole of a port.
type Spot struct {
	Name     string // "G1.+", "X1.ac.L"
	Terminal *wiring.Terminal
	Node     wiring.NodeID
}

// TestPoints lists the job's test points, in its order.
func (b *Bench) TestPoints() []Spot { return spots(b.Harness.TestPoints) }

// Terminals lists every terminal by part, in the order of parts.
func (b *Bench) Terminals() []Spot {
	var all []*wiring.Terminal
	for _, p := range b.Harness.Parts {
		all = append(all, p.Terminals...)
	}
	return spots(all)
}

// SpotsOf lists the places to probe at a terminal: itself, or the poles of a port; none at
// a port that carries data alone.
func SpotsOf(t *wiring.Terminal) []Spot {
	if t.Form.Type != wiring.Port {
		return []Spot{{Name: t.Ref(), Terminal: t, Node: t.Node}}
	}
	var all []Spot
	for _, p := range t.Poles {
		all = append(all, Spot{Name: t.Ref() + "." + p.Name, Terminal: t, Node: p.Node})
	}
	return all
}

func spots(ts []*wiring.Terminal) []Spot {
	var all []Spot
	for _, t := range ts {
		all = append(all, SpotsOf(t)...)
	}
	return all
}

// Reading is what a 10 Mohm meter shows at a place, after capacitors ran down.
type Reading struct {
	Volts    quantity.Volt // 0 where it floats
	Against  wiring.NodeID // where the black probe sits; NoNode: nowhere, for it floats
	Floating bool          // joined to nothing: a meter shows about 0, and that is no zero
	Mains    bool          // a pole of the mains, plugged in: alternating current, which is not solved
	Proof    Proof
}

// String is the reading as a meter shows it, to a tenth of a volt: "52.8 V",
// "0.0 V (floating)", or "mains".
func (r Reading) String() string {
	if r.Mains {
		return "mains"
	}
	text := Tenths(r.Volts) + " V"
	if r.Floating {
		text += " (floating)"
	}
	return text
}

// Tenths writes volts as the display of a meter on its 100 V range: "52.8", "0.0".
func Tenths(v quantity.Volt) string {
	// Rounding by hand keeps a minus from the zero.
	return fmt.Sprintf("%.1f", math.Round(float64(v)*10)/10+0)
}

// Read takes the reading at a terminal. Of a port it is that of the first pole; a port that
// carries data alone floats.
func (s *Sheet) Read(t *wiring.Terminal) Reading {
	if all := SpotsOf(t); len(all) > 0 {
		return s.ReadAt(all[0].Node)
	}
	return Reading{Against: wiring.NoNode, Floating: true}
}

// ReadAt takes the reading at a node.
func (s *Sheet) ReadAt(n wiring.NodeID) Reading {
	r := Reading{Against: s.Point.Against(n), Mains: s.mains.Has(n)}
	if r.Against == wiring.NoNode {
		r.Floating = true
		return r
	}
	r.Volts = s.Point.Reading(n)
	r.Proof = s.proof(n, r.Volts)
	return r
}

// Find lists the places that a person may mean by a word: a terminal, all poles of a port,
// or one ("X1.ac.L"). None if there is no such terminal, or it carries data alone.
func (b *Bench) Find(ref string) []Spot {
	if t := b.Harness.Terminal(ref); t != nil {
		return SpotsOf(t)
	}
	for _, spot := range b.Terminals() {
		if wiring.Fold(spot.Name) == wiring.Fold(ref) {
			return []Spot{spot}
		}
	}
	return nil
}
