package failuremode

import (
	"context"
	"fmt"
	"math"
	"slices"
	"strings"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diagnosis"
	"github.com/lugwright/lugwright/wiring/fault"
	"github.com/lugwright/lugwright/wiring/symptom"
)

// Row is one failure mode of one item.
type Row struct {
	Item       string // "W37", "K1"
	Is         string // "Main solenoid", "G1.- to U1.B-"
	Mode       string // "wire open"
	Failure    string // the fault by name: "W37 open"
	Cause      string
	Local      string // what changes at the place itself; empty: nothing
	End        string // what the owner sees; empty: nothing
	Detection  string
	Limits     string // what limits the effect: the fuse that opens; empty: nothing need, or nothing does
	Severity   symptom.Severity
	Occurrence fault.Class

	Candidate *diagnosis.Candidate
}

// Analyse sets up the rows of a cart, in the order of the modes. The error is that of a
// context that ends.
func Analyse(ctx context.Context, h *wiring.Harness) ([]Row, error) {
	table, err := diagnosis.NewTable(ctx, h, diagnosis.Options{})
	if err != nil {
		return nil, err
	}
	return Rows(table), nil
}

// Rows sets up the rows of a table of faults.
func Rows(t *diagnosis.Table) []Row {
	var all []Row
	for _, k := range t.Candidates {
		if len(k.Faults) == 1 {
			all = append(all, row(t, k))
		}
	}
	return all
}

// Of narrows rows to what concerns a part: its own faults and those of its wires.
func Of(rows []Row, p *wiring.Part) []Row {
	return slices.DeleteFunc(slices.Clone(rows), func(r Row) bool { return !r.Candidate.Faults[0].Concerns(p) })
}

func row(t *diagnosis.Table, k *diagnosis.Candidate) Row {
	f := k.Faults[0]
	r := Row{
		Mode: f.Mode.Title, Failure: f.Name, Cause: f.Mode.Why, Occurrence: f.Mode.Class, Candidate: k,
	}
	r.Item, r.Is = item(f)
	var texts []string
	for _, c := range k.Complaints {
		texts = append(texts, c.Text())
		r.Severity = max(r.Severity, c.Symptom.Severity)
	}
	r.End = strings.Join(texts, "; ")
	r.Limits = limits(k)
	local, found := nearest(t, k)
	if found {
		r.Local = reading(t, k, local)
	}
	r.Detection = detection(t, k, local, found)
	if r.Severity == 0 {
		r.Severity = symptom.None
		if found {
			r.Severity = symptom.Latent
		}
	}
	return r
}

// item names what a fault is about.
func item(f fault.Fault) (name, is string) {
	if f.Part != nil {
		return f.Part.Designation, f.Part.Name()
	}
	var names []string
	for _, w := range f.Wires {
		names = append(names, w.Name())
	}
	w := f.Wires[0]
	return strings.Join(names, ", "), w.From.String() + " to " + w.To.String()
}

// limits names the fuses and protections that open.
func limits(k *diagnosis.Candidate) string {
	var names []string
	for _, e := range k.Opened() {
		name := e.Base().Part.Designation
		if f, ok := e.(*wiring.Fuse); ok {
			name = fault.FuseName(f)
		}
		if !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	if len(names) == 0 {
		return ""
	}
	return strings.Join(names, ", ") + " opens"
}

// nearest is the reading that is most changed at the item itself; else anywhere.
func nearest(t *diagnosis.Table, k *diagnosis.Candidate) (best diagnosis.Measurement, found bool) {
	most, at := 0.0, false
	for _, m := range t.Measurements() {
		was, now := t.Healthy(m), t.Expected(k, m)
		if m.Agrees(was, now) {
			continue
		}
		here := concerns(k.Faults[0], m)
		change := math.Abs(float64(now - was))
		if !found || here && !at || here == at && change > most*(1+1e-9) {
			best, found, most, at = m, true, change, here
		}
	}
	return best, found
}

// concerns reports whether a measurement is taken at what a fault is about.
func concerns(f fault.Fault, m diagnosis.Measurement) bool {
	if m.Wire != nil {
		return slices.Contains(f.Wires, m.Wire)
	}
	if m.Post != nil {
		return false
	}
	if m.Spot.Terminal.Part == f.Part {
		return true
	}
	return slices.ContainsFunc(f.Wires, func(w *wiring.Wire) bool {
		return w.From.Terminal == m.Spot.Terminal || w.To.Terminal == m.Spot.Terminal
	})
}

// reading says what a place reads instead of what it should.
func reading(t *diagnosis.Table, k *diagnosis.Candidate, m diagnosis.Measurement) string {
	was, now := float64(t.Healthy(m)), float64(t.Expected(k, m))
	if m.Wire != nil {
		return fmt.Sprintf("%s loses %.2f V instead of %.2f V (%s)", m.Where(), math.Abs(now), math.Abs(was), m.State.Name)
	}
	return fmt.Sprintf("%s reads %.1f V instead of %.1f V (%s)", m.Where(), now, was, m.State.Name)
}

// detection says who notices, and how.
func detection(t *diagnosis.Table, k *diagnosis.Candidate, m diagnosis.Measurement, found bool) string {
	switch {
	case len(k.Complaints) > 0:
		return "the driver, in " + k.Complaints[0].State.Name
	case found:
		return "a meter only: " + m.Where() + " in " + m.State.Name
	}
	return "not at all: inspection"
}
