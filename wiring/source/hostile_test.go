package source

import (
	"fmt"
	"runtime"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
)

// What a hostile or damaged file may cost. The time is generous, for machines that do
// other things beside; a quadratic reader would miss it by orders of magnitude.
const (
	mostTime  = 5 * time.Second
	mostAlloc = 700 << 20 // bytes in total over the whole reading, not at once
)

func TestHostileFiles(t *testing.T) {
	const mega = 1 << 20
	const deep = "maps and lists stand inside each other more than 16 deep"
	tests := []struct{ name, content, want string }{
		{"too long", strings.Repeat("a", 4*mega+1), "this file has 4.0 MB, and 4 MB is the most"},
		{"brackets", "a: " + strings.Repeat("[", 100_000), deep},
		{"brackets, closed", "a: " + strings.Repeat("[", 5_000) + strings.Repeat("]", 5_000), deep},
		{"braces", strings.Repeat("{a: ", 100_000), deep},
		{"17 deep", strings.Repeat("{a: ", 17) + strings.Repeat("}", 17), deep},
		{"dashes", strings.Repeat("- ", mega/2), deep},
		{"question marks", strings.Repeat("? ", mega/2), deep},
		{"commas", "a: [" + strings.Repeat("b,", mega), "this file has more than 1,000,000 values"},
		{"one long text", "a: " + strings.Repeat("x", 3*mega), "this text has 3072 kB, and 4 kB is the most"},
		{"one long quoted text", "a: \"" + strings.Repeat("x ", mega) + "\"", "this text has 2048 kB, and 4 kB is the most"},
		{"one long key", strings.Repeat("k", 900) + "\n" + strings.Repeat("k", 5000) + ": a", ""},
		{"a quote never closed", "a: \"" + strings.Repeat("x ", mega), `the " is never closed`},
		{"a bracket never closed", "a: [" + strings.Repeat("b,", 100_000), "the [ is never closed"},
		{"many quotes", strings.Repeat("\"a\" ", mega/2), ""},
		{"many broken lines", strings.Repeat("a: b: c\n", 60_000), `a colon and a space begin a value`},
		{"many unclosed brackets", strings.Repeat("[\n", 60_000), deep},
		{"many unclosed quotes", strings.Repeat("a: \"b\n", 60_000), `the " is never closed`},
		{"many keys twice", strings.Repeat("a: b\n", 60_000), "a stands twice in this map, on lines 1 and 2"},
		{"many anchors", strings.Repeat("&a ", mega), "&a &a &a &a &a &a &a &a… has no colon and no value"},
		{"many stars", "[" + strings.Repeat("*a,", 100_000), ""},
		{"many tags", strings.Repeat("!a ", mega), "!a !a !a !a !a !a !a !a… has no colon and no value"},
		{"many odd blanks", strings.Repeat("\u00a0a: b\n", 100_000), "line 1 begins with a non-breaking space: indent with ordinary spaces"},
		{"one long line of odd letters", "a: [" + strings.Repeat("ä,", 150_000) + "]", ""},
		{"comments", "a: b\n" + strings.Repeat("#\n", mega/4), ""},
		{"control signs", strings.Repeat("\x01", mega), "the control character U+0001 cannot stand in this file"},
		{"nothing but noughts", strings.Repeat("\x00", mega), "the control character U+0000 cannot stand in this file"},
		{"aliases of aliases", bomb(), notUsed},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			var before, after runtime.MemStats
			runtime.ReadMemStats(&before)
			start := time.Now()
			_, findings := Parse("f", []byte(test.content))
			took := time.Since(start)
			runtime.ReadMemStats(&after)
			alloc := after.TotalAlloc - before.TotalAlloc
			t.Logf("%.1f MB in %v, %d MB allocated, %d findings", float64(len(test.content))/mega, took.Round(time.Millisecond), alloc/mega, len(findings))
			if took > mostTime || alloc > mostAlloc {
				t.Errorf("took %v and %d MB", took, alloc/mega)
			}
			if len(findings) > MostFindings+1 {
				t.Errorf("%d findings", len(findings))
			}
			got := ""
			if len(findings) > 0 {
				got = findings[0].Message
			}
			if test.want != "" && got != test.want {
				t.Errorf("first finding %q, want %q", got, test.want)
			}
		})
	}
}

// bomb is the well-known file in which nine lists of nine aliases stand for 9^9 values.
func bomb() string {
	var b strings.Builder
	b.WriteString("a0: &a0 [x, x, x, x, x, x, x, x, x]\n")
	for i := 1; i < 9; i++ {
		fmt.Fprintf(&b, "a%d: &a%d [%s]\n", i, i, strings.Repeat(fmt.Sprintf("*a%d, ", i-1), 9))
	}
	return b.String()
}

func TestFindingsAreCounted(t *testing.T) {
	_, findings := Parse("f", []byte(strings.Repeat("a: b\n", 1000)))
	if len(findings) != MostFindings+1 {
		t.Fatalf("%d findings, want %d", len(findings), MostFindings+1)
	}
	want := "799 more faults of this file are not listed"
	if diff := cmp.Diff(want, findings[MostFindings].Message); diff != "" {
		t.Error(diff)
	}
}

// A job of 5,000 wires in 2 MB is an ordinary file.
func TestLargeJob(t *testing.T) {
	content := largeJob(5000)
	start := time.Now()
	root, findings := Parse("f", []byte(content))
	t.Logf("%d bytes in %v", len(content), time.Since(start).Round(time.Millisecond))
	if len(findings) > 0 || len(root.Get("wires").Entries) != 5000 {
		t.Errorf("%d wires, findings %v", len(root.Get("wires").Entries), findings)
	}
	if took := time.Since(start); took > mostTime {
		t.Errorf("took %v", took)
	}
}

func largeJob(wires int) string {
	var b strings.Builder
	b.WriteString("job: X\nwires:\n")
	note := strings.Repeat("a note of some length ", 9)
	for i := range wires {
		fmt.Fprintf(&b, "  W%d: {from: G%d.+, to: A%d.-, colour: RD/BK, size: 18 AWG, length: 14 in, loom: main loom, for: lights, note: %q}   # and a comment of a line's length beside it, with the date\n", i, i, i, note)
		fmt.Fprintf(&b, "  # %s\n", strings.Repeat("-", 60))
	}
	return b.String()
}

func BenchmarkLargeJob(b *testing.B) {
	content := []byte(largeJob(5000))
	b.SetBytes(int64(len(content)))
	for b.Loop() {
		Parse("f", content)
	}
}
