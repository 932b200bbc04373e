package position

import (
	"fmt"
	"math"
	"slices"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/settle"
)

// SneakPath says that nothing is energised through another consumer or backwards through a
// device. It depends on amounts: all positions are settled.
func SneakPath() *Property {
	return &Property{
		ID:    "sneak-path",
		Title: "nothing is energised through another load or backwards through a device",
		Means: "Energised is a load with a twentieth of its power, a coil above its drop-out, a sense that is true because of the volts it sees, a converter that " +
			"runs. Each has a circuit of its own: from the positive of a supply that delivers, through conductors, whole fuses, closed switches, contacts and " +
			"drivers, and diodes in their direction, to the element, and on in the same way to the negative of that supply; and through no consumer, no sense and " +
			"no supply backwards. A resistor belongs to such a circuit if it is at most a tenth of what it feeds, or if nothing could ever feed the " +
			"element without it.",
		Judge: judgeSneak,
	}
}

// lit is the share of its power with which a load counts as energised: a lamp then glows.
const lit = 0.05

// litVolts is the voltage from which a resistive load without a working band counts as
// energised.
const litVolts = 1

// feedShare is how much of what it feeds a resistor may be to count as a conductor.
const feedShare = 0.1

func judgeSneak(c *Cart, p *settle.Point) []Violation {
	var vs []Violation
	own := c.plainFeeds(p)
	for _, part := range c.Harness.Parts {
		for _, e := range part.Elements {
			if energised(p, e) && !own.feeds(p, e) && c.sneaks(p, e) {
				vs = append(vs, c.sneak(p, e))
			}
		}
	}
	return vs
}

// energised reports whether something is on, or more than a little so.
func energised(p *settle.Point, e wiring.Element) bool {
	switch e := e.(type) {
	case *wiring.Load:
		return isLit(p, e)
	case *wiring.Coil:
		return isDrawn(p, e)
	case *wiring.Sense:
		return !e.AC && e.Above != 0 && p.Holds(e)
	case *wiring.Converter:
		return p.Holds(e)
	}
	return false
}

func isLit(p *settle.Point, l *wiring.Load) bool {
	volts := math.Abs(float64(p.ElementVolts(l)))
	if !p.Holding(l.When) || p.ElementAmps(l) == 0 {
		return false
	}
	if l.Works.Low <= 0 {
		return volts >= litVolts
	}
	// Below its band a load is a resistor, and its power goes with the square of the voltage.
	return volts >= float64(l.Works.Low)*math.Sqrt(lit)
}

// isDrawn reports whether a coil sees its drop-out voltage: a contact that is closed stays
// so. A drop-out that is not stated is a quarter of the pull-in; from memory.
func isDrawn(p *settle.Point, k *wiring.Coil) bool {
	volts := float64(p.ElementVolts(k))
	if !k.Polarised {
		volts = math.Abs(volts)
	}
	drop := float64(k.DropOut)
	if drop <= 0 {
		drop = float64(k.PullIn) / 4
	}
	return drop > 0 && volts >= drop
}

// plain is what hangs together by closed metal and drivers alone: most circuits of a cart
// need no more, and are found by two look-ups.
type plain struct {
	island
	supplies []*path.Supply // those that deliver
}

func (c *Cart) plainFeeds(p *settle.Point) plain {
	may := func(e *path.Edge) bool {
		return e.Sort&(path.Metal|path.Driver) != 0 && (e.Sort != path.Fuse || p.Holds(e.Element))
	}
	own := plain{island: islands(c.Graph, may, path.InState(p.State, p.Holds))}
	for _, s := range c.Supplies {
		if delivers(p, s.Element) {
			own.supplies = append(own.supplies, s)
		}
	}
	return own
}

func (own plain) feeds(p *settle.Point, e wiring.Element) bool {
	high, low, ok := highAndLow(p, e)
	return ok && slices.ContainsFunc(own.supplies, func(s *path.Supply) bool {
		return own.together(s.Plus, high) && own.together(low, s.Minus)
	})
}

// sneaks reports whether something that is energised has no circuit of its own.
func (c *Cart) sneaks(p *settle.Point, e wiring.Element) bool {
	small := feedShare * resistance(p, e)
	if _, ok := c.feed(p, e, small); ok {
		return false
	}
	if _, ok := c.feed(p, e, anyOhms); !ok {
		return true
	}
	high, low, _ := highAndLow(p, e)
	_, could := c.circuit(low, high, couldFeed(small))
	return could
}

func (c *Cart) sneak(p *settle.Point, e wiring.Element) Violation {
	return Violation{
		Subject: e.Base().Ref(),
		Element: e,
		Says:    fmt.Sprintf("%s sees %v, and has no circuit of its own.", e.Base().Ref(), p.ElementVolts(e)),
		Ways: func() []Way {
			high, low, _ := highAndLow(p, e)
			way, ok := c.circuit(low, high, flows(p, e))
			if !ok {
				return nil
			}
			return []Way{way}
		},
	}
}
