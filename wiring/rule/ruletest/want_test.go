package ruletest

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/lugwright/lugwright/wiring/diag"
)

func finding(rule string, line int, message string) diag.Finding {
	return diag.Finding{Rule: rule, Level: diag.Error, Message: message, At: diag.Span{File: "a.yaml", Line: line, Col: 1, EndCol: 2}}
}

func TestCompare(t *testing.T) {
	const text = `job: X
W1: {}   # want a-rule "W1 is .* wrong"
W2: {}   # plain comment
W3: {}   # want a-rule "W3" b-rule "^warning: W3"
`
	third := finding("b-rule", 4, "W3 is odd")
	third.Level = diag.Warning
	right := []diag.Finding{finding("a-rule", 2, "W1 is quite wrong"), finding("a-rule", 4, "W3 is wrong"), third}
	for _, c := range []struct {
		name string
		fs   []diag.Finding
		want []string
	}{
		{"all there", right, nil},
		{"one missing", right[1:], []string{`a.yaml:2: missing: a-rule "W1 is .* wrong"`}},
		{"one too many", append(right[:3:3], finding("c-rule", 3, "W2 is wrong")), []string{"a.yaml:3: one too many: error: W2 is wrong |  |  (c-rule)"}},
		{"the same twice", append(right[:3:3], right[0]), []string{"a.yaml:2: one too many: error: W1 is quite wrong |  |  (a-rule)"}},
		{"another line", []diag.Finding{finding("a-rule", 3, "W1 is quite wrong"), right[1], right[2]},
			[]string{`a.yaml:2: missing: a-rule "W1 is .* wrong"`, "a.yaml:3: one too many: error: W1 is quite wrong |  |  (a-rule)"}},
		{"another text", []diag.Finding{finding("a-rule", 2, "W1 is fine"), right[1], right[2]},
			[]string{"a.yaml:2: one too many: error: W1 is fine |  |  (a-rule)", `a.yaml:2: missing: a-rule "W1 is .* wrong"`}},
		{"another rule", []diag.Finding{finding("b-rule", 2, "W1 is quite wrong"), right[1], right[2]},
			[]string{"a.yaml:2: one too many: error: W1 is quite wrong |  |  (b-rule)", `a.yaml:2: missing: a-rule "W1 is .* wrong"`}},
		{"another level", []diag.Finding{right[0], right[1], finding("b-rule", 4, "W3 is odd")},
			[]string{"a.yaml:4: one too many: error: W3 is odd |  |  (b-rule)", `a.yaml:4: missing: b-rule "^warning: W3"`}},
	} {
		t.Run(c.name, func(t *testing.T) {
			ws, err := wants(text)
			if err != nil {
				t.Fatal(err)
			}
			if diff := cmp.Diff(c.want, compare("a.yaml", ws, c.fs), cmp.Transformer("empty", func(s []string) string { return strings.Join(s, "\n") })); diff != "" {
				t.Errorf("problems (-want +got):\n%s", diff)
			}
		})
	}
}

func TestCompareKnowsFiles(t *testing.T) {
	f := finding("a-rule", 1, "x")
	f.At.File = "b.yaml"
	ws, err := wants(`W1: {}  # want a-rule "x"`)
	if err != nil {
		t.Fatal(err)
	}
	if got := compare("a.yaml", ws, []diag.Finding{f}); len(got) != 2 {
		t.Errorf("a finding in another file counts: %v", got)
	}
}

func TestBadWants(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"x # want a-rule", `line 1: a want is a rule and a quoted regular expression, not "a-rule"`},
		{"\nx # want a-rule W1", `line 2: behind a-rule: no quoted regular expression in "W1"`},
		{`x # want a-rule "("`, "line 1: error parsing regexp: missing closing ): `(`"},
	} {
		_, err := wants(c.text)
		if err == nil || err.Error() != c.want {
			t.Errorf("%q: error %v, want %s", c.text, err, c.want)
		}
	}
}
