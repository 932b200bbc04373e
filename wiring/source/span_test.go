package source

import (
	"fmt"
	"strings"
	"testing"
	"unicode/utf8"

	"pgregory.net/rapid"

	"github.com/lugwright/lugwright/wiring/diag"
)

// at returns the text at a span, and whether the span lies within the content.
func at(content string, s diag.Span) (string, bool) {
	lines := strings.Split(strings.TrimPrefix(content, "\ufeff"), "\n")
	if s.Line < 1 || s.Line > len(lines) {
		return "", false
	}
	runes := []rune(strings.TrimSuffix(lines[s.Line-1], "\r"))
	if s.Col < 1 || s.EndCol < s.Col || s.EndCol > len(runes)+1 {
		return "", false
	}
	return string(runes[s.Col-1 : s.EndCol-1]), true
}

// drawn is a tree as the generator wrote it, in the order of the file.
type drawn struct {
	texts []string // keys and values, as they must be read
	sites []string // what must stand at their spans
}

// writer writes random trees in the ways that YAML allows.
type writer struct {
	t *rapid.T
	b strings.Builder
	drawn
}

func (w *writer) word() {
	plain := rapid.StringMatching(`[a-zA-Z0-9äµΩ日][-a-zA-Z0-9äµΩ日/.+ ']{0,10}[a-zA-Z0-9"']`).Draw(w.t, "text")
	written := plain
	switch rapid.IntRange(0, 4).Draw(w.t, "quotes") {
	case 0:
		plain += ": # , é"
		written = "'" + strings.ReplaceAll(plain, "'", "''") + "'"
	case 1:
		plain += `\ " 日 ]`
		written = `"` + strings.ReplaceAll(strings.ReplaceAll(plain, `\`, `\\`), `"`, `\"`) + `"`
	}
	if strings.EqualFold(plain, "null") {
		plain, written = "nothing", "nothing"
	}
	w.texts = append(w.texts, plain)
	w.sites = append(w.sites, written)
	w.b.WriteString(written)
}

func (w *writer) key(n int) {
	key := fmt.Sprintf("k%dä", n)
	w.texts, w.sites = append(w.texts, key), append(w.sites, key)
	w.b.WriteString(key + ":")
}

func (w *writer) brackets(depth int) {
	n := rapid.IntRange(0, 3).Draw(w.t, "items")
	list := rapid.Bool().Draw(w.t, "list")
	open, closing := "{", "}"
	if list {
		open, closing = "[", "]"
	}
	w.b.WriteString(open)
	for i := range n {
		if i > 0 {
			w.b.WriteString(rapid.SampledFrom([]string{",", ", ", " ,  ", ",\n      "}).Draw(w.t, "comma"))
		}
		if !list {
			w.key(i)
			w.b.WriteString(" ")
		}
		if depth < 3 && rapid.IntRange(0, 3).Draw(w.t, "deeper") == 0 {
			w.brackets(depth + 1)
		} else {
			w.word()
		}
	}
	w.b.WriteString(closing)
}

func (w *writer) block(indent, depth int) {
	for i := range rapid.IntRange(1, 4).Draw(w.t, "entries") {
		if rapid.IntRange(0, 5).Draw(w.t, "comment") == 0 {
			w.b.WriteString(strings.Repeat(" ", indent) + "# a comment: with {signs\n")
		}
		w.b.WriteString(strings.Repeat(" ", indent))
		w.key(i)
		switch rapid.IntRange(0, 3).Draw(w.t, "value") {
		case 0:
			w.b.WriteString(" ")
			w.brackets(0)
		case 1:
			if depth < 3 {
				w.b.WriteString("\n")
				w.block(indent+2, depth+1)
				continue
			}
			fallthrough
		default:
			w.b.WriteString(rapid.SampledFrom([]string{" ", "   ", "\t"}).Draw(w.t, "blank"))
			w.word()
		}
		w.b.WriteString(rapid.SampledFrom([]string{"\n", "  \n", " # c\n", "\r\n", "\n\n"}).Draw(w.t, "end"))
	}
}

// walk calls f for each text of a tree, keys included, in the order of the file.
func walk(n *Node, f func(*Node)) {
	if n.Kind == Scalar {
		f(n)
	}
	for _, item := range n.Items {
		walk(item, f)
	}
	for _, e := range n.Entries {
		f(e.Key)
		walk(e.Value, f)
	}
}

// Whatever is written comes back as it was written, and its span says where.
func TestSpans(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := &writer{t: t}
		if rapid.Bool().Draw(t, "byte order mark") {
			w.b.WriteString("\ufeff")
		}
		w.block(0, 0)
		content := w.b.String()
		root, findings := Parse("f", []byte(content))
		if len(findings) > 0 {
			t.Fatalf("%v in\n%s", findings, content)
		}
		i := 0
		walk(root, func(n *Node) {
			site, ok := at(content, n.Span)
			if i >= len(w.texts) || !ok || n.Text != w.texts[i] || site != w.sites[i] {
				t.Fatalf("text %d: read %q at %v, which is %q; wrote %q in\n%s", i, n.Text, n.Span, site, w.texts[min(i, len(w.texts)-1)], content)
			}
			i++
		})
		if i != len(w.texts) {
			t.Fatalf("%d texts of %d in\n%s", i, len(w.texts), content)
		}
		checkSpans(t, content, root, findings)
	})
}

type failer interface{ Fatalf(string, ...any) }

// checkSpans holds every span to the text, and every plain text on one line to its span.
func checkSpans(t failer, content string, n *Node, findings []diag.Finding) {
	for _, f := range findings {
		if _, ok := at(content, f.At); !ok || f.Message == "" || f.Rule != RuleInput {
			t.Fatalf("finding %+v in %q", f, content)
		}
	}
	if n != nil {
		checkNode(t, content, n)
	}
}

func checkNode(t failer, content string, n *Node) {
	site, ok := at(content, n.Span)
	if !ok {
		t.Fatalf("%+v lies outside %q", n, content)
	}
	block := strings.HasPrefix(site, "|") || strings.HasPrefix(site, ">")
	if n.Kind == Scalar && !n.Quoted && !block && utf8.RuneCountInString(site) == utf8.RuneCountInString(n.Text) && site != n.Text {
		t.Fatalf("%+v stands at %q", n, site)
	}
	for _, item := range n.Items {
		if item.Kind == Null {
			t.Fatalf("an empty item at %v in %q", item.Span, content)
		}
		checkNode(t, content, item)
	}
	for _, e := range n.Entries {
		if e.Key.Kind != Scalar || e.Value == nil {
			t.Fatalf("entry %+v in %q", e, content)
		}
		checkNode(t, content, e.Key)
		checkNode(t, content, e.Value)
	}
}
