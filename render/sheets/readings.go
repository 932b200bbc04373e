package sheets

import (
	"fmt"
	"strings"

	"github.com/lugwright/lugwright/render/ink"
	"github.com/lugwright/lugwright/render/report"
	"github.com/lugwright/lugwright/render/schematic"
	"github.com/lugwright/lugwright/render/sheet"
	"github.com/lugwright/lugwright/render/sheet/flow"
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/meter"
)

// Readings is what a meter must show at each test point in each state, with room for what it
// does show.
func Readings() *sheet.Kind {
	return &sheet.Kind{
		ID:       "readings",
		Title:    "meter readings",
		About:    "what a meter shows at each test point in each state, with blanks for what it does show",
		Surround: sheet.Surround{Open: 1},
		Plan:     planReadings,
	}
}

func planReadings(b *sheet.Book, r sheet.Room) ([]sheet.Page, error) {
	survey, err := b.Survey()
	if err != nil {
		return nil, err
	}
	spots := survey.Bench.TestPoints()
	if len(spots) == 0 {
		spots = survey.Bench.Terminals()
	}
	f := flow.New(r.Width)
	s := readingSheet{b, survey, report.Readings{Survey: survey}, map[string]bool{}}
	for _, block := range stateBlocks(survey.Sheets, r.Width) {
		f.Table(s.table(spots, block))
		f.Space(3)
	}
	s.notes(f)
	return paged(f, r, 1), nil
}

// readingSheet sets readings, and remembers which signs it used.
type readingSheet struct {
	book   *sheet.Book
	survey *meter.Survey
	facts  report.Readings
	signs  map[string]bool
}

// Widths in millimetres.
const (
	spotWide    = 28.0 // of the column of places, at least
	whichWide   = 46.0 // of what they are
	againstWide = 20.0
	stateWide   = 24.0 // of a state
	blankWide   = 14.0 // of the field to write in
)

// stateBlocks parts the states into as many tables as the width asks for, all about as wide.
func stateBlocks(all []*meter.Sheet, width float64) [][]*meter.Sheet {
	most := max(1, int((width-spotWide-whichWide-againstWide)/(stateWide+blankWide)))
	n := (len(all) + most - 1) / most
	var blocks [][]*meter.Sheet
	for i := range n {
		blocks = append(blocks, all[i*len(all)/n:(i+1)*len(all)/n])
	}
	return blocks
}

func (s *readingSheet) table(spots []meter.Spot, states []*meter.Sheet) flow.Table {
	t := flow.Table{Columns: []flow.Column{
		{Head: "Red probe on", Face: ink.Bold, Least: spotWide, Most: 40, Lines: 2},
		{Head: "Which is", Least: whichWide, Lines: 2},
		{Head: "Black on", Least: againstWide, Most: 34, Lines: 2},
	}}
	for _, state := range states {
		t.Columns = append(t.Columns,
			flow.Column{Head: state.State.Name, Least: stateWide, Most: 32, Lines: 2},
			flow.Column{Head: "read", Least: blankWide, Most: blankWide})
	}
	for _, spot := range spots {
		cells := []flow.Cell{
			flow.Linked(schematic.Minus(spot.Name), partLink(spot.Terminal.Part)),
			flow.Text(spotWords(spot)), flow.Text(s.black(spot)),
		}
		for _, state := range states {
			cells = append(cells, flow.Text(s.shown(state.ReadAt(spot.Node))), flow.Text())
		}
		t.Rows = append(t.Rows, flow.Row{Group: ink.Group{Class: "test-point", Name: spot.Name}, Cells: cells, Tall: 6})
	}
	return t
}

// spotWords says what one finds at a place.
func spotWords(spot meter.Spot) string {
	words := spot.Terminal.Part.Short()
	if spot.Terminal.Spoken != "" {
		words += ", " + spot.Terminal.Spoken
	}
	return words
}

func (s *readingSheet) black(spot meter.Spot) string {
	black := s.facts.Black(spot)
	if black == wiring.NoNode {
		return ""
	}
	return schematic.Minus(s.survey.Bench.Name(black))
}

func (s *readingSheet) shown(r meter.Reading) string {
	volts, sign := report.Shown(r)
	if sign != "" {
		s.signs[sign] = true
	}
	if volts != "" {
		volts += " V"
	}
	return strings.TrimSpace(volts + "  " + sign)
}

// notes say how each state is set, what the signs mean, and how long to wait.
func (s *readingSheet) notes(f *flow.Flow) {
	f.Paragraph("Direct volts, as a 10 Mohm meter shows them after capacitors ran down, if the cart is built as drawn.", ink.Regular)
	signs, words := report.SignWords()
	for i, sign := range signs {
		if s.signs[sign] {
			f.Hanging(sign, words[i], ink.Regular)
		}
	}
	for _, w := range s.facts.Waits() {
		f.Space(1.5)
		f.Paragraph("Wait, in "+strings.Join(w.States, ", ")+":", ink.Bold)
		for _, line := range w.Lines {
			f.Hanging("", line, ink.Regular)
		}
	}
	for _, failed := range s.survey.Failed {
		f.Space(1.5)
		f.Paragraph(failed.Error(), ink.Bold)
	}
	f.Space(3)
	f.Heading("How each state is set")
	f.Table(s.states())
}

func (s *readingSheet) states() flow.Table {
	t := flow.Table{Natural: true, Columns: []flow.Column{
		{Head: "State", Face: ink.Bold}, {Head: "Set", Lines: 3}, {Head: "Batteries at"}, {Head: "The cart"},
	}}
	for _, state := range s.survey.Sheets {
		st := state.State
		moves := ""
		switch st.Moves() {
		case 1:
			moves = "moves"
		case -1:
			moves = "must not move"
		}
		t.Rows = append(t.Rows, flow.Row{Cells: []flow.Cell{
			flow.Text(st.Name), flow.Text(report.Settings(s.book.Harness, st)),
			flow.Text(fmt.Sprint(s.survey.Bench.Charge(st))), flow.Text(moves),
		}})
	}
	return t
}
