package report

import (
	"encoding/csv"
	"io"
	"strings"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/meter"
)

// ReadingsCSV writes readings for a spreadsheet: UTF-8 with commas, one row a place to probe
// and state. Volts have one decimal, as a meter shows them; remark says "mains", "floating" or what
// the reading proves where that is less than it looks. Cells that a spreadsheet would take
// for a formula begin with '. The error is that of w.
func ReadingsCSV(w io.Writer, r Readings) error {
	out := csv.NewWriter(w)
	rows := [][]string{{"state", "group", "terminal", "volts", "against", "remark"}}
	for _, s := range r.Survey.Sheets {
		for _, g := range r.groups() {
			for _, spot := range g.spots {
				rows = append(rows, r.row(s, g, spot))
			}
		}
	}
	for _, row := range rows {
		for i, cell := range row {
			if i != voltsColumn {
				row[i] = unformula(cell)
			}
		}
		if err := out.Write(row); err != nil {
			return err
		}
	}
	out.Flush()
	return out.Error()
}

// voltsColumn holds numbers, which may well begin with a minus.
const voltsColumn = 3

func (r Readings) row(s *meter.Sheet, g spotGroup, spot meter.Spot) []string {
	reading := s.ReadAt(spot.Node)
	against, remark := "", ""
	if reading.Against != wiring.NoNode {
		against = r.Survey.Bench.Name(reading.Against)
	}
	switch {
	case reading.Mains:
		return []string{s.State.Name, g.name, spot.Name, "", "", "mains"}
	case reading.Floating:
		remark = "floating"
	case reading.Proof != meter.Sound:
		remark = reading.Proof.String()
	}
	return []string{s.State.Name, g.name, spot.Name, meter.Tenths(reading.Volts), against, remark}
}

// unformula puts ' before a text that a spreadsheet would compute, or that begins with '.
func unformula(text string) string {
	if text != "" && strings.ContainsRune("=+-@'\t\r", rune(text[0])) {
		return "'" + text
	}
	return text
}
