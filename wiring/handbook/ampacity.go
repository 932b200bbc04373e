package handbook

import (
	"fmt"
	"strconv"
	"strings"

	"github.com/lugwright/lugwright/wiring/quantity"
)

// ampacityTable is the current that single conductors may carry at an ambient of 30 C.
//
// Source: 33 CFR 183.425 Table 5, stranded copper by the temperature rating of its
// insulation; read.
type ampacityTable struct {
	columns []quantity.Celsius // insulation ratings, rising
	rows    []ampacityRow      // thin to thick
}

type ampacityRow struct {
	size quantity.Size
	area quantity.SquareMillimetre
	amps []quantity.Ampere // by column
}

var ampacityDefinition = table{
	name:    "ampacity",
	about:   "current that a conductor may carry at 30 C, by size and insulation",
	columns: []string{"awg", "A_60C", "A_75C", "A_80C", "A_90C", "A_105C", "A_125C", "A_200C"},
	load: func(t *Tables, s *sheet) {
		t.ampacity = ampacityTable{columns: []quantity.Celsius{60, 75, 80, 90, 105, 125, 200}}
		for _, r := range s.rows {
			t.ampacity.add(r)
		}
	},
}

// add reads one row and holds it to what any ampacity table obeys: current rises with
// copper, and never falls with a better insulation.
func (a *ampacityTable) add(r row) {
	size := r.gauge("awg")
	next := ampacityRow{size: size, area: GaugeArea(int(size.Number))}
	for i, c := range a.columns {
		column := "A_" + strconv.Itoa(int(c)) + "C"
		amps := quantity.Ampere(r.positive(column))
		if i > 0 && amps < next.amps[i-1] {
			r.fail(column, "%v is less than at a lower insulation rating", amps)
		}
		if n := len(a.rows); n > 0 && amps < a.rows[n-1].amps[i] {
			r.fail(column, "%v is less than a thinner conductor carries", amps)
		}
		next.amps = append(next.amps, amps)
	}
	if n := len(a.rows); n > 0 && next.area <= a.rows[n-1].area {
		r.fail("awg", "rows go from thin to thick")
	}
	a.rows = append(a.rows, next)
}

// Capacity is what the ampacity table says of a conductor: alone, at an ambient of 30 C.
type Capacity struct {
	Amps   quantity.Ampere
	Row    quantity.Size    // the table's row that was taken
	Column quantity.Celsius // the table's column that was taken
	Asked  quantity.Size    // the conductor
	Rating quantity.Celsius // its insulation
}

// Exact reports whether the table has this very size and insulation.
func (c Capacity) Exact() bool { return c.Row == c.Asked && c.Column == c.Rating }

// Note says what was taken in place of what was asked for; "" if that is the same.
func (c Capacity) Note() string {
	var notes []string
	if c.Row != c.Asked {
		notes = append(notes, fmt.Sprintf("%v counts as the next smaller row, %v", c.Asked, c.Row))
	}
	if c.Column != c.Rating {
		notes = append(notes, fmt.Sprintf("%v insulation counts as %v", c.Rating, c.Column))
	}
	return strings.Join(notes, "; ")
}

// Ampacity returns the current that a conductor may carry alone at an ambient of 30 C, by
// the temperature rating of its insulation. Between rows it takes the next smaller row by
// copper, above the last row the last, and likewise for insulation; the result says so.
// Conductors under the smallest row and insulation under the lowest column are errors.
//
// Source: 33 CFR 183.425 Table 5; read.
func (t *Tables) Ampacity(size quantity.Size, insulation quantity.Celsius) (Capacity, error) {
	area, err := t.Area(size)
	if err != nil {
		return Capacity{}, err
	}
	row, err := t.ampacity.row(size, area)
	if err != nil {
		return Capacity{}, err
	}
	column, err := t.ampacity.column(insulation)
	if err != nil {
		return Capacity{}, err
	}
	return Capacity{
		Amps: row.amps[column], Row: row.size, Column: t.ampacity.columns[column],
		Asked: size, Rating: insulation,
	}, nil
}

// sameArea is how far two areas may differ and still be one size: less than between any
// two gauges, more than rounding.
const sameArea = 1e-9

func (a *ampacityTable) row(size quantity.Size, area quantity.SquareMillimetre) (ampacityRow, error) {
	found := -1
	for i, r := range a.rows {
		if float64(r.area) <= float64(area)*(1+sameArea) {
			found = i
		}
	}
	if found < 0 {
		return ampacityRow{}, fmt.Errorf("no ampacity is tabled for %v: the smallest row is %v", size, a.rows[0].size)
	}
	return a.rows[found], nil
}

func (a *ampacityTable) column(insulation quantity.Celsius) (int, error) {
	found := -1
	for i, c := range a.columns {
		if c <= insulation {
			found = i
		}
	}
	if found < 0 {
		return 0, fmt.Errorf("no ampacity is tabled for %v insulation: the lowest column is %v", insulation, a.columns[0])
	}
	return found, nil
}
