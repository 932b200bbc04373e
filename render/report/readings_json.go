package report

import (
	"io"
	"math"

	"github.com/lugwright/lugwright/wiring/meter"
)

const (
	readingsFormat  = "lugwright readings"
	readingsVersion = 1
)

// ReadingsJSON writes readings for a program. The shape is described by readings.schema.json
// beside this file. The error is that of w.
func ReadingsJSON(w io.Writer, r Readings) error {
	b := r.Survey.Bench
	doc := jsonReadings{
		Format: readingsFormat, Version: readingsVersion,
		Program: jsonProgram{Name: "lugwright", Version: r.Version},
		Job:     jsonJobName{File: r.File, Number: b.Harness.Identity.Number},
		States:  []jsonSheet{},
		Failed:  jsonFailures(r.Survey),
	}
	for _, s := range r.Survey.Sheets {
		doc.States = append(doc.States, r.jsonSheet(s))
	}
	return writeJSON(w, doc)
}

type jsonReadings struct {
	Format  string          `json:"format"`
	Version int             `json:"version"`
	Program jsonProgram     `json:"program"`
	Job     jsonJobName     `json:"job"`
	States  []jsonSheet     `json:"states"`
	Failed  []jsonUnsettled `json:"unsettled"`
}

type jsonSheet struct {
	Name     string         `json:"name"`
	Charge   float64        `json:"charge"` // 1: full
	Readings []jsonSpot     `json:"readings"`
	Waits    []jsonWait     `json:"waits"`
	Mains    []jsonMain     `json:"mainContacts"`
	Live     []jsonLiveSpot `json:"live"`
}

type jsonSpot struct {
	Terminal string `json:"terminal"`
	Group    string `json:"group"`
	jsonReading
}

type jsonWait struct {
	Capacitor string   `json:"capacitor"`
	From      *float64 `json:"fromVolts"`
	To        *float64 `json:"toVolts"`
	Seconds   float64  `json:"seconds"`
	Terminals []string `json:"terminals"`
}

type jsonMain struct {
	Coil   string     `json:"coil"`
	Closed bool       `json:"closed"`
	Sees   *float64   `json:"sees"`
	Wants  []jsonWant `json:"waitsFor,omitempty"`
}

type jsonLiveSpot struct {
	Terminal string `json:"terminal"`
	jsonReading
	Feed   string   `json:"feed"`
	Behind []string `json:"behind,omitempty"`
}

func (r Readings) jsonSheet(s *meter.Sheet) jsonSheet {
	b := r.Survey.Bench
	one := jsonSheet{
		Name: s.State.Name, Charge: float64(b.Charge(s.State)),
		Readings: []jsonSpot{}, Waits: []jsonWait{}, Mains: []jsonMain{}, Live: []jsonLiveSpot{},
	}
	for _, g := range r.groups() {
		for _, spot := range g.spots {
			one.Readings = append(one.Readings, jsonSpot{spot.Name, g.name, jsonReadingOf(b, s.ReadAt(spot.Node))})
		}
	}
	for _, w := range r.Survey.Waits(s) {
		one.Waits = append(one.Waits, jsonWaitOf(w))
	}
	for _, h := range s.Holds() {
		one.Mains = append(one.Mains, jsonMain{h.Coil.Ref(), h.Closed, thousandths(float64(h.Sees)), jsonWants(b, h.Wants)})
	}
	for _, l := range s.Live() {
		spot := jsonLiveSpot{Terminal: l.Name, jsonReading: jsonReadingOf(b, l.Reading), Feed: l.Feed.String()}
		for _, way := range l.Behind {
			spot.Behind = append(spot.Behind, way.String())
		}
		one.Live = append(one.Live, spot)
	}
	return one
}

func jsonWaitOf(w meter.Wait) jsonWait {
	one := jsonWait{
		Capacitor: w.Capacitor.Ref(), From: thousandths(float64(w.From)), To: thousandths(float64(w.To)),
		Seconds: *thousandths(float64(w.Time)), Terminals: []string{},
	}
	for _, spot := range w.Spots {
		one.Terminals = append(one.Terminals, spot.Name)
	}
	return one
}

// thousandths rounds to three decimals: no meter of the trade shows more, and no platform's
// arithmetic differs in fewer.
func thousandths(v float64) *float64 {
	rounded := math.Round(v*1000)/1000 + 0
	return &rounded
}
