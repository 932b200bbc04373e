package schematic

import (
	"errors"
	"fmt"
	"strings"
	"sync"

	"github.com/lugwright/lugwright/render/arrange"
	"github.com/lugwright/lugwright/render/ink"
	"github.com/lugwright/lugwright/render/label"
	"github.com/lugwright/lugwright/render/symbol"
	"github.com/lugwright/lugwright/wiring"
)

// Options say on what the schematic is drawn.
type Options struct {
	Width, Height float64                   // of the drawing area, in millimetres
	First         int                       // number of the first sheet; 0: 1
	Zone          func(at ink.Point) string // name of the zone of the frame at a point of the area, in millimetres; nil: none
}

// Sheet is one sheet of a schematic, laid out and ready to be drawn.
type Sheet struct {
	Number int
	Title  string
	Stats  Stats

	set  *set
	unit float64 // millimetres
	g    *drafting
	c    *composed
}

// Stats is what can be counted on a sheet.
type Stats struct {
	Wires, Parts                      int
	Unrouted                          []string // wires for which there was no way
	Unlabelled                        []string // words for which there was no place
	Crossings, Bends, Leaders, Turned int
}

// set is the sheets of one schematic, which refer to each other.
type set struct {
	circuit  *circuit
	plan     [][]int // clusters of each sheet
	first    int
	contents []*content
	zone     func(at ink.Point) string
	zones    map[spot]string
}

// The least drawing area, in millimetres: below it not even a controller finds room.
const (
	leastWidth  = 120
	leastHeight = 90
)

// Sheets lays out the schematic of a harness, on as many sheets as it takes.
func Sheets(h *wiring.Harness, o Options) ([]*Sheet, error) {
	s, err := planned(h, &o)
	if err != nil {
		return nil, err
	}
	sheets, err := s.draft(o)
	if err != nil {
		return nil, err
	}
	if err := composeAll(sheets, o); err != nil {
		return nil, err
	}
	for _, sheet := range sheets {
		sheet.note(o)
		sheet.count()
	}
	return sheets, nil
}

// planned divides the circuit into sheets, and fills in what the options leave open.
func planned(h *wiring.Harness, o *Options) (*set, error) {
	if o.First == 0 {
		o.First = 1
	}
	if o.Width < leastWidth || o.Height < leastHeight {
		return nil, fmt.Errorf("schematic: a drawing area of %.0f x %.0f mm is too small: it needs %d x %d", o.Width, o.Height, leastWidth, leastHeight)
	}
	c := newCircuit(h)
	clusters := c.cluster()
	s := &set{circuit: c, first: o.First, zone: o.Zone, zones: map[spot]string{}}
	if err := s.planSheets(c.used(clusters), s.fits(*o)); err != nil {
		return nil, err
	}
	return s, nil
}

// composeAll lays out the sheets, each for itself.
func composeAll(sheets []*Sheet, o Options) error {
	errs := make([]error, len(sheets))
	var all sync.WaitGroup
	for i, s := range sheets {
		all.Go(func() { errs[i] = s.compose(o) })
	}
	all.Wait()
	return errors.Join(errs...)
}

// reductions are how many times larger the sheet is taken, in order to find room for
// everything, and how often that is tried: at 2.5 mm lettering, at 2.34 and at 2.2.
var reductions = [...]struct {
	scale    float64
	attempts int
}{{1, 4}, {1.07, 2}, {1.136, 3}}

// compose lays out a sheet, in smaller lettering only if it is not whole otherwise.
func (s *Sheet) compose(o Options) error {
	for i, r := range reductions {
		unit := symbol.Unit / r.scale
		g, err := draft(s.set, s.g.s, int(o.Width/unit), int(o.Height/unit))
		if err != nil {
			return err
		}
		attempts := r.attempts
		if arrange.Breadth(&g.d) > hopeless*float64(g.d.Width) {
			if i+1 < len(reductions) {
				continue
			}
			attempts = 1
		}
		c := compose(&g.d, attempts)
		if s.c == nil || faults(c) < faults(s.c) {
			s.g, s.c, s.unit = g, c, unit
		}
		if s.c.isWhole() {
			break
		}
	}
	s.c.centre(&s.g.d)
	return nil
}

// hopeless is how many times its breadth a sheet may need before more than one attempt, in
// the smallest lettering, is wasted on it.
const hopeless = 2

// faults counts what is not on a sheet, wires before words, and what stands on other things:
// a pin on a foreign bar would be read as joined to it.
func faults(c *composed) int {
	return 100*(len(c.routes.Failed)+c.clashes) + len(c.labels.Missing)
}

// draft makes the diagrams of all sheets.
func (s *set) draft(o Options) ([]*Sheet, error) {
	s.contents = s.circuit.split(s.plan, s.first)
	var sheets []*Sheet
	for i, c := range s.contents {
		g, err := s.draftSheet(c, o)
		if err != nil {
			return nil, err
		}
		sheets = append(sheets, &Sheet{Number: c.number, Title: s.title(i), set: s, unit: symbol.Unit, g: g})
	}
	return sheets, nil
}

// draftSheet makes the diagram of one sheet at full size.
func (s *set) draftSheet(c *content, o Options) (*drafting, error) {
	return draft(s, c, int(o.Width/symbol.Unit), int(o.Height/symbol.Unit))
}

// sheetOf is the number of the sheet that shows a cluster.
func (s *set) sheetOf(cluster int) int {
	for i, clusters := range s.plan {
		for _, k := range clusters {
			if k == cluster {
				return s.first + i
			}
		}
	}
	return s.first
}

// title says what a sheet shows.
func (s *set) title(i int) string {
	if len(s.plan) == 1 {
		return "whole cart"
	}
	var names []string
	for _, k := range s.plan[i] {
		switch s.circuit.parent[k] {
		case traction:
			names = append(names, s.circuit.nameOfTraction())
		case supply:
			names = append(names, "charging and supply")
		default:
			names = append(names, s.circuit.nameOf(s.circuit.parent[k]))
		}
		if s.circuit.parent[k] != k {
			names[len(names)-1] += ", continued"
		}
	}
	return strings.Join(names, ", ")
}

func (s *Sheet) count() {
	st := &s.Stats
	for i := range s.g.d.Wires {
		if s.g.wires[i].line.wire != nil {
			st.Wires++
		}
	}
	st.Parts = len(s.g.s.devices)
	for _, w := range s.c.routes.Failed {
		st.Unrouted = append(st.Unrouted, s.g.d.Wires[w].Name)
	}
	for _, m := range s.c.labels.Missing {
		st.Unlabelled = append(st.Unlabelled, s.unplaced(&m))
	}
	st.Crossings, st.Bends, st.Leaders = s.c.routes.Crossing, s.c.routes.Bends, s.c.labels.Leaders
	for _, l := range s.c.labels.Labels {
		if l.Turned {
			st.Turned++
		}
	}
}

// unplaced names words for which there was no place: the wire, or a terminal's mark by its
// wire.
func (s *Sheet) unplaced(l *label.Label) string {
	name := s.labelName(l)
	if l.Kind == label.OfMark {
		return l.Lines[0] + " at " + name
	}
	return name
}
