package diagnosis

import (
	"fmt"
	"slices"
	"strings"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/symptom"
)

// Reading is a measurement that was taken.
type Reading struct {
	Measurement
	Volts quantity.Volt
}

// Case is one cart with one thing wrong. It is not safe for concurrent use.
type Case struct {
	Table    *Table
	Saw      []symptom.Complaint // what the owner has seen
	SawNot   []symptom.Complaint // what is not so
	Readings []Reading

	skipped map[string]bool // names of measurements that cannot be taken
	extra   []*Candidate    // pairs of faults, once asked for
	bins    []bin           // of a chart: by index of Readings, the values that count as read
}

// Open begins a case, with every single fault a candidate, and that nothing is wrong.
func (t *Table) Open() *Case { return &Case{Table: t, skipped: map[string]bool{}} }

// Complaints lists what an owner of this cart can have seen, gravest first, each once.
func (t *Table) Complaints() []symptom.Complaint { return t.complaints }

func (t *Table) findComplaints() []symptom.Complaint {
	byKey := map[string]symptom.Complaint{}
	for _, c := range t.Candidates {
		for _, k := range c.Complaints {
			if _, ok := byKey[k.Key()]; !ok {
				byKey[k.Key()] = k
			}
		}
	}
	var all []symptom.Complaint
	for _, s := range symptom.Symptoms() {
		var of []symptom.Complaint
		for _, k := range byKey {
			if k.Symptom.ID == s.ID {
				of = append(of, k)
			}
		}
		slices.SortFunc(of, func(a, b symptom.Complaint) int { return natural(a.Key(), b.Key()) })
		all = append(all, of...)
	}
	return all
}

func natural(a, b string) int {
	switch {
	case wiring.Less(a, b):
		return -1
	case wiring.Less(b, a):
		return 1
	}
	return 0
}

// Find finds the complaint that words mean: its key, or words of its text, all of which must
// be in it. The error names what there is to choose from.
func (t *Table) Find(words string) (symptom.Complaint, error) {
	var fit []symptom.Complaint
	for _, c := range t.Complaints() {
		if strings.EqualFold(c.Key(), words) || strings.EqualFold(c.Text(), words) {
			return c, nil
		}
		if holdsAll(c.Text()+" "+c.Key(), words) {
			fit = append(fit, c)
		}
	}
	switch len(fit) {
	case 1:
		return fit[0], nil
	case 0:
		return symptom.Complaint{}, fmt.Errorf("no fault of this cart shows as %q; it can show as: %s", words, texts(t.Complaints()))
	}
	return symptom.Complaint{}, fmt.Errorf("%q can mean several things: %s", words, texts(fit))
}

func texts(all []symptom.Complaint) string {
	var s []string
	for _, c := range all {
		s = append(s, fmt.Sprintf("%q", c.Text()))
	}
	return strings.Join(s, ", ")
}

// holdsAll reports whether a text holds every word of another, without regard to case.
func holdsAll(text, words string) bool {
	text = strings.ToLower(text)
	for _, w := range strings.Fields(strings.ToLower(words)) {
		if !strings.Contains(text, w) {
			return false
		}
	}
	return strings.TrimSpace(words) != ""
}

// Candidates lists what fits everything that was seen and read, likeliest first.
func (c *Case) Candidates() []*Candidate {
	var fit []*Candidate
	for _, k := range c.all() {
		if c.fits(k, -1) {
			fit = append(fit, k)
		}
	}
	slices.SortStableFunc(fit, func(a, b *Candidate) int {
		switch {
		case a.Weight() > b.Weight():
			return -1
		case a.Weight() < b.Weight():
			return 1
		}
		return 0
	})
	return fit
}

func (c *Case) all() []*Candidate {
	return append(c.Table.Candidates[:len(c.Table.Candidates):len(c.Table.Candidates)], c.extra...)
}

// fits reports whether a candidate shows what was seen and reads what was read, but for the
// reading of one index; -1: for all.
func (c *Case) fits(k *Candidate, but int) bool {
	for _, s := range c.Saw {
		if !shows(k, s) {
			return false
		}
	}
	for _, s := range c.SawNot {
		if shows(k, s) {
			return false
		}
	}
	for i, r := range c.Readings {
		expected := c.Table.Expected(k, r.Measurement)
		agrees := r.Agrees(expected, r.Volts)
		if c.bins != nil {
			agrees = c.bins[i].holds(expected)
		}
		if i != but && !agrees {
			return false
		}
	}
	return true
}

// Answer takes the owner's answer to a question.
func (c *Case) Answer(k symptom.Complaint, yes bool) {
	if yes {
		c.Saw = append(c.Saw, k)
	} else {
		c.SawNot = append(c.SawNot, k)
	}
}

// Shows reports whether a candidate shows a complaint.
func (c *Candidate) Shows(s symptom.Complaint) bool { return shows(c, s) }

func shows(k *Candidate, s symptom.Complaint) bool {
	return slices.ContainsFunc(k.Complaints, func(o symptom.Complaint) bool { return o.Key() == s.Key() })
}

// Contradicts lists the readings without which something would fit, where nothing fits all
// of them: one of these was taken in another state, at another place, or mistaken.
func (c *Case) Contradicts() []Reading {
	if len(c.Candidates()) > 0 {
		return nil
	}
	var odd []Reading
	for i, r := range c.Readings {
		for _, k := range c.all() {
			if c.fits(k, i) {
				odd = append(odd, r)
				break
			}
		}
	}
	return odd
}

// Skip leaves a measurement out: the place cannot be reached.
func (c *Case) Skip(m Measurement) { c.skipped[m.Name()] = true }

// SkipQuestion leaves a question out: nobody knows the answer.
func (c *Case) SkipQuestion(k symptom.Complaint) { c.skipped[k.Key()] = true }
