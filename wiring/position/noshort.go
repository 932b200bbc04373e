package position

import (
	"fmt"
	"math"
	"slices"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/settle"
)

// loadOhms is the resistance from which a resistor counts as a load: far above a shunt or
// the field of a series motor, far below a pre-charge resistor. Common practice, no
// published source.
const loadOhms = quantity.Ohm(1)

// opensFor is how many times its rating the smallest fuse of a loop without a load carries
// in a short. Common practice, no published source.
const opensFor = 3

// NoShort says that no position joins the poles of a supply without a load between them. It
// depends on amounts; where no loop without a load can exist, whatever is closed, it is
// proved without settling anything.
func NoShort() *Property {
	return &Property{
		ID:    "no-short",
		Title: "no position shorts a supply",
		Means: "A loop leads from the positive of a supply to its negative through wires, fuses, closed switches, contacts and drivers, diodes in " +
			"their direction, resistors under 1 ohm and (from a battery) other batteries, and through no load; and in the moment before any fuse opens one of its " +
			"fuses carries more than three times its rating, or no fuse is in it and the battery gives more than it can (its trip, peak or " +
			"continuous current, or what 1 ohm would take), or the converter or charger is in its current limit. A loop that opens and closes " +
			"without end counts whatever it carries.",
		Prune: func(c *Cart, s *Space) ([]*Space, string) {
			if len(c.looped(nil)) == 0 {
				return nil, "no loop without a load can exist, whatever is closed"
			}
			return []*Space{s}, ""
		},
		May:       func(c *Cart, s *wiring.State) bool { return len(c.looped(mightBe(s))) > 0 },
		Network:   func(c *Cart) *settle.Network { return c.lasting().network },
		Unsettled: true,
		Judge:     judgeShort,
	}
}

// loadFree passes what is no load, but not the supply itself. What charges a battery has a
// load in it; of two batteries in parallel one may drive the other.
func loadFree(s *path.Supply, closed path.Setting) path.Through {
	t := path.Through{Sorts: path.Conducting | path.Resistor, Ohms: loadOhms, Setting: closed}
	if s.Battery() {
		t.Sorts |= path.Source
	}
	return t.Without(s.Element)
}

// looped lists the supplies that have a loop without a load. A nil closed closes all that
// opens and closes.
func (c *Cart) looped(closed path.Setting) []*path.Supply {
	if closed == nil {
		closed = func(*path.Edge) bool { return true }
	}
	near := islands(c.Graph, func(e *path.Edge) bool {
		return e.Sort&(path.Conducting|path.Source) != 0 || e.Sort == path.Resistor && resistorOhms(e) <= float64(loadOhms)
	}, closed)
	var all []*path.Supply
	for _, s := range c.Supplies {
		if near.together(s.Plus, s.Minus) && c.Graph.From(loadFree(s, closed), s.Plus).Has(s.Minus) {
			all = append(all, s)
		}
	}
	return all
}

func judgeShort(c *Cart, p *settle.Point) []Violation {
	var vs []Violation
	for _, s := range c.looped(at(p)) {
		if !p.Holds(c.lasting().of(s.Element)) {
			continue // it drives nothing
		}
		short := &shorted{cart: c, point: p, supply: s}
		if way, says, ok := short.find(); ok {
			vs = append(vs, Violation{
				Subject: s.Element.Base().Ref(),
				Element: s.Element,
				Says:    fmt.Sprintf("The poles of %s are joined without a load: %s.", s.Element.Base().Part.Designation, says),
				Ways:    func() []Way { return []Way{{Feed: way, Back: c.path(way.End, nil)}} },
			})
		}
	}
	return vs
}

// shorted looks at the loops of one supply that has some.
type shorted struct {
	cart   *Cart
	point  *settle.Point
	supply *path.Supply
}

func (s *shorted) find() (way path.Path, says string, ok bool) {
	if way, ok = s.bare(); ok {
		if says, ok = s.exceeds(); ok {
			return way, says, true
		}
	}
	for _, f := range s.fuses() {
		amps := s.amps(f)
		if math.Abs(float64(amps)) <= opensFor*float64(f.Rating) {
			continue
		}
		if way, ok = s.by(f, amps); ok {
			return way, fmt.Sprintf("%s (%v) carries %v", f.Part.Designation, f.Rating, amps), true
		}
	}
	if s.point.Outcome == settle.Chatters {
		if way, ok = s.alternating(); ok {
			return way, s.point.Why, true
		}
	}
	if _, battery := s.supply.Element.(*wiring.Source); !battery && s.limits() {
		way, ok = s.cart.Graph.From(s.through(), s.supply.Plus).To(s.supply.Minus)
		return way, fmt.Sprintf("it gives no more than %v", s.supply.Limit), ok
	}
	return path.Path{}, "", false
}

func (s *shorted) through() path.Through { return loadFree(s.supply, at(s.point)) }

// bare is a loop without a fuse.
func (s *shorted) bare() (path.Path, bool) {
	t := s.through()
	t.Sorts &^= path.Fuse
	return s.cart.Graph.From(t, s.supply.Plus).To(s.supply.Minus)
}

// exceeds reports whether the supply gives more than it can.
func (s *shorted) exceeds() (string, bool) {
	source, battery := s.supply.Element.(*wiring.Source)
	if !battery {
		return fmt.Sprintf("it gives no more than %v", s.supply.Limit), s.limits()
	}
	amps, most := -s.amps(source), canGive(source)
	return fmt.Sprintf("it gives %v", amps), math.Abs(float64(amps)) > float64(most)
}

func (s *shorted) limits() bool { return slices.Contains(s.point.Limiting(), s.supply.Element) }

// canGive is the most that a battery can give by what its kind says, the first that it
// does say.
func canGive(b *wiring.Source) quantity.Ampere {
	for _, amps := range []quantity.Ampere{b.Trips, b.Peak.Amps, b.Discharge} {
		if amps > 0 {
			return amps
		}
	}
	return quantity.Ampere(float64(settle.OpenCircuit(b, 1)) / float64(loadOhms))
}

func (s *shorted) amps(e wiring.Element) quantity.Ampere {
	return s.point.ElementAmps(s.cart.lasting().of(e))
}

// fuses lists the fuses that lie on a loop.
func (s *shorted) fuses() []*wiring.Fuse {
	closed := at(s.point)
	sorts := s.through().Sorts
	may := func(e *path.Edge) bool {
		switch {
		case e.Sort&sorts == 0 || e.Element == s.supply.Element && e.Sort == path.Source:
			return false
		case e.Sort&(path.Switch|path.Contact|path.Driver) != 0:
			return closed(e)
		}
		return resistorOhms(e) <= float64(loadOhms)
	}
	var fuses []*wiring.Fuse
	for _, component := range between(s.cart.Graph, may, s.supply.Plus, s.supply.Minus) {
		for _, e := range component {
			if f, ok := e.Element.(*wiring.Fuse); ok && f.Rating > 0 {
				fuses = append(fuses, f)
			}
		}
	}
	return fuses
}

// by is a loop through a fuse in the direction of its current, meeting no node twice if
// the shortest way to the fuse leaves one free.
func (s *shorted) by(f *wiring.Fuse, amps quantity.Ampere) (path.Path, bool) {
	in, out := f.A, f.B
	if amps < 0 {
		in, out = out, in
	}
	t := s.through()
	to, ok := s.cart.Graph.From(t.Without(f), s.supply.Plus).To(in)
	if !ok {
		return path.Path{}, false
	}
	over, ok := s.cart.Graph.From(path.Through{Sorts: path.Fuse}.Only(func(e *path.Edge) bool { return e.Element == f }), in).To(out)
	if !ok {
		return path.Path{}, false
	}
	met := map[wiring.NodeID]bool{s.supply.Plus: true}
	for _, step := range to.Steps {
		met[step.To] = true
	}
	back, ok := s.cart.Graph.From(t.Only(func(e *path.Edge) bool { return !met[e.A] && !met[e.B] }), out).To(s.supply.Minus)
	if !ok {
		back, ok = s.cart.Graph.From(t.Without(f), out).To(s.supply.Minus)
	}
	return to.Then(over).Then(back), ok
}

// alternating is a loop that passes something which opens and closes without end.
func (s *shorted) alternating() (path.Path, bool) {
	still := s.through().Only(func(e *path.Edge) bool { return e.Element == nil || !alternates(s.point, e.Element) })
	if s.cart.Graph.From(still, s.supply.Plus).Has(s.supply.Minus) {
		return path.Path{}, false // judged by what it carries
	}
	return s.cart.Graph.From(s.through(), s.supply.Plus).To(s.supply.Minus)
}
