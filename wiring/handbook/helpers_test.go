package handbook

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/lugwright/lugwright/wiring/quantity"
)

// record is one row of a check file, by column.
type record map[string]string

// check reads a file of testdata. Its first line says where the figures come from.
func check(t *testing.T, file string) []record {
	t.Helper()
	text, err := os.ReadFile("testdata/" + file)
	if err != nil {
		t.Fatal(err)
	}
	if !strings.HasPrefix(string(text), "# source:") {
		t.Fatalf("%s does not say where its figures come from", file)
	}
	r := csv.NewReader(strings.NewReader(withoutComments(string(text))))
	rows, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var out []record
	for _, row := range rows[1:] {
		rec := record{}
		for i, column := range rows[0] {
			rec[column] = row[i]
		}
		out = append(out, rec)
	}
	if len(out) == 0 {
		t.Fatalf("%s has no rows", file)
	}
	return out
}

// number returns a cell as a number, and whether it is filled.
func (r record) number(t *testing.T, column string) (float64, bool) {
	t.Helper()
	text, ok := r[column]
	if !ok {
		t.Fatalf("no column %s", column)
	}
	if text == "" {
		return 0, false
	}
	x, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatalf("column %s: %v", column, err)
	}
	return x, true
}

// must returns a cell that has to be a number.
func (r record) must(t *testing.T, column string) float64 {
	t.Helper()
	x, ok := r.number(t, column)
	if !ok {
		t.Fatalf("column %s is empty", column)
	}
	return x
}

// gauge reads a cell as an AWG size.
func (r record) gauge(t *testing.T, column string) quantity.Size {
	t.Helper()
	s, err := quantity.ParseSize(r[column] + " AWG")
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// near fails unless got is within a tolerance of want.
func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if math.IsNaN(got) || math.Abs(got-want) > tolerance {
		t.Errorf("%s = %v, want %v within %v", what, got, want, tolerance)
	}
}

// nearly fails unless got is within a share of want.
func nearly(t *testing.T, what string, got, want, share float64) {
	t.Helper()
	near(t, what, got, want, math.Abs(want)*share)
}
