package rule_test

import (
	"context"
	"errors"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/path/pathtest"
	"github.com/lugwright/lugwright/wiring/rule"
)

const circuit = `
G1 source + - 52.8
F1 fuse in out 5
E1 load + - 10
W1 G1.+ F1.in
W2 F1.out E1.+
W3 E1.- G1.-
`

func at(line, col int) diag.Span {
	return diag.Span{File: "job.yaml", Line: line, Col: col, EndCol: col + 3}
}

// reports makes a rule that reports fixed findings.
func reports(id string, fs ...diag.Finding) *rule.Rule {
	return &rule.Rule{ID: id, Level: diag.Error, Run: func(p *rule.Pass) {
		for _, f := range fs {
			p.Report(f)
		}
	}}
}

func run(t *testing.T, h *wiring.Harness, o rule.Options, rules ...*rule.Rule) rule.Result {
	t.Helper()
	r, err := rule.Run(context.Background(), h, rules, o)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func TestRunFillsInAndSorts(t *testing.T) {
	h := pathtest.Harness(t, circuit)
	got := run(t, h, rule.Options{},
		reports("b-rule", diag.Finding{Message: "second", At: at(7, 3)}, diag.Finding{Message: "second", At: at(7, 3)}),
		reports("a-rule", diag.Finding{Message: "first", At: at(2, 9), Level: diag.Note}))
	want := []diag.Finding{
		{Rule: "a-rule", Level: diag.Note, Message: "first", At: at(2, 9)},
		{Rule: "b-rule", Level: diag.Error, Message: "second", At: at(7, 3)},
	}
	if diff := cmp.Diff(want, got.Findings); diff != "" {
		t.Errorf("findings (-want +got):\n%s", diff)
	}
}

func TestAsFound(t *testing.T) {
	platform := &wiring.Layer{Kind: wiring.PlatformLayer}
	kit := &wiring.Layer{Kind: wiring.KitLayer}
	for _, c := range []struct {
		name     string
		change   func(h *wiring.Harness)
		subjects []string
		want     diag.Level
	}{
		{"all of it the platform's", func(*wiring.Harness) {}, []string{"W2", "E1.+", "E1"}, diag.Warning},
		{"no subject", func(*wiring.Harness) {}, nil, diag.Error},
		{"a name that is nothing", func(*wiring.Harness) {}, []string{"W2", "Z9"}, diag.Error},
		{"the wire is the kit's", func(h *wiring.Harness) { h.Wire("W2").Origin = kit }, []string{"W2", "E1"}, diag.Error},
		{"the wire was moved by the kit", func(h *wiring.Harness) { h.Wire("W2").Changed = []*wiring.Layer{kit} }, []string{"E1", "W2"}, diag.Error},
		{"what the wire landed on was taken out", func(h *wiring.Harness) { h.Wire("W2").To.Loose = "E1.+" }, []string{"W2"}, diag.Error},
		{"the part was changed", func(h *wiring.Harness) { h.Part("E1").Changed = []*wiring.Layer{kit} }, []string{"E1.+"}, diag.Error},
		{"another wire was moved", func(h *wiring.Harness) { h.Wire("W1").Changed = []*wiring.Layer{kit} }, []string{"W2"}, diag.Warning},
	} {
		t.Run(c.name, func(t *testing.T) {
			h := pathtest.Harness(t, circuit)
			for _, w := range h.Wires {
				w.Origin = platform
			}
			for _, p := range h.Parts {
				p.Origin = platform
			}
			c.change(h)
			got := run(t, h, rule.Options{}, reports("a-rule", diag.Finding{Message: "x", Subjects: c.subjects})).Findings
			if len(got) != 1 || got[0].Level != c.want {
				t.Fatalf("level %v, want %v", got[0].Level, c.want)
			}
			if said := strings.Contains(got[0].Detail, "As found"); said != (c.want == diag.Warning) {
				t.Errorf("detail %q", got[0].Detail)
			}
		})
	}
}

func TestWaivers(t *testing.T) {
	found := diag.Finding{Message: "x", At: at(2, 1), Subjects: []string{"W2", "E1.+"}}
	for _, c := range []struct {
		name   string
		waiver diag.Waiver
		known  []string
		waived bool
		unused string // message of the finding about the waiver; empty: none
		detail string
		advice string
	}{
		{name: "by wire", waiver: diag.Waiver{Rule: "a-rule", At: "W2"}, waived: true},
		{name: "by terminal, in other case", waiver: diag.Waiver{Rule: "a-rule", At: "e1.+"}, waived: true},
		{name: "another place", waiver: diag.Waiver{Rule: "a-rule", At: "W3"},
			unused: "the waiver of a-rule at W3 matches nothing", detail: "a-rule is found at W2.",
			advice: "Name the place of the finding that is meant, or take the waiver out."},
		{name: "a rule that is content", waiver: diag.Waiver{Rule: "b-rule", At: "W2"},
			unused: "the waiver of b-rule at W2 matches nothing", detail: "There is no finding of b-rule on this cart.",
			advice: "Take the waiver out: the reason for it is gone, or it never named the place."},
		{name: "a rule that did not run", waiver: diag.Waiver{Rule: "c-rule", At: "W2"}, known: []string{"c-rule", "a-rule"}},
		{name: "no such rule", waiver: diag.Waiver{Rule: "a-ruel", At: "W2"},
			unused: "the waiver at W2 names no rule: a-ruel", advice: "Did you mean a-rule?"},
		{name: "nothing like a rule", waiver: diag.Waiver{Rule: "horn", At: "W2"},
			unused: "the waiver at W2 names no rule: horn", advice: "The rules are listed by: lugwright explain"},
	} {
		t.Run(c.name, func(t *testing.T) {
			h := pathtest.Harness(t, circuit)
			c.waiver.Span = at(9, 5)
			h.Waivers = []diag.Waiver{c.waiver}
			got := run(t, h, rule.Options{Known: c.known}, reports("a-rule", found), reports("b-rule"))
			if waived := got.Findings[0].Waived; (waived != nil) != c.waived {
				t.Errorf("waived: %v", waived)
			}
			if want := map[bool]int{true: 1, false: 0}[c.waived]; len(got.Waived()) != want {
				t.Errorf("%d findings are waived, want %d", len(got.Waived()), want)
			}
			checkUnused(t, got.Findings[1:], c.unused, c.detail, c.advice)
		})
	}
}

func checkUnused(t *testing.T, fs []diag.Finding, message, detail, advice string) {
	t.Helper()
	if message == "" {
		if len(fs) > 0 {
			t.Errorf("unexpected: %+v", fs)
		}
		return
	}
	want := []diag.Finding{{Rule: rule.WaiverUnused, Level: diag.Warning, Message: message, Detail: detail, Advice: advice, At: at(9, 5)}}
	ignore := cmp.FilterPath(func(p cmp.Path) bool { return p.Last().String() == ".Subjects" }, cmp.Ignore())
	if diff := cmp.Diff(want, fs, ignore); diff != "" {
		t.Errorf("the waiver (-want +got):\n%s", diff)
	}
}

func TestWaivedIsNotOpen(t *testing.T) {
	h := pathtest.Harness(t, circuit)
	h.Waivers = []diag.Waiver{{Rule: "a-rule", At: "W1", Reason: "so it is"}}
	got := run(t, h, rule.Options{}, reports("a-rule",
		diag.Finding{Message: "waived", Subjects: []string{"W1"}},
		diag.Finding{Message: "open", Subjects: []string{"W2"}, Level: diag.Warning},
		diag.Finding{Message: "low", Subjects: []string{"W3"}, Level: diag.Note}))
	var open []string
	for _, f := range got.Open(diag.Warning) {
		open = append(open, f.Message)
	}
	if diff := cmp.Diff([]string{"open"}, open); diff != "" {
		t.Errorf("open (-want +got):\n%s", diff)
	}
	if diag.Worst(got.Findings) != diag.Warning {
		t.Errorf("worst is %v", diag.Worst(got.Findings))
	}
}

func TestNotCheckedIsSortedAndSaidOnce(t *testing.T) {
	h := pathtest.Harness(t, circuit)
	r := &rule.Rule{ID: "a-rule", Level: diag.Error, Run: func(p *rule.Pass) {
		p.NotChecked("W10", "it has no size", diag.Span{})
		p.NotChecked("W9", "it has no size", diag.Span{})
		p.NotChecked("W10", "it has no size", diag.Span{})
	}}
	var got []string
	for _, n := range run(t, h, rule.Options{}, r).NotChecked {
		got = append(got, n.Rule+" "+n.String())
	}
	if diff := cmp.Diff([]string{"a-rule W9: it has no size", "a-rule W10: it has no size"}, got); diff != "" {
		t.Errorf("not checked (-want +got):\n%s", diff)
	}
}

func TestRunEndsWithItsContext(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	h := pathtest.Harness(t, circuit)
	first := &rule.Rule{ID: "a-rule", Level: diag.Error, Run: func(p *rule.Pass) {
		p.Report(diag.Finding{Message: "x"})
		cancel()
		if p.Context().Err() == nil {
			t.Error("the pass does not know that its context ended")
		}
	}}
	second := &rule.Rule{ID: "b-rule", Level: diag.Error, Run: func(*rule.Pass) { t.Error("a rule ran after the context ended") }}
	got, err := rule.Run(ctx, h, []*rule.Rule{first, second}, rule.Options{})
	if !errors.Is(err, context.Canceled) {
		t.Errorf("error %v", err)
	}
	if len(got.Findings) != 1 {
		t.Errorf("findings %v", got.Findings)
	}
}

func TestValidate(t *testing.T) {
	good := func() *rule.Rule {
		return &rule.Rule{ID: "a-rule", Title: "t", Level: diag.Note, Why: "30 A", Do: "d", Source: "s",
			Wrong: "w", Right: "r", Run: func(*rule.Pass) {}}
	}
	if err := rule.Validate([]*rule.Rule{good()}); err != nil {
		t.Fatalf("a good rule: %v", err)
	}
	for _, c := range []struct {
		name  string
		spoil func(r *rule.Rule)
		want  string
	}{
		{"id", func(r *rule.Rule) { r.ID = "A Rule" }, "the id is not words"},
		{"level", func(r *rule.Rule) { r.Level = 0 }, "it has no level"},
		{"run", func(r *rule.Rule) { r.Run = nil }, "it does nothing"},
		{"title", func(r *rule.Rule) { r.Title = "two\nlines" }, "more than one line"},
		{"why", func(r *rule.Rule) { r.Why = " " }, "it has no why"},
		{"number", func(r *rule.Rule) { r.Why = "it burns" }, "the why has no number"},
		{"do", func(r *rule.Rule) { r.Do = "" }, "it has no do"},
		{"source", func(r *rule.Rule) { r.Source = "" }, "it has no source"},
		{"right", func(r *rule.Rule) { r.Right = r.Wrong }, "the same"},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := good()
			c.spoil(r)
			err := rule.Validate([]*rule.Rule{r})
			if err == nil || !strings.Contains(err.Error(), c.want) {
				t.Errorf("error %v, want %q", err, c.want)
			}
		})
	}
	if err := rule.Validate([]*rule.Rule{good(), good()}); err == nil || !strings.Contains(err.Error(), "before it is called") {
		t.Errorf("two of one id: %v", err)
	}
}
