package main

import (
	"bytes"
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diagnosis"
	"github.com/lugwright/lugwright/wiring/job"
)

// carts are those that ship.
var carts = []string{"tern-point-14", "tern-point-shuttle-3", "tern-point-truck-1"}

// blind is how many faults are drawn at random, hidden and looked for.
const blind = 20

// Twenty faults are drawn at random and hidden. Somebody who knows nothing of the cart
// follows what the program prints, with a solved circuit for a meter, and must end at the
// right one. The dialogues are kept in testdata/dialogues.
func TestBlindCases(t *testing.T) {
	tables := map[string]*diagnosis.Table{}
	chance := rand.New(rand.NewPCG(7, 20))
	for n := range blind {
		cart := carts[n%len(carts)]
		if tables[cart] == nil {
			tables[cart] = tableOf(t, cart)
		}
		table := tables[cart]
		hidden := table.Candidates[1+chance.IntN(len(table.Candidates)-1)]
		for !table.Differs(hidden) {
			hidden = table.Candidates[1+chance.IntN(len(table.Candidates)-1)]
		}
		t.Run(fmt.Sprintf("%02d", n+1), func(t *testing.T) {
			if testing.Short() && n >= 3 {
				t.Skip("three are enough in a hurry")
			}
			m := &mechanic{t: t, table: table, hidden: hidden}
			code := run(system{
				args:   []string{"diagnose", jobFile(cart)},
				stdin:  input{m, true},
				stdout: stream{Writer: &m.seen, terminal: true, columns: 80},
				stderr: stream{Writer: io.Discard},
				getenv: func(name string) string { return map[string]string{"NO_COLOR": "1"}[name] },
			})
			if code != clean {
				t.Errorf("exit %d", code)
			}
			ends := m.seen.String()[m.told:]
			if !strings.Contains(strings.Join(strings.Fields(ends), " "), hidden.Name()) {
				t.Errorf("%s was hidden, and the dialogue ends with\n%s", hidden.Name(), ends)
			}
			keep(t, fmt.Sprintf("%02d.txt", n+1), "hidden: "+hidden.Name()+"\n\n"+m.log.String()+ends)
		})
	}
}

func jobFile(cart string) string {
	return filepath.Join("..", "..", "examples", "tern-point", "jobs", cart+".yaml")
}

func tableOf(t *testing.T, cart string) *diagnosis.Table {
	t.Helper()
	h, findings, err := job.Load(jobFile(cart), job.Options{})
	if h == nil {
		t.Fatal(err, findings)
	}
	table, err := diagnosis.NewTable(t.Context(), h, diagnosis.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return table
}

// mechanic reads what is printed and answers it.
type mechanic struct {
	t      *testing.T
	table  *diagnosis.Table
	hidden *diagnosis.Candidate
	seen   bytes.Buffer // everything printed
	told   int          // how much of it was answered
	log    bytes.Buffer // the dialogue
}

var (
	asks     = regexp.MustCompile(`Ask is it so that (.*)\? In `)
	reads    = regexp.MustCompile(`Set (.*?): .*Read red probe on (\S+), black on (\S+);`)
	numbered = regexp.MustCompile(`(?m)^ +(\d+)  (.*)$`)
)

// Read gives the answer to the last prompt.
func (m *mechanic) Read(p []byte) (int, error) {
	all := m.seen.String()
	news := all[m.told:]
	m.told = len(all)
	answer := m.answer(news)
	m.log.WriteString(news + answer + "\n")
	return copy(p, answer+"\n"), nil
}

func (m *mechanic) answer(news string) string {
	plain := strings.Join(strings.Fields(news), " ")
	switch {
	case strings.HasSuffix(plain, "seen:"):
		return m.complain(news)
	case strings.HasSuffix(plain, "y or n:"):
		q := asks.FindStringSubmatch(plain)
		if q == nil {
			m.t.Fatalf("no question in\n%s", news)
		}
		for _, k := range m.hidden.Complaints {
			if k.Text() == q[1] {
				return "y"
			}
		}
		return "n"
	case strings.HasSuffix(plain, "volts:"):
		r := reads.FindStringSubmatch(plain)
		if r == nil {
			m.t.Fatalf("no reading in\n%s", news)
		}
		return m.measure(r[1], r[2], r[3])
	}
	m.t.Fatalf("nothing is asked:\n%s", news)
	return ""
}

// complain gives the number of the gravest thing that the owner has seen.
func (m *mechanic) complain(list string) string {
	if len(m.hidden.Complaints) == 0 {
		return ""
	}
	for _, c := range numbered.FindAllStringSubmatch(list, -1) {
		if strings.TrimSpace(c[2]) == m.hidden.Complaints[0].Text() {
			return c[1]
		}
	}
	m.t.Fatalf("%q is not in the list:\n%s", m.hidden.Complaints[0].Text(), list)
	return ""
}

// measure settles the hidden fault in a state and reads between two terminals.
func (m *mechanic) measure(state, red, black string) string {
	h := m.table.Cart.Harness
	p, err := m.table.Cart.Settle(m.t.Context(), h.State(state), m.hidden.Faults...)
	if err != nil {
		m.t.Fatal(err)
	}
	at := func(ref string) wiring.NodeID {
		terminal := h.Terminal(ref)
		if terminal == nil {
			m.t.Fatalf("the cart has no terminal %s", ref)
		}
		return terminal.Node
	}
	return fmt.Sprintf("%.2f", float64(p.Across(at(red), at(black))))
}

// keep compares a dialogue with the one that is kept, or keeps it.
func keep(t *testing.T, name, dialogue string) {
	t.Helper()
	path := filepath.Join("..", "..", "testdata", "dialogues", name)
	if *update {
		if err := os.WriteFile(path, []byte(dialogue), 0o666); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(string(want), dialogue); diff != "" {
		t.Errorf("%s (-kept +now); go test ./cmd/lugwright -run TestBlindCases -update keeps it:\n%s", name, diff)
	}
}
