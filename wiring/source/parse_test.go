package source

import (
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// show writes a tree in one line, for comparing.
func show(n *Node) string {
	switch {
	case n == nil:
		return "nothing"
	case n.Kind == Null:
		return "null"
	case n.Kind == Scalar && n.Quoted:
		return fmt.Sprintf("%q", n.Text)
	case n.Kind == Scalar:
		return n.Text
	}
	var parts []string
	for _, item := range n.Items {
		parts = append(parts, show(item))
	}
	for _, e := range n.Entries {
		parts = append(parts, show(e.Key)+": "+show(e.Value))
	}
	if n.Kind == List {
		return "[" + strings.Join(parts, ", ") + "]"
	}
	return "{" + strings.Join(parts, ", ") + "}"
}

// listing writes what Parse found as a person would read it.
func listing(content string) []string {
	_, findings := Parse("f", []byte(content))
	var lines []string
	for _, f := range findings {
		s := fmt.Sprintf("%d:%d-%d %s", f.At.Line, f.At.Col, f.At.EndCol, f.Message)
		if f.Advice != "" {
			s += ". " + f.Advice
		}
		lines = append(lines, s)
	}
	return lines
}

func TestParseAsWritten(t *testing.T) {
	tests := []struct{ name, content, want string }{
		{"words that YAML would convert", "a: on\nb: no\nc: 012\nd: 1.10\ne: 1e3\nf: 2026-03-02\ng: 1_000\nh: 12:30\ni: 0x1F\n",
			"{a: on, b: no, c: 012, d: 1.10, e: 1e3, f: 2026-03-02, g: 1_000, h: 12:30, i: 0x1F}"},
		{"keys that YAML would convert", "{1: a, 012: b, on: c, null: d, 1.5: e}", "{1: a, 012: b, on: c, null: d, 1.5: e}"},
		{"bare signs", "a: [+, -]\nb: {+: x, -: y}\n", "{a: [+, -], b: {+: x, -: y}}"},
		{"inch and foot signs", "a: 14\"\nb: {c: 4'6\"}\n", `{a: 14", b: {c: 4'6"}}`},
		{"quotes", `a: "b: c # d"` + "\nc: 'it''s'\n" + `d: "x\ty"`, `{a: "b: c # d", c: "it's", d: "x\ty"}`},
		{"an empty text in quotes is a text", `a: ""`, `{a: ""}`},
		{"text over several lines", "a: one\n  two\nb: |\n  x\n  y\nc: >-\n  p\n  q\n", "{a: one two, b: x\ny\n, c: p q}"},
		{"nested", "a:\n  b:\n  - c\n  - {d: [e]}\n", "{a: {b: [c, {d: [e]}]}}"},
		{"carriage returns", "a: b\r\nc:\r\n  - d\r\n", "{a: b, c: [d]}"},
		{"byte order mark", "\ufeffa: b\n", "{a: b}"},
		{"trailing blanks and comments", "# x\na: b   # y\n\nc: d \t\n", "{a: b, c: d}"},
		{"document signs", "---\na: b\n...\n", "{a: b}"},
		{"non-breaking spaces", "a:\u00a0b\nc: d\u00a0e\n\u00a0\nf: {g:\u00a0h}\n", "{a: b, c: d\u00a0e, f: {g: h}}"},
		{"a tab behind a colon", "a:\tb\n", "{a: b}"},
		{"the user's own keys", "a: b\nx-mine: {c: d}\ne: {x-note: f, g: h}\n", "{a: b, e: {g: h}}"},
		{"addresses", "a: http://x/y\nb: {c: d:e}\n", "{a: http://x/y, b: {c: d:e}}"},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			root, findings := Parse("f", []byte(test.content))
			if len(findings) > 0 {
				t.Errorf("findings: %v", findings)
			}
			if diff := cmp.Diff(test.want, show(root)); diff != "" {
				t.Errorf("(-want +got)\n%s", diff)
			}
		})
	}
}

// A file in which line 6 is replaced, at two spaces of indentation.
const (
	above = "top:\n  a: 1\n  b: 2\nparts:\n  p: {x: y}\n"
	below = "  q: {x: z}\n  r: {x: z}\nwires:\n  w: {a: b}\n"
)

// The mistakes of people, with the lines and columns where a person would look for them.
func TestMistakes(t *testing.T) {
	tests := []struct {
		written string
		want    []string
	}{
		{"  size: #2 AWG", []string{"6:9-15 size has no value: everything after # is a comment. Write 2 AWG"}},
		{"  k: {note: stack #2}", []string{"6:13-22 # after a space starts a comment and the { is never closed. Put the text in quotes"}},
		{"  k: [a, stack #2]", []string{"6:10-19 # after a space starts a comment and the [ is never closed. Put the text in quotes"}},
		{"  k: {note: left, under the dash}", []string{`6:13-33 a comma inside { } begins the next entry. Put the text in quotes: "left, under the dash"`}},
		{"  k: {note: “left, under the dash”}", []string{`6:13-18 these are typographic quotes, not ". Write " instead of “`}},
		{"  k: from: G1.+, to: F1.in", []string{"6:6-27 a colon and a space begin a value. Put the text in quotes, or the entries in { }"}},
		{"  note: fuse: 10 A", []string{`6:9-19 a colon and a space begin a value. Put the text in quotes: "fuse: 10 A"`}},
		{"  k: 1: 2: 3", []string{`6:6-13 a colon and a space begin a value. Put the text in quotes: "1: 2: 3"`}},
		{"  k: see:", []string{`6:6-10 a colon and a space begin a value. Put the text in quotes: "see:"`}},
		{"  k: {note: fuse: 10 A}", []string{"6:13-23 a colon and a space begin a value. Put the text in quotes, or a comma between the two entries"}},
		{"  k: {a: b c: d}", []string{"6:10-16 a colon and a space begin a value. Put the text in quotes, or a comma between the two entries"}},
		{"  k: {from:G1.+}", []string{"6:7-16 put a space after the colon: from: G1.+"}},
		{"  k: {a: b, from:G1.+}", []string{"6:13-22 put a space after the colon: from: G1.+"}},
		{"  from:G1.+", []string{"6:3-12 put a space after the colon: from: G1.+"}},
		{"  k: %80", []string{`6:6-9 text that begins with % goes in quotes. Write "%80"`}},
		{"  k: {x: %80}", []string{`6:10-13 text that begins with % goes in quotes. Write "%80"`}},
		{"  k: @a", []string{`6:6-8 text that begins with @ goes in quotes. Write "@a"`}},
		{"  k: `a`", []string{"6:6-9 text that begins with ` goes in quotes. Write \"`a`\""}},
		{"  k: > 3", []string{`6:6-9 text that begins with > goes in quotes. Write "> 3"`}},
		{"  k: * a", []string{`6:6-9 text that begins with * goes in quotes. Write "* a"`}},
		{"  k: [*a]", []string{`6:7-9 text that begins with * goes in quotes. Write "*a"`}},
		{"  k: - y", []string{`6:6-9 text that begins with - goes in quotes. Write "- y"`}},
		{"  k: [ - ]", []string{`6:8-9 text that begins with - goes in quotes. Write "-"`}},
		{"  k: {q: moves?}", []string{`6:10-16 text that holds ? goes in quotes inside { } and [ ]. Write "moves?"`}},
		{"  k: {a: b [c] d, e: f}", []string{`6:10-15 text that holds [ goes in quotes inside { } and [ ]. Write "b [c]"`}},
		{"\tk: 1", []string{"6:1-2 line 6 begins with a tab: indent with spaces"}},
		{"  \tk: 1\n\tl: 1\n\tm: 2", []string{"6:3-4 line 6 begins with a tab: indent with spaces. The same on lines 7 and 8"}},
		{"  length:", []string{"6:3-9 length has no value: leave it out, or write unknown"}},
		{"  length: # later", []string{"6:3-9 length has no value: leave it out, or write unknown"}},
		{"  k: {length: ~, size: null}", []string{
			"6:7-13 length has no value: leave it out, or write unknown",
			"6:18-22 size has no value: leave it out, or write unknown"}},
		{"  k: [a, ~]", []string{"6:9-11 this item of the list is empty. Delete it"}},
		{"  p: 1", []string{"6:3-4 p stands twice in this map, on lines 5 and 6"}},
		{"  k: {a: 1, a: 2}", []string{"6:13-14 a stands twice in this map, on line 6"}},
		{"  k: &a x", []string{"6:6-8 " + notUsed + ". Text that begins with & goes in quotes"}},
		{"  k: &a x\n  l: *a", []string{
			"6:6-8 " + notUsed + ". Text that begins with & goes in quotes",
			"7:6-8 " + notUsed + ". Text that begins with * goes in quotes"}},
		{"  k: {<<: {x: y}}", []string{"6:7-9 " + notUsed}},
		{"  k: !x", []string{"6:6-8 " + notUsed + ". Text that begins with ! goes in quotes"}},
		{"  k: ! x", []string{"6:6-7 " + notUsed + ". Text that begins with ! goes in quotes"}},
		{"  ? k\n  : l", []string{"6:3-6 keys that begin with ? are not used here. Write k: and its value"}},
		{"  k: “abc”", []string{`6:6-11 these are typographic quotes, not ". Write " instead of “`}},
		{"\u00a0\u00a0k: 1", []string{"6:1-3 line 6 begins with a non-breaking space: indent with ordinary spaces"}},
		{"  k: \"abc", []string{`6:6-10 the " is never closed. Add the closing "`}},
		{"  k: {x: 'abc}", []string{`6:10-15 the ' is never closed. Add the closing '`}},
		{"  k: {a: b", []string{"6:6-7 the { is never closed. Add the closing }"}},
		{"  k: [a, b", []string{"6:6-7 the [ is never closed. Add the closing ]"}},
		{"  k: [a, b}", []string{"6:11-12 this is closed with }, and was opened for ["}},
		{"  k: {a: b}}", []string{"6:12-13 there is text behind the closing }. Put the text in quotes, or put a comma or a new line in front of it"}},
		{"  k: [a] b", []string{"6:10-11 there is text behind the closing ]. Put the text in quotes, or put a comma or a new line in front of it"}},
		{"  k: {a: b, , c: d}", []string{"6:13-14 nothing stands in front of this comma. Delete it"}},
		{"  k: \"a\" b", []string{`6:6-11 the text goes on behind the closing ". Put all of it between ', or write \" for a " inside it`}},
		{"  k: {x: 'customer's own'}", []string{`6:10-26 the text goes on behind the closing '. Put all of it between ", or write '' for a ' inside it`}},
		{`  k: "C:\jobs"`, []string{`6:9-11 a backslash between double quotes begins a special sign, and this is none. Write \\ for a backslash, or use ' instead of "`}},
		{"   k: 1", []string{"6:4-8 line 6 is indented by 3 spaces, and the entries above it by 2. Entries of one map or list begin in one column"}},
		{" k: 1", []string{"6:2-6 line 6 is indented by 1 space, and the entries above it by 0. Entries of one map or list begin in one column"}},
		{"  - a", []string{"6:3-6 a dash begins an item of a list, and the entries above it are keys with values"}},
		{"  k:\n  - a\n  - b\n   - c", nil}, // one text "b - c": YAML has it so
		{"  kind", []string{"6:3-7 kind has no colon and no value. Write kind: and its value"}},
		{"  k {a: b}", []string{"6:3-7 put a colon and a space in front of the {: k: {…}"}},
		{"  k: a\u2028b", []string{"6:7-8 the line separator U+2028 cannot stand in this file. Delete it"}},
		{"  k: \x01", []string{"6:6-7 the control character U+0001 cannot stand in this file. Delete it"}},
		{"  k: wire #4", []string{"6:11-13 everything after # is a comment. If it belongs to the text, put the text in quotes; else write a space behind the #"}},
		{"  {a: b}: c", []string{"6:3-4 a key is a word or a number, not a map, a list or an alias"}},
		{"  k: ü #x: {ö: ä, ß: %}", nil},
		{"  kä: {ö: ä, ß: %}", []string{`6:17-18 text that begins with % goes in quotes. Write "%"`}},

		// several in one file
		{"  k: {a: stack #2, b: 1}\n  l: {c: %4}\n  m: {d: left, right}\n  n:", []string{
			"6:10-25 # after a space starts a comment and the { is never closed. Put the text in quotes",
			`7:10-12 text that begins with % goes in quotes. Write "%4"`,
			`8:10-21 a comma inside { } begins the next entry. Put the text in quotes: "left, right"`,
			"9:3-4 n has no value: leave it out, or write unknown"}},
		{"  k: {a: %1, b: %2}", []string{
			`6:10-12 text that begins with % goes in quotes. Write "%1"`,
			`6:17-19 text that begins with % goes in quotes. Write "%2"`}},
		{"  k: 'a' b\n  l: fuse: 1\n\n  m: {n: o\n", []string{
			`6:6-11 the text goes on behind the closing '. Put all of it between ", or write '' for a ' inside it`,
			`7:6-13 a colon and a space begin a value. Put the text in quotes: "fuse: 1"`,
			"9:6-7 the { is never closed. Add the closing }"}},
	}
	for _, test := range tests {
		t.Run(test.written, func(t *testing.T) {
			got := listing(above + test.written + "\n" + below)
			if diff := cmp.Diff(test.want, got); diff != "" {
				t.Errorf("(-want +got)\n%s", diff)
			}
		})
	}
}

// The same mistakes are found where no line stands above or below them.
func TestMistakesOnTheFirstLine(t *testing.T) {
	tests := []struct{ content, want string }{
		{"", "1:1-1 this file is empty"},
		{"# nothing\n", "1:1-1 this file is empty"},
		{"job:TP-14\n", "1:1-10 put a space after the colon: job: TP-14"},
		{"- a\n- b\n", "1:1-4 a file is a map: it begins with a key, a colon and a value, such as job: TP-14"},
		{"hello there\n", "1:1-12 a file is a map: it begins with a key, a colon and a value, such as job: TP-14"},
		{"a: {b: stack #2}", "1:8-17 # after a space starts a comment and the { is never closed. Put the text in quotes"},
		{"a: %80", `1:4-7 text that begins with % goes in quotes. Write "%80"`},
		{"a: b: c", `1:4-8 a colon and a space begin a value. Put the text in quotes: "b: c"`},
		{"%YAML 1.2\n---\na: b\n", "1:1-10 lines that begin with % are not used here. Delete the line"},
		{"a: b\n---\nc: d\n", "2:1-4 " + notUsed + ". Put the second document into a file of its own"},
		{"job:\nparts: {}\n", "1:1-4 job has no value: leave it out, or indent what belongs to it"},
		{"\xff\xfea\x00", "1:1-1 this file is UTF-16 text. Save it as UTF-8"},
		{"a: b\nname: caf\xe9\n", "2:10-11 byte E9 is not UTF-8 text. Save the file as UTF-8"},
		{"a: b\rc: d\r", "1:5-6 a carriage return ends this line. Save the file with the line ends of Windows or Unix"},
	}
	for _, test := range tests {
		t.Run(test.content, func(t *testing.T) {
			got := strings.Join(listing(test.content)[:1], "\n")
			if diff := cmp.Diff(test.want, got); diff != "" {
				t.Errorf("(-want +got)\n%s", diff)
			}
		})
	}
}

// What could be read stands in the tree beside what could not, so that one run finds the
// faults of wiring too.
func TestTreeBesideMistakes(t *testing.T) {
	tests := []struct{ content, want string }{
		{"a: {b: stack #2}\nc: d\n", "{a: {b: null}, c: d}"},
		{"a: {b: left, under the dash, c: d}\n", "{a: {b: left, c: d}}"},
		{"a: {from:G1.+, c: d}\n", "{a: {c: d}}"},
		{"a: b: c\nd: %8\ne: f\n", "{a: null, d: null, e: f}"},
		{"a:\nb: c\n", "{a: null, b: c}"},
		{"a: &x b\nc: [*x, d]\n", "{a: b, c: [d]}"},
		{"a: b\na: c\n", "{a: b}"},
		{"a: b\n\tc: d\n", "nothing"},
	}
	for _, test := range tests {
		t.Run(test.content, func(t *testing.T) {
			root, findings := Parse("f", []byte(test.content))
			if len(findings) == 0 {
				t.Error("no finding")
			}
			if diff := cmp.Diff(test.want, show(root)); diff != "" {
				t.Errorf("(-want +got)\n%s", diff)
			}
		})
	}
}

func TestDuplicateNamesTheFirst(t *testing.T) {
	_, findings := Parse("f", []byte("a: 1\nb: 2\na: 3\n"))
	if len(findings) != 1 || len(findings[0].Related) != 1 {
		t.Fatalf("findings: %v", findings)
	}
	related := findings[0].Related[0]
	if got, want := fmt.Sprintf("%d:%d %s", related.Span.Line, related.Span.Col, related.Label), "1:1 the first a"; got != want {
		t.Errorf("related: %s, want %s", got, want)
	}
}
