package settle

import (
	"encoding/csv"
	"flag"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/job"
)

var update = flag.Bool("update", false, "have ngspice solve the examples, and record what it finds")

// records has a file for each example: what ngspice found at each node in each state, for
// machines without ngspice.
const records = "testdata/spice"

// shippedExamples are the jobs of the examples, by name.
func shippedExamples(t testing.TB) map[string]*wiring.Harness {
	t.Helper()
	root := os.DirFS("../../examples/tern-point")
	files, err := filepath.Glob("../../examples/tern-point/jobs/*.yaml")
	if err != nil || len(files) < 3 {
		t.Fatalf("only %v ship: %v", files, err)
	}
	all := map[string]*wiring.Harness{}
	for _, file := range files {
		name := strings.TrimSuffix(filepath.Base(file), ".yaml")
		h, findings, err := job.Load("jobs/"+name+".yaml", job.Options{FS: root})
		if err != nil || h == nil {
			t.Fatalf("%s does not load: %v %v", name, err, findings)
		}
		all[name] = h
	}
	return all
}

// atAssumed settles a state at the assumed charge, which the decks are written for.
func atAssumed(t *testing.T, n *Network, state *wiring.State) *Point {
	t.Helper()
	at := *state
	at.SOC = n.Harness().Assume.SOC
	p, err := n.Settle(t.Context(), &at, Options{})
	if err != nil {
		t.Fatal(err)
	}
	settled(t, p)
	checkResiduals(t, p)
	return p
}

// Every node of every example in every state is what ngspice finds from the values of the
// elements, and what it once found where it is missing.
func TestExamplesAgreeWithSpice(t *testing.T) {
	program, ok := haveNgspice(t)
	if *update && !ok {
		t.Fatal("without ngspice nothing can be recorded")
	}
	for name, h := range shippedExamples(t) {
		n, made := Compile(h), record{}
		was := readRecord(t, name)
		for _, state := range h.States {
			t.Run(name+"/"+state.Name, func(t *testing.T) {
				p := atAssumed(t, n, state)
				if ok {
					theirs := spiceVolts(t, program, p)
					compare(t, p, theirs)
					made[state.Name] = theirs
				}
				if !*update {
					compare(t, p, was.volts(t, h, state))
				}
			})
		}
		if *update {
			writeRecord(t, name, ngspiceVersion(t, program), h, made)
		}
	}
}

// record has volts by state and node. A node that floats in a state has none.
type record map[string]map[wiring.NodeID]float64

// written is a record as it stands in its file.
type written struct {
	name string
	rows [][]string
}

func recordFile(name string) string { return filepath.Join(records, name+".csv") }

func readRecord(t *testing.T, name string) written {
	t.Helper()
	f, err := os.Open(recordFile(name))
	if err != nil {
		if *update {
			return written{}
		}
		t.Fatalf("nothing is recorded of %s; with ngspice, go test ./wiring/settle -run Spice -update", name)
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	rows, err := r.ReadAll()
	if err != nil || len(rows) == 0 {
		t.Fatalf("%s: %v", recordFile(name), err)
	}
	return written{name, rows}
}

// volts is the column of a state.
func (w written) volts(t *testing.T, h *wiring.Harness, state *wiring.State) map[wiring.NodeID]float64 {
	t.Helper()
	column := -1
	for i, title := range w.rows[0] {
		if title == state.Name {
			column = i
		}
	}
	if column < 0 || len(w.rows)-1 != len(h.Nodes) {
		t.Fatalf("%s has changed since it was recorded; with ngspice, go test ./wiring/settle -run Spice -update", w.name)
	}
	found := map[wiring.NodeID]float64{}
	for n, row := range w.rows[1:] {
		if row[0] != h.Nodes[n].String() {
			t.Fatalf("%s: recorded %s in place of %v; with ngspice, go test ./wiring/settle -run Spice -update", w.name, row[0], h.Nodes[n])
		}
		if row[column] == "" {
			continue
		}
		v, err := strconv.ParseFloat(row[column], 64)
		if err != nil {
			t.Fatal(err)
		}
		found[wiring.NodeID(n)] = v
	}
	return found
}

// writeRecord writes volts to 10 nV, a hundredth of what they are compared to.
func writeRecord(t *testing.T, name, version string, h *wiring.Harness, r record) {
	t.Helper()
	var text strings.Builder
	text.WriteString("# source: " + version + ", from the decks of deck_test.go; volts against the reference node; an empty cell floats\n")
	out := csv.NewWriter(&text)
	title := []string{"node"}
	for _, s := range h.States {
		title = append(title, s.Name)
	}
	rows := [][]string{title}
	for n, node := range h.Nodes {
		row := []string{node.String()}
		for _, s := range h.States {
			cell := ""
			if v, ok := r[s.Name][wiring.NodeID(n)]; ok {
				cell = strconv.FormatFloat(v, 'f', 8, 64)
				cell = strings.TrimSuffix(strings.TrimRight(cell, "0"), ".")
			}
			row = append(row, cell)
		}
		rows = append(rows, row)
	}
	if err := out.WriteAll(rows); err != nil {
		t.Fatal(err)
	}
	if err := os.MkdirAll(records, 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(recordFile(name), []byte(text.String()), 0o644); err != nil {
		t.Fatal(err)
	}
}
