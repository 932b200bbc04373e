package figure

import (
	"math"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// Stage is a part of a capacitor's way in which nothing in the network acts, so that what
// it sees is a voltage behind a resistance (Thevenin's theorem) and its own voltage
//
//	v(t) = Final + (From - Final) exp(-t / Tau),  Tau = Ohms × farads
//
// (R C charging law). The current is then a straight line of the voltage, from First at
// From to Last at To.
type Stage struct {
	From, To    quantity.Volt   // of the capacitor's first node against its second
	First, Last quantity.Ampere // into the capacitor, at the two
	Lasts       quantity.Second // +Inf: it only ever comes near To
	Farads      quantity.Farad
	Quick       bool             // through what is closed at last, so quickly that nothing acts meanwhile
	Acts        []wiring.Element // what acts at the end of it; none at the last one

	begin, end sample // Quick: none
}

// newStage is the way between two samples in one regime.
func newStage(a, b sample, farads quantity.Farad) Stage {
	s := Stage{
		From: quantity.Volt(a.volts), To: quantity.Volt(b.volts),
		First: quantity.Ampere(a.amps), Last: quantity.Ampere(b.amps),
		Farads: farads, begin: a, end: b,
	}
	s.Lasts = s.until(s.To)
	return s
}

// onto lengthens the stage along its line to a voltage that is a little further on.
func (s Stage) onto(v quantity.Volt) Stage {
	s.Last = s.amps(v)
	s.To = v
	s.Lasts = s.until(v)
	return s
}

// follows reports whether a stage goes on along the line of another.
func (s Stage) follows(before Stage) bool {
	ahead, tolerance := before.amps(s.To), 1e-6*max(s.First, -s.First)
	return s.begin.point != nil && before.begin.point != nil && before.Last != before.First &&
		(s.To > s.From) == (before.To > before.From) &&
		max(s.Last-ahead, ahead-s.Last) <= tolerance
}

// slope is how the current changes with the voltage, in siemens; negative in a network
// that charges a capacitor ever more slowly.
func (s Stage) slope() float64 {
	if s.To == s.From {
		return 0
	}
	return float64(s.Last-s.First) / float64(s.To-s.From)
}

// Ohms is the resistance through which the capacitor is charged; +Inf at a constant
// current, negative where a constant power takes it down ever faster.
func (s Stage) Ohms() quantity.Ohm { return quantity.Ohm(-1 / s.slope()) }

// Tau is the time constant, Ohms × farads.
func (s Stage) Tau() quantity.Second {
	return quantity.Second(float64(s.Ohms()) * float64(s.Farads))
}

// Final is the voltage towards which the capacitor goes in this stage.
func (s Stage) Final() quantity.Volt {
	return s.From + quantity.Volt(float64(s.First)*float64(s.Ohms()))
}

// until is the time from From to a voltage further on, C ∫ dv / i(v); +Inf if it is not
// reached. Along a straight line i(v) that is C Δv ln(i2/i1) / (i2 - i1).
func (s Stage) until(v quantity.Volt) quantity.Second {
	dv, first := float64(v-s.From), float64(s.First)
	if dv == 0 {
		return 0
	}
	change := dv * s.slope() / first // relative change of the current on the way
	if dv*first < 0 || first == 0 || change <= -1 {
		return quantity.Second(math.Inf(1))
	}
	factor := 1.0
	if change != 0 {
		factor = math.Log1p(change) / change
	}
	return quantity.Second(float64(s.Farads) * dv / first * factor)
}

// at is the voltage a time after the beginning, within the stage.
func (s Stage) at(t quantity.Second) quantity.Volt {
	x := s.slope() * float64(t) / float64(s.Farads)
	growth := 1.0
	if x != 0 {
		growth = math.Expm1(x) / x
	}
	return s.From + quantity.Volt(float64(s.First)*float64(t)/float64(s.Farads)*growth)
}

// amps is the current into the capacitor at a voltage on the way.
func (s Stage) amps(v quantity.Volt) quantity.Ampere {
	return s.First + quantity.Ampere(float64(v-s.From)*s.slope())
}

// reaches reports whether the stage passes a voltage, or ends at it.
func (s Stage) reaches(v quantity.Volt) bool {
	if s.From <= s.To {
		return s.From <= v && v <= s.To
	}
	return s.To <= v && v <= s.From
}
