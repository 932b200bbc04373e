package cases

import (
	"encoding/csv"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/job"
	"github.com/lugwright/lugwright/wiring/rule"
	"github.com/lugwright/lugwright/wiring/rules"
)

// fieldCase is a row of testdata/cases/field.csv, whose first lines say what it is and
// where it is from.
type fieldCase struct {
	id     string
	fault  string   // something wrong that is not in the drawing; see defectOf
	state  string   // in which it shows
	shows  string   // facts of the state; see facts
	raises []string // rules that say so, and no other does at the level of an error
	twin   string   // the nearest sound cart
}

// least is how many mistakes of the field there must be.
const least = 60

func fieldCases(t *testing.T) []fieldCase {
	t.Helper()
	f, err := os.Open(root + "/field.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	rows, err := r.ReadAll()
	if err != nil || strings.Join(rows[0], " ") != "id fault state shows raises twin" {
		t.Fatalf("%v %v", rows, err)
	}
	var all []fieldCase
	for _, row := range rows[1:] {
		all = append(all, fieldCase{row[0], row[1], row[2], row[3], strings.Fields(row[4]), row[5]})
	}
	return all
}

// checked is a job and what all rules find in it.
type checked struct {
	h      *wiring.Harness
	result rule.Result
}

func checkFile(t *testing.T, file string) checked {
	t.Helper()
	h, findings, err := job.Load(file, job.Options{FS: os.DirFS(root)})
	if err != nil {
		t.Fatal(err)
	}
	if h == nil {
		for _, f := range findings {
			t.Errorf("%s:%d: %s", f.At.File, f.At.Line, f.Message)
		}
		t.FailNow()
	}
	result, err := rule.Run(t.Context(), h, rules.All(), rule.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return checked{h, result}
}

// Each mistake shows in the state in which it was met, the rules that are there for it
// report it, and no other rule calls anything an error. None of them says the same of the
// sound twin.
func TestFieldCases(t *testing.T) {
	all := fieldCases(t)
	if len(all) < least {
		t.Errorf("only %d mistakes of the field", len(all))
	}
	twins := map[string]checked{}
	for _, c := range all {
		t.Run(c.id, func(t *testing.T) {
			if slices.Equal(c.raises, []string{refused}) {
				c.refused(t)
				return
			}
			got := checkFile(t, "field/"+c.id+".yaml")
			if c.twin != "" && twins[c.twin].h == nil {
				twins[c.twin] = checkFile(t, "sound/"+c.twin+".yaml")
			}
			c.judge(t, got.result, twins[c.twin].result)
			if c.shows != "" {
				newScene(t, got.h, c.fault, c.state).check(t, c.shows)
			}
			if c.shows == "" && len(c.raises) == 0 {
				t.Error("nobody says what becomes of it")
			}
		})
	}
}

// refused stands in place of rules where the job cannot be read at all.
const refused = "input"

func (c fieldCase) refused(t *testing.T) {
	t.Helper()
	h, findings, err := job.Load("field/"+c.id+".yaml", job.Options{FS: os.DirFS(root)})
	if err != nil {
		t.Fatal(err)
	}
	if h != nil || len(findings) != 1 || findings[0].Level != diag.Error {
		t.Errorf("it is read, with %v", findings)
	}
}

// judge compares what was found with what should be.
func (c fieldCase) judge(t *testing.T, got, twin rule.Result) {
	t.Helper()
	was := map[string]bool{}
	for _, f := range twin.Open(diag.Note) {
		was[f.Rule+f.Message] = true
	}
	found := map[string]bool{}
	for _, f := range got.Open(diag.Note) {
		if !was[f.Rule+f.Message] {
			found[f.Rule] = true
		}
		if f.Level == diag.Error && !slices.Contains(c.raises, f.Rule) {
			t.Errorf("%s:%d: %s (%s)\n%s", f.At.File, f.At.Line, f.Message, f.Rule, f.Detail)
		}
	}
	for _, id := range c.raises {
		if rules.Find(id) == nil {
			t.Errorf("there is no rule %s", id)
		}
		if !found[id] {
			t.Errorf("%s does not say it; what does: %v", id, slices.Sorted(maps.Keys(found)))
		}
	}
}

// Every job has its row, and the sound carts are sound.
func TestFieldFilesHaveRows(t *testing.T) {
	rows := map[string]bool{}
	for _, c := range fieldCases(t) {
		if rows[c.id] {
			t.Errorf("%s has two rows", c.id)
		}
		rows[c.id] = true
	}
	files, err := filepath.Glob(root + "/field/*.yaml")
	if err != nil {
		t.Fatal(err)
	}
	for _, file := range files {
		if id := strings.TrimSuffix(filepath.Base(file), ".yaml"); !rows[id] {
			t.Errorf("%s has no row", id)
		}
	}
	sound, err := filepath.Glob(root + "/sound/*.yaml")
	if err != nil || len(sound) == 0 {
		t.Fatalf("no sound carts: %v", err)
	}
	for _, file := range sound {
		got := checkFile(t, "sound/"+filepath.Base(file))
		for _, f := range got.result.Open(diag.Error) {
			t.Errorf("%s:%d: %s (%s)\n%s", f.At.File, f.At.Line, f.Message, f.Rule, f.Detail)
		}
	}
}
