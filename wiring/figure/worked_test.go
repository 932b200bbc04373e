package figure

import (
	"encoding/csv"
	"os"
	"strconv"
	"strings"
	"testing"
)

// worked is a row of the worked examples, each of which names its source.
type worked struct {
	id, givens, quantity string
	expected, tolerance  float64
}

// workedExamples returns the rows of one kind.
func workedExamples(t *testing.T, kind string) []worked {
	t.Helper()
	f, err := os.Open("../handbook/testdata/worked_examples.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	rows, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var all []worked
	for _, row := range rows[1:] {
		// The law of heating is a formula of the handbook, and tested there.
		if row[1] == kind && row[0] != "adiabatic" {
			all = append(all, worked{row[0], row[3], row[4], number(t, row[5]), number(t, row[7])})
		}
	}
	if len(all) == 0 {
		t.Fatalf("no rows of kind %s", kind)
	}
	return all
}

func number(t *testing.T, s string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// given reads one of "source_V=15;ohm=10000"; 0 if it is not there.
func (w worked) given(t *testing.T, key string) float64 {
	t.Helper()
	for _, pair := range strings.Split(w.givens, ";") {
		if name, value, _ := strings.Cut(pair, "="); name == key {
			return number(t, value)
		}
	}
	return 0
}

// check compares a figure, in the row's unit, with what the row expects.
func (w worked) check(t *testing.T, got float64) {
	t.Helper()
	within(t, w.quantity, got, w.expected, w.tolerance*(1+1e-12))
}
