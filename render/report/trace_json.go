package report

import (
	"io"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/meter"
	"github.com/lugwright/lugwright/wiring/path"
)

// Names and versions of the forms, as for [JSON]: a change that adds keys keeps the version.
const (
	traceFormat  = "lugwright trace"
	traceVersion = 1
)

// TraceJSON writes a trace for a program. The shape is described by trace.schema.json beside
// this file. The error is that of w.
func TraceJSON(w io.Writer, t Trace) error {
	b := t.Survey.Bench
	doc := jsonTraces{
		Format: traceFormat, Version: traceVersion,
		Program: jsonProgram{Name: "lugwright", Version: t.Version},
		Job:     jsonJobName{File: t.File, Number: b.Harness.Identity.Number},
		Traces:  []jsonTrace{},
		Failed:  jsonFailures(t.Survey),
	}
	for _, spot := range t.Spots {
		for _, s := range t.Survey.Sheets {
			doc.Traces = append(doc.Traces, jsonTraceOf(b, spot, s))
		}
	}
	return writeJSON(w, doc)
}

type jsonTraces struct {
	Format  string          `json:"format"`
	Version int             `json:"version"`
	Program jsonProgram     `json:"program"`
	Job     jsonJobName     `json:"job"`
	Traces  []jsonTrace     `json:"traces"`
	Failed  []jsonUnsettled `json:"unsettled"`
}

type jsonJobName struct {
	File   string `json:"file"`
	Number string `json:"number"`
}

type jsonTrace struct {
	State    string `json:"state"`
	Terminal string `json:"terminal"`
	jsonReading
	Verdict string     `json:"verdict"`
	Supply  string     `json:"supply,omitempty"`
	Feed    []jsonStep `json:"feed,omitempty"`
	Behind  []string   `json:"behind,omitempty"`
	Break   *jsonBreak `json:"break,omitempty"`
	Empty   string     `json:"emptyChannel,omitempty"`
}

// jsonReading is one reading; volts is null where it floats, and at mains.
type jsonReading struct {
	Volts    *float64 `json:"volts"`
	Against  string   `json:"against,omitempty"`
	Floating bool     `json:"floating"`
	Mains    bool     `json:"mains,omitempty"`
	Proof    string   `json:"proof"`
}

// jsonStep is one wire or element of a way.
type jsonStep struct {
	From string `json:"from"`
	Via  string `json:"via"`
	Sort string `json:"sort"`
	To   string `json:"to"`
}

type jsonBreak struct {
	Element string        `json:"element"`
	Type    string        `json:"type"`
	Before  string        `json:"before"`
	Reads   jsonReading   `json:"reads"`
	After   string        `json:"after"`
	Control *jsonPosition `json:"control,omitempty"`
	Wants   []jsonWant    `json:"waitsFor,omitempty"`
}

type jsonPosition struct {
	Name   string   `json:"name"`
	Stands string   `json:"stands"`
	Needs  []string `json:"needs"`
}

type jsonWant struct {
	Name    string     `json:"name"`
	Must    bool       `json:"must"`
	At      string     `json:"at,omitempty"`
	Sees    *float64   `json:"sees,omitempty"`
	Above   float64    `json:"above,omitempty"`
	Below   float64    `json:"below,omitempty"`
	Stands  string     `json:"stands,omitempty"`
	Needs   string     `json:"needs,omitempty"`
	Break   *jsonBreak `json:"break,omitempty"`
	WayBack *jsonBreak `json:"wayBack,omitempty"`
}

type jsonUnsettled struct {
	State string `json:"state"`
	Why   string `json:"why"`
}

func jsonFailures(v *meter.Survey) []jsonUnsettled {
	all := []jsonUnsettled{}
	for _, f := range v.Failed {
		all = append(all, jsonUnsettled{State: f.State, Why: f.Outcome.String() + ": " + f.Why})
	}
	return all
}

func jsonTraceOf(b *meter.Bench, spot meter.Spot, s *meter.Sheet) jsonTrace {
	t := s.Trace(spot.Node)
	one := jsonTrace{
		State: s.State.Name, Terminal: spot.Name, jsonReading: jsonReadingOf(b, t.Reading),
		Verdict: t.Verdict.String(), Feed: jsonSteps(b, t.Feed), Break: jsonBreakOf(b, t.Break),
	}
	if t.Supply != nil {
		one.Supply = t.Supply.Base().Ref()
	}
	for _, way := range t.Behind {
		one.Behind = append(one.Behind, way.String())
	}
	if t.Empty != nil {
		one.Empty = t.Empty.Ref()
	}
	return one
}

func jsonReadingOf(b *meter.Bench, r meter.Reading) jsonReading {
	one := jsonReading{Floating: r.Floating, Mains: r.Mains, Proof: r.Proof.String()}
	if !r.Floating && !r.Mains {
		one.Volts = thousandths(float64(r.Volts))
	}
	if r.Against != wiring.NoNode {
		one.Against = b.Name(r.Against)
	}
	return one
}

func jsonSteps(b *meter.Bench, way path.Path) []jsonStep {
	var all []jsonStep
	for _, s := range way.Steps {
		step := jsonStep{From: b.Name(s.From), To: b.Name(s.To), Sort: s.Edge.Sort.String()}
		if s.Edge.Wire != nil {
			step.Via = s.Edge.Wire.Name()
		} else {
			step.Via = s.Edge.Element.Base().Ref()
		}
		all = append(all, step)
	}
	return all
}

func jsonBreakOf(b *meter.Bench, c *meter.Break) *jsonBreak {
	if c == nil {
		return nil
	}
	one := &jsonBreak{
		Element: c.Element.Base().Ref(), Type: c.Element.Type(),
		Before: b.Name(c.Before), After: b.Name(c.After), Reads: jsonReadingOf(b, c.Reads),
		Wants: jsonWants(b, c.Wants),
	}
	if c.Control != nil {
		one.Control = &jsonPosition{Name: c.Control.Part.Designation + "." + c.Control.Name, Stands: c.Stands, Needs: c.Needs}
	}
	return one
}

func jsonWants(b *meter.Bench, all []meter.Want) []jsonWant {
	var list []jsonWant
	for _, w := range all {
		one := jsonWant{
			Name: w.Name, Must: w.Must, Above: float64(w.Above), Below: float64(w.Below), Stands: w.Stands, Needs: w.Needs,
			Break: jsonBreakOf(b, w.Break), WayBack: jsonBreakOf(b, w.Return),
		}
		if w.At != wiring.NoNode {
			one.At, one.Sees = b.Name(w.At), thousandths(float64(w.Sees))
		}
		list = append(list, one)
	}
	return list
}
