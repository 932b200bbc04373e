package position

import (
	"fmt"
	"math"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/settle"
)

// standing is the current above which a load that is on with the key off is not standby:
// normal standby of a whole cart is 15 to 40 mA. Common practice, no published source.
const standing = quantity.Ampere(0.04)

// OffMeansOff says that nothing that the key should switch is alive with the key off. It
// depends on amounts: all positions with the key off are settled.
func OffMeansOff() *Property {
	return &Property{
		ID:    "off-means-off",
		Title: "with the key off nothing that it should switch is alive",
		Means: "With every key off, in any position of all other controls: no converter runs that a sense lets run, no coil is energised, and no load " +
			"that takes more than 40 mA is on; save in parts that are declared always-on, and loads that such a part feeds. Loads behind a converter " +
			"that should be off are not told apart from it.",
		Premise: func(_ *Cart, s *Space) ([]*Space, string) {
			off, err := s.all("key", "off")
			if err != nil {
				return nil, err.Error()
			}
			return []*Space{off}, ""
		},
		Judge: judgeOff,
	}
}

func judgeOff(c *Cart, p *settle.Point) []Violation {
	var vs []Violation
	for _, part := range c.Harness.Parts {
		if part.AlwaysOn != "" {
			continue
		}
		for _, e := range part.Elements {
			if p.Holds(e) && c.shouldBeOff(p, e) {
				vs = append(vs, c.alive(p, e))
			}
		}
	}
	return vs
}

// shouldBeOff reports whether an element that holds should not with the key off.
func (c *Cart) shouldBeOff(p *settle.Point, e wiring.Element) bool {
	switch e := e.(type) {
	case *wiring.Converter:
		return switchedConverter(e)
	case *wiring.Coil:
		return true
	case *wiring.Load:
		if math.Abs(float64(p.ElementAmps(e))) <= float64(standing) {
			return false
		}
		way, ok := c.feed(p, e, anyOhms)
		return !ok || !c.explained(p, way.Feed.Begin)
	}
	return false
}

// switchedConverter reports whether a sense decides over a converter.
func switchedConverter(v *wiring.Converter) bool {
	found := false
	eachElement(v.When, func(e wiring.Element) {
		_, sense := e.(*wiring.Sense)
		found = found || sense
	})
	return found
}

// explained reports whether the supply with a positive is on for a reason of its own: its
// part is always on, or it should be off itself.
func (c *Cart) explained(p *settle.Point, plus wiring.NodeID) bool {
	for _, s := range c.Supplies {
		if s.Plus != plus || !p.Holds(s.Element) {
			continue
		}
		v, converter := s.Element.(*wiring.Converter)
		if s.Element.Base().Part.AlwaysOn != "" || converter && switchedConverter(v) {
			return true
		}
	}
	return false
}

// alive says what is alive. Of a converter the first thing to explain is what lets it run.
func (c *Cart) alive(p *settle.Point, e wiring.Element) Violation {
	v := Violation{Subject: e.Base().Ref(), Element: e}
	part := titled(e.Base().Part)
	switch e := e.(type) {
	case *wiring.Converter:
		v.Says = fmt.Sprintf("%s runs with the key off: its input takes %v.", part, p.InputAmps(e))
		v.Ways = func() []Way { return c.because(p, letBy(p, e)) }
	case *wiring.Coil:
		v.Says = fmt.Sprintf("The coil of %s is energised with the key off, at %v.", part, p.ElementVolts(e))
		v.Ways = func() []Way { return c.because(p, e) }
	default:
		v.Says = fmt.Sprintf("%s is on with the key off: it takes %v.", part, quantity.Ampere(math.Abs(float64(p.ElementAmps(e)))))
		v.Ways = func() []Way { return c.because(p, e) }
	}
	return v
}

// letBy is the first sense that lets a converter run.
func letBy(p *settle.Point, v *wiring.Converter) wiring.Element {
	var by wiring.Element = v
	eachElement(v.When, func(e wiring.Element) {
		s, ok := e.(*wiring.Sense)
		if ok && !s.AC && by == wiring.Element(v) && p.Holds(s) {
			by = s
		}
	})
	return by
}

// eachElement calls f with each element that a condition names.
func eachElement(c *wiring.Condition, f func(wiring.Element)) {
	if c == nil {
		return
	}
	if c.Op == wiring.Holds && c.Element != nil {
		f(c.Element)
	}
	for _, of := range c.Of {
		eachElement(of, f)
	}
}
