package diagnosis

import (
	"cmp"
	"math"
	"slices"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/symptom"
)

// leastBits is the information below which a measurement is not worth taking.
const leastBits = 1e-6

// Step is what to do next: a measurement to take, or a question to the owner.
type Step struct {
	Measurement Measurement
	Question    *symptom.Complaint // nil: take the measurement
	Bits        float64            // what it is expected to yield
}

// asking is the trouble of a question, beside that of measurements: one may have to try it
// out.
const asking = 0.4

// Next is the step that tells the candidates apart best for its trouble. ok is false if none
// tells them apart.
func (c *Case) Next() (best Step, ok bool) {
	candidates := c.Candidates()
	if len(candidates) < 2 {
		return Step{}, false
	}
	value := 0.0
	take := func(s Step, cost float64) {
		if v := s.Bits / cost; s.Bits >= leastBits && v > value*(1+1e-9) {
			best, value, ok = s, v, true
		}
	}
	s := newSplitter(c.Table, candidates)
	for _, k := range c.Table.complaints {
		if !c.asked(k) && !c.skipped[k.Key()] {
			take(Step{Question: &k, Bits: s.shown(k)}, asking)
		}
	}
	last := c.standing()
	for _, m := range c.Table.measurements {
		if !c.skipped[m.Name()] && !c.taken(m) {
			take(Step{Measurement: m, Bits: s.bits(m)}, m.cost(last, c.Table.moves[m.state]))
		}
	}
	return best, ok
}

// asked reports whether the owner has answered already.
func (c *Case) asked(k symptom.Complaint) bool {
	same := func(o symptom.Complaint) bool { return o.Key() == k.Key() }
	return slices.ContainsFunc(c.Saw, same) || slices.ContainsFunc(c.SawNot, same)
}

func (c *Case) taken(m Measurement) bool {
	return slices.ContainsFunc(c.Readings, func(r Reading) bool { return r.Name() == m.Name() })
}

// standing is the state that the cart is in: that of the last reading, or where the first
// complaint shows.
func (c *Case) standing() *wiring.State {
	if n := len(c.Readings); n > 0 {
		return c.Readings[n-1].State
	}
	if len(c.Saw) > 0 {
		return c.Saw[0].State
	}
	return nil
}

// splitter finds how measurements tell candidates apart.
type splitter struct {
	table      *Table
	candidates []*Candidate
	values     []outcome
	total      float64
}

type outcome struct{ volts, weight float64 }

func newSplitter(t *Table, candidates []*Candidate) *splitter {
	s := &splitter{table: t, candidates: candidates, values: make([]outcome, len(candidates))}
	for _, k := range candidates {
		s.total += k.Weight()
	}
	return s
}

// bits is the entropy of the outcomes of a measurement. Values that a meter cannot tell
// apart, and all between them, are one outcome.
func (s *splitter) bits(m Measurement) float64 {
	if !s.sort(m) {
		return 0
	}
	bits, weight := 0.0, s.values[0].weight
	for i := 1; i < len(s.values); i++ {
		if s.apart(m, i) {
			bits += s.share(weight)
			weight = 0
		}
		weight += s.values[i].weight
	}
	return bits + s.share(weight)
}

// bins lists the outcomes of a measurement.
func (s *splitter) bins(m Measurement) []bin {
	s.sort(m)
	var all []bin
	for i, v := range s.values {
		volts := quantity.Volt(v.volts)
		if i == 0 || s.apart(m, i) {
			all = append(all, bin{volts, volts})
		}
		all[len(all)-1].high = volts
	}
	return all
}

// sort puts the values of a measurement in order, and reports whether they differ at all.
func (s *splitter) sort(m Measurement) bool {
	differ := false
	for i, k := range s.candidates {
		s.values[i] = outcome{float64(s.table.Expected(k, m)), k.Weight()}
		differ = differ || s.values[i].volts != s.values[0].volts
	}
	if differ {
		slices.SortFunc(s.values, func(a, b outcome) int { return cmp.Compare(a.volts, b.volts) })
	}
	return differ
}

// apart reports whether a meter tells a value from the one before it.
func (s *splitter) apart(m Measurement, i int) bool {
	return s.values[i].volts-s.values[i-1].volts > 2*m.tolerance(s.values[i].volts)
}

// shown is the entropy of the answer to whether a complaint shows.
func (s *splitter) shown(k symptom.Complaint) float64 {
	yes := 0.0
	for _, c := range s.candidates {
		if shows(c, k) {
			yes += c.Weight()
		}
	}
	if yes == 0 || yes == s.total {
		return 0
	}
	return s.share(yes) + s.share(s.total-yes)
}

func (s *splitter) share(weight float64) float64 {
	p := weight / s.total
	return -p * math.Log2(p)
}

// Outcome is what a measurement may read, and what is behind it.
type Outcome struct {
	Low, High  quantity.Volt
	Candidates []*Candidate // likeliest first
}

// Outcomes lists what a measurement may read with the candidates of a case, lowest first.
func (c *Case) Outcomes(m Measurement) []Outcome {
	candidates := c.Candidates()
	var all []Outcome
	for _, b := range newSplitter(c.Table, candidates).bins(m) {
		o := Outcome{Low: b.low, High: b.high}
		for _, k := range candidates {
			if b.holds(c.Table.Expected(k, m)) {
				o.Candidates = append(o.Candidates, k)
			}
		}
		all = append(all, o)
	}
	return all
}
