package report

import (
	"bytes"
	"encoding/csv"
	"io"
	"strings"
	"testing"

	"github.com/lugwright/lugwright/wiring/diagnosis"
	"github.com/lugwright/lugwright/wiring/failuremode"
	"github.com/lugwright/lugwright/wiring/job/jobtest"
)

// faulty is the table of single faults of the main example.
func faulty(t *testing.T) *diagnosis.Table {
	t.Helper()
	table, err := diagnosis.NewTable(t.Context(), jobtest.Example(t, jobtest.Examples()[0]), diagnosis.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return table
}

func TestFaultsKeepTheirSchemas(t *testing.T) {
	table := faulty(t)
	entries, err := table.Chart(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	keepsSchema(t, SymptomsSchema(), func(w io.Writer) error { return SymptomsJSON(w, Symptoms{Table: table, Entries: entries}) },
		map[string]string{`"version": 1,`: `"version": 2,`, `"occurrence": "rare"`: `"occurrence": "seldom"`, `"clues"`: `"hints"`})

	one := table.Open()
	seen, err := one.Table.Find("it does not move")
	if err != nil {
		t.Fatal(err)
	}
	one.Answer(seen, true)
	read, err := one.ParseReading("U1.interlock=0V")
	if err != nil {
		t.Fatal(err)
	}
	one.Readings = append(one.Readings, read)
	keepsSchema(t, DiagnosisSchema(), func(w io.Writer) error { return DiagnosisJSON(w, Diagnosis{Case: one}) },
		map[string]string{`"version": 1,`: `"version": 2,`, `"share"`: `"part"`, `"saw"`: `"seen"`})

	rows := failuremode.Rows(table)
	keepsSchema(t, FailureModesSchema(), func(w io.Writer) error {
		return FailureModesJSON(w, FailureModes{Harness: table.Cart.Harness, Rows: rows})
	}, map[string]string{`"version": 1,`: `"version": 2,`, `"severity": "hazard"`: `"severity": "bad"`, `"detection"`: `"found"`})
}

// Every line of the charts fits a terminal of 80 columns, and the worksheet has one row a
// fault.
func TestFaultsForPeople(t *testing.T) {
	table := faulty(t)
	entries, err := table.Chart(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	rows := failuremode.Rows(table)
	f := FailureModes{Harness: table.Cart.Harness, Rows: rows}
	for name, write := range map[string]func(io.Writer) error{
		"symptoms": func(w io.Writer) error {
			return SymptomsText(w, Symptoms{Table: table, Entries: entries}, TextOptions{})
		},
		"diagnosis":     func(w io.Writer) error { return DiagnosisText(w, Diagnosis{Case: table.Open()}, TextOptions{}) },
		"failure modes": func(w io.Writer) error { return FailureModesText(w, f, TextOptions{}) },
	} {
		var b bytes.Buffer
		if err := write(&b); err != nil {
			t.Fatal(err)
		}
		for line := range strings.Lines(b.String()) {
			if columns(strings.TrimSuffix(line, "\n")) > readingsWidth {
				t.Errorf("%s: a line of more than %d columns: %q", name, readingsWidth, line)
			}
		}
	}
	var b bytes.Buffer
	if err := FailureModesCSV(&b, f); err != nil {
		t.Fatal(err)
	}
	all, err := csv.NewReader(&b).ReadAll()
	if err != nil || len(all) != len(table.Candidates) { // the head in place of the healthy cart
		t.Errorf("%d rows of %d faults: %v", len(all), len(table.Candidates)-1, err)
	}
}
