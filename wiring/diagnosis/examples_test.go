package diagnosis_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"github.com/lugwright/lugwright/wiring/diagnosis"
	"github.com/lugwright/lugwright/wiring/job/jobtest"
)

// mostMeasurements is after how many readings the true cause must be among a group that no
// meter tells apart further.
const mostMeasurements = 10

// Every fault that can be noticed at all is found: the owner says the gravest thing that it
// does, the meter is played by the solver, and what is asked is what the case asks next.
func TestEveryFaultIsFound(t *testing.T) {
	for _, name := range jobtest.Examples() {
		t.Run(name, func(t *testing.T) {
			if testing.Short() && name != jobtest.Examples()[0] {
				t.Skip("the first example is enough in a hurry")
			}
			table, err := diagnosis.NewTable(t.Context(), jobtest.Example(t, name), diagnosis.Options{})
			if err != nil {
				t.Fatal(err)
			}
			seen, silent := newFinder(table), newFinder(table)
			for _, k := range table.Candidates[1:] {
				switch {
				case len(k.Complaints) > 0:
					seen.find(t, k)
				case table.Differs(k):
					silent.find(t, k)
				}
			}
			t.Logf("%d faults", len(table.Candidates)-1)
			seen.tell(t, "an owner complains of")
			silent.tell(t, "only a meter shows")
			if seen.worst > mostMeasurements {
				t.Errorf("%s took %d measurements, more than %d", seen.hardest, seen.worst, mostMeasurements)
			}
		})
	}
}

type asked struct {
	step diagnosis.Step
	ok   bool
}

type finder struct {
	table               *diagnosis.Table
	next                map[string]asked // by candidates and state: what is asked is worked out once
	groups              map[string]bool
	found, steps, worst int
	hardest             string
}

func newFinder(t *diagnosis.Table) *finder {
	return &finder{table: t, next: map[string]asked{}, groups: map[string]bool{}}
}

func (r *finder) tell(t *testing.T, which string) {
	t.Logf("%d that %s, in %d groups: measurements mean %.1f, worst %d (%s), log2 of the groups %.1f",
		r.found, which, len(r.groups), float64(r.steps)/float64(r.found), r.worst, r.hardest, math.Log2(float64(len(r.groups))))
}

func (r *finder) find(t *testing.T, truth *diagnosis.Candidate) {
	c := r.table.Open()
	if len(truth.Complaints) > 0 {
		c.Saw = truth.Complaints[:1]
	}
	steps := 0
	for {
		left := c.Candidates()
		key := keyOf(left, c)
		a, known := r.next[key]
		if !known {
			a.step, a.ok = c.Next()
			r.next[key] = a
		}
		if !a.ok {
			if !slices.Contains(left, truth) {
				t.Errorf("%s is not among what is left: %v", truth.Name(), namesOf(left))
			}
			r.groups[keyOf(left, nil)] = true
			break
		}
		if q := a.step.Question; q != nil {
			c.Answer(*q, truth.Shows(*q))
			continue
		}
		steps++
		c.Readings = append(c.Readings, diagnosis.Reading{Measurement: a.step.Measurement, Volts: r.table.Expected(truth, a.step.Measurement)})
	}
	r.found++
	r.steps += steps
	if steps > r.worst {
		r.worst, r.hardest = steps, truth.Name()
	}
}

func keyOf(left []*diagnosis.Candidate, c *diagnosis.Case) string {
	key := fmt.Sprint(namesOf(left))
	if c == nil {
		return key
	}
	for _, k := range c.SawNot {
		key += " " + k.Key()
	}
	for _, r := range c.Readings {
		key += " " + r.Name()
	}
	return key
}

func namesOf(all []*diagnosis.Candidate) []string {
	var names []string
	for _, k := range all {
		names = append(names, k.Name())
	}
	return names
}
