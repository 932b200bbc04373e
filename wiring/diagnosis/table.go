package diagnosis

import (
	"context"
	"math"
	"slices"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/fault"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/symptom"
)

// Options says what a table is made of. The zero Options are the usual ones.
type Options struct {
	Modes  []*fault.Mode   // nil: all
	States []*wiring.State // nil: those of the harness
	SOC    quantity.Ratio  // how full the pack is; 0: as the states say

	// JustWired says that the cart was never right since it was last worked on: what hands
	// do wrong is as likely as what is common.
	JustWired bool
}

// Candidate is something that may be wrong with the cart.
type Candidate struct {
	Faults     []fault.Fault // none: nothing is wrong
	Complaints []symptom.Complaint

	seen   []fault.Seen // by state
	weight float64
}

// Name is what is wrong, in a few words.
func (c *Candidate) Name() string {
	switch len(c.Faults) {
	case 0:
		return "nothing is wrong"
	case 1:
		return c.Faults[0].Name
	}
	return c.Faults[0].Name + ", and " + c.Faults[1].Name
}

// Weight is how likely the candidate is before anything was seen, in no particular unit.
func (c *Candidate) Weight() float64 { return c.weight }

// weigh is the weight of faults that come together.
func (o Options) weigh(faults []fault.Fault) float64 {
	w := 1.0
	for i, f := range faults {
		class := f.Mode.Class
		if o.JustWired && f.Mode.Assembly {
			class = fault.Common
		}
		w *= class.Weight()
		if i > 0 {
			w /= pairsPerSingle
		}
	}
	return w
}

// pairsPerSingle is how much rarer two faults at once are than one of them: our own figure.
const pairsPerSingle = 100

// Table is every single fault of a cart and what it reads. It does not change and may be
// used by many goroutines at once.
type Table struct {
	Cart       *fault.Cart
	States     []*wiring.State
	Candidates []*Candidate // the healthy cart first

	options      Options
	healthy      []fault.Seen
	measurements []Measurement
	complaints   []symptom.Complaint
	moves        []bool // by state: the healthy cart moves
}

// NewTable settles every fault of a cart in every state. The error is that of a context
// that ends.
func NewTable(ctx context.Context, h *wiring.Harness, o Options) (*Table, error) {
	if o.Modes == nil {
		o.Modes = fault.Modes()
	}
	if o.States == nil {
		o.States = h.States
	}
	states := charged(o.States, o.SOC)
	cart := fault.NewCart(h)
	survey, err := cart.Survey(ctx, cart.Faults(o.Modes), states)
	if err != nil {
		return nil, err
	}
	t := &Table{Cart: cart, States: states, options: o, healthy: survey.Healthy}
	t.Candidates = append(t.Candidates, &Candidate{seen: survey.Healthy, weight: o.weigh(nil)})
	for _, row := range survey.Rows {
		t.Candidates = append(t.Candidates, t.candidate(row.Seen, row.Fault))
	}
	for i := range states {
		t.moves = append(t.moves, survey.Healthy[i].Traction)
	}
	t.measurements = t.findMeasurements()
	t.complaints = t.findComplaints()
	return t, nil
}

func (t *Table) candidate(seen []fault.Seen, faults ...fault.Fault) *Candidate {
	v := &symptom.View{Cart: t.Cart, Healthy: t.healthy, Now: seen}
	return &Candidate{Faults: faults, Complaints: symptom.Complaints(v), seen: seen, weight: t.options.weigh(faults)}
}

// charged is the states with a pack as full as is said.
func charged(states []*wiring.State, soc quantity.Ratio) []*wiring.State {
	if soc == 0 {
		return states
	}
	all := make([]*wiring.State, len(states))
	for i, s := range states {
		own := *s
		own.SOC = soc
		all[i] = &own
	}
	return all
}

func (t *Table) findMeasurements() []Measurement {
	var all []Measurement
	spots, posts := t.Cart.Spots(), t.posts()
	for i, s := range t.States {
		for k := range spots {
			m := Measurement{State: s, Spot: &spots[k], state: i, place: k}
			all = append(all, m)
			for _, post := range posts {
				if t.follows(post, m) {
					m.Post, m.post = &spots[post], post
					all = append(all, m)
				}
			}
		}
		for k, w := range t.Cart.Harness.Wires {
			if measurable(w) {
				all = append(all, Measurement{State: s, Wire: w, state: i, place: k})
			}
		}
	}
	return all
}

// posts lists the spots that are the positive of a battery or of the output of a converter.
func (t *Table) posts() []int {
	var all []int
	for k, s := range t.Cart.Spots() {
		for _, e := range s.Terminal.Part.Elements {
			if plus, ok := positive(e); ok && t.Cart.Graph.SameCopper(plus, s.Node) {
				all = append(all, k)
				break
			}
		}
	}
	return all
}

func positive(e wiring.Element) (wiring.NodeID, bool) {
	switch e := e.(type) {
	case *wiring.Source:
		return e.A, true
	case *wiring.Converter:
		return e.OutA, true
	}
	return wiring.NoNode, false
}

// behindPost is the most that is lost between the post of a supply and a spot that it feeds.
const behindPost = 1.5

// follows reports whether a spot is live from a post on a healthy cart, with next to nothing
// lost on the way.
func (t *Table) follows(post int, m Measurement) bool {
	volts := t.healthy[m.state].Volts
	spots := t.Cart.Spots()
	lost := math.Abs(float64(volts[post] - volts[m.place]))
	return post != m.place && spots[post].Black == m.Spot.Black && volts[post] > nearZero && lost < behindPost
}

// Measurements lists all readings that can be taken.
func (t *Table) Measurements() []Measurement { return t.measurements }

// Expected is what a measurement reads with a candidate; 0 where the cart does not settle or
// the place floats.
func (t *Table) Expected(c *Candidate, m Measurement) quantity.Volt {
	seen := &c.seen[m.state]
	switch {
	case m.Wire != nil:
		return seen.Wires[m.place].Drop
	case m.Post != nil:
		return seen.Volts[m.post] - seen.Volts[m.place]
	}
	return seen.Volts[m.place]
}

// Healthy is what a measurement reads on a cart with nothing wrong.
func (t *Table) Healthy(m Measurement) quantity.Volt { return t.Expected(t.Candidates[0], m) }

// Differs reports whether a candidate can be told from the healthy cart at all: by a
// complaint or by a reading.
func (t *Table) Differs(c *Candidate) bool {
	if len(c.Complaints) > 0 {
		return true
	}
	for _, m := range t.measurements {
		if !m.Agrees(t.Healthy(m), t.Expected(c, m)) {
			return true
		}
	}
	return false
}

// Opened lists the fuses that open and the sources that trip with a candidate, each once.
func (c *Candidate) Opened() []wiring.Element {
	var all []wiring.Element
	for _, s := range c.seen {
		for _, e := range s.Opened {
			if !slices.Contains(all, e) {
				all = append(all, e)
			}
		}
	}
	return all
}

// Probes names the terminals that the two probes sit on.
func (t *Table) Probes(m Measurement) (red, black string) {
	switch {
	case m.Wire != nil:
		return m.Wire.From.String(), m.Wire.To.String()
	case m.Post != nil:
		return m.Post.Name, m.Spot.Name
	}
	return m.Spot.Name, t.Cart.Graph.Name(m.Spot.Black)
}
