package diagnosis

import (
	"cmp"
	"context"
	"slices"

	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/symptom"
)

// Entry of a symptom chart: one complaint, and what can be behind it.
type Entry struct {
	Complaint symptom.Complaint
	Causes    []Cause // likeliest first
}

// Cause is the faults that no meter tells apart, and what tells them from all others.
type Cause struct {
	Candidates []*Candidate // likeliest first
	Clues      []Clue       // in the order in which to look
}

// Weight is how likely a cause is, beside the others of its entry.
func (c Cause) Weight() float64 {
	w := 0.0
	for _, k := range c.Candidates {
		w += k.Weight()
	}
	return w
}

// Measurements counts the readings among the clues.
func (c Cause) Measurements() int {
	n := 0
	for _, clue := range c.Clues {
		if clue.Question == nil {
			n++
		}
	}
	return n
}

// Clue is a step with its answer.
type Clue struct {
	Step
	Volts quantity.Volt // of a measurement: what it reads, to within its tolerance
	Yes   bool          // of a question
}

// Chart works out for every complaint the shortest ways to its causes. The error is that of
// a context that ends.
func (t *Table) Chart(ctx context.Context) ([]Entry, error) {
	var all []Entry
	for _, k := range t.complaints {
		c := t.Open()
		c.Saw = []symptom.Complaint{k}
		g := &growing{ctx: ctx}
		g.grow(c, nil)
		if g.err != nil {
			return nil, g.err
		}
		slices.SortStableFunc(g.causes, func(a, b Cause) int { return cmp.Compare(b.Weight(), a.Weight()) })
		all = append(all, Entry{k, g.causes})
	}
	return all, nil
}

// growing is the tree of one complaint as it grows.
type growing struct {
	ctx    context.Context
	causes []Cause
	err    error
}

// grow asks what a case asks next, and goes on with each answer that some candidate gives.
func (g *growing) grow(c *Case, clues []Clue) {
	if g.err = g.ctx.Err(); g.err != nil {
		return
	}
	step, ok := c.Next()
	if !ok {
		g.causes = append(g.causes, Cause{c.Candidates(), slices.Clone(clues)})
		return
	}
	for _, branch := range c.answers(step) {
		g.grow(branch.with, append(clues, branch.clue))
	}
}

// branch is a case with one more answer.
type branch struct {
	with *Case
	clue Clue
}

// answers lists the cases that the answers to a step lead to.
func (c *Case) answers(s Step) []branch {
	var all []branch
	if s.Question != nil {
		for _, yes := range []bool{true, false} {
			n := c.copy()
			n.Answer(*s.Question, yes)
			all = append(all, branch{n, Clue{Step: s, Yes: yes}})
		}
		return all
	}
	for _, bin := range newSplitter(c.Table, c.Candidates()).bins(s.Measurement) {
		n := c.copy()
		n.Readings = append(n.Readings, Reading{s.Measurement, bin.middle()})
		n.bins = append(n.bins, bin)
		all = append(all, branch{n, Clue{Step: s, Volts: bin.middle()}})
	}
	return all
}

// bin is a run of expected values that a meter does not tell apart.
type bin struct{ low, high quantity.Volt }

func (b bin) middle() quantity.Volt { return (b.low + b.high) / 2 }

// holds reports whether a value is in the bin.
func (b bin) holds(v quantity.Volt) bool { return b.low <= v && v <= b.high }

func (c *Case) copy() *Case {
	n := *c
	n.Saw, n.SawNot = slices.Clone(c.Saw), slices.Clone(c.SawNot)
	n.Readings, n.bins = slices.Clone(c.Readings), slices.Clone(c.bins)
	return &n
}
