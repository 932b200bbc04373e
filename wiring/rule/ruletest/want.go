package ruletest

import (
	"fmt"
	"regexp"
	"sort"
	"strconv"
	"strings"

	"github.com/lugwright/lugwright/wiring/diag"
)

// want is one finding that a line of a job file asks for.
type want struct {
	line int
	rule string
	text *regexp.Regexp
}

// wants reads the comments of a file: `# want RULE "regexp"`, several in one comment if
// need be.
func wants(text string) ([]want, error) {
	var all []want
	for i, line := range strings.Split(text, "\n") {
		_, comment, found := strings.Cut(line, "# want ")
		if !found {
			continue
		}
		of, err := wantsOf(i+1, comment)
		if err != nil {
			return nil, fmt.Errorf("line %d: %w", i+1, err)
		}
		all = append(all, of...)
	}
	return all, nil
}

func wantsOf(line int, comment string) ([]want, error) {
	var all []want
	for rest := strings.TrimSpace(comment); rest != ""; rest = strings.TrimSpace(rest) {
		rule, after, ok := strings.Cut(rest, " ")
		if !ok {
			return nil, fmt.Errorf("a want is a rule and a quoted regular expression, not %q", rest)
		}
		quoted, err := strconv.QuotedPrefix(strings.TrimSpace(after))
		if err != nil {
			return nil, fmt.Errorf("behind %s: no quoted regular expression in %q", rule, after)
		}
		pattern, _ := strconv.Unquote(quoted) // QuotedPrefix has looked
		text, err := regexp.Compile(pattern)
		if err != nil {
			return nil, err
		}
		all = append(all, want{line: line, rule: rule, text: text})
		rest = strings.TrimSpace(after)[len(quoted):]
	}
	return all, nil
}

// compare matches findings with what the file wants, each with one, and says what is
// missing and what is too many, in the order of lines.
func compare(file string, ws []want, fs []diag.Finding) []string {
	var problems []problem
	used := make([]bool, len(ws))
	for _, f := range fs {
		if !take(file, ws, used, f) {
			problems = append(problems, problem{f.At.Line, fmt.Sprintf("%s:%d: one too many: %s (%s)", f.At.File, f.At.Line, told(f), f.Rule)})
		}
	}
	for i, w := range ws {
		if !used[i] {
			problems = append(problems, problem{w.line, fmt.Sprintf("%s:%d: missing: %s %q", file, w.line, w.rule, w.text)})
		}
	}
	sort.SliceStable(problems, func(i, j int) bool { return problems[i].line < problems[j].line })
	said := make([]string, len(problems))
	for i, p := range problems {
		said[i] = p.text
	}
	return said
}

type problem struct {
	line int
	text string
}

func take(file string, ws []want, used []bool, f diag.Finding) bool {
	for i, w := range ws {
		if !used[i] && w.rule == f.Rule && w.line == f.At.Line && f.At.File == file && w.text.MatchString(told(f)) {
			used[i] = true
			return true
		}
	}
	return false
}

// told is what a want is matched against: "error: message | detail | advice".
func told(f diag.Finding) string {
	return fmt.Sprintf("%v: %s | %s | %s", f.Level, f.Message, f.Detail, f.Advice)
}
