package job_test

import (
	"fmt"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"github.com/lugwright/lugwright/wiring/job"
)

// Files that were made to take long: each must be answered within seconds, and a flood of
// faults must end. The time is generous for a loaded machine; what it catches takes minutes.
func TestHostile(t *testing.T) {
	repeat := func(n int, line func(i int) string) string {
		var b strings.Builder
		for i := range n {
			b.WriteString(line(i))
		}
		return b.String()
	}
	long := strings.Repeat("x", 4000)
	tests := map[string]string{
		"unknown parts":   "job: T\nwires:\n" + repeat(5000, func(i int) string { return fmt.Sprintf("  W%d: {from: Z%d.+, to: Y%d.-}\n", i, i, i) }),
		"unknown removed": "job: T\nparts: {X1..X9000: {kind: splice}}\nremove:\n" + repeat(8333, func(i int) string { return fmt.Sprintf("  - X%d0\n", i) }),
		"numbers taken":   "job: T\nuse: [a]\nwires:\n" + repeat(5000, func(i int) string { return fmt.Sprintf("  W%d: {from: X1, to: X2}\n", i) }),
		"kinds taken":     "job: T\nuse: [a]\nparts:\n" + repeat(1500, func(i int) string { return fmt.Sprintf("  X%d: {kind: splice}\n", i) }),
		"ranges":          "job: T\nwires:\n" + repeat(3333, func(i int) string { return fmt.Sprintf("  W%d..W9%06d: {from: X1, to: X2}\n", i, i) }),
		"ranges of parts": "job: T\nparts:\n" + repeat(3333, func(i int) string { return fmt.Sprintf("  X%d..X%d: {kind: splice}\n", i, i+9000) }),
		"ranges removed":  "job: T\nremove:\n" + repeat(3333, func(i int) string { return fmt.Sprintf("  - X%d..X%d\n", i, i+9000) }),
		"states":          "job: T\nstates:\n  s0: {key: on}\n" + repeat(5000, func(i int) string { return fmt.Sprintf("  s%d: {like: s%d, switch: on}\n", i+1, i) }),
		"settings":        "job: T\nstates:\n  s:\n" + repeat(10000, func(i int) string { return fmt.Sprintf("    c%d: on\n", i) }),
		"revisions":       "job: T\nrevisions:\n" + repeat(10000, func(i int) string { return fmt.Sprintf("  r%d: {by: me}\n", i) }),
		"places": "job: T\nplaces:\n" + repeat(5000, func(i int) string { return fmt.Sprintf("  p%d: {along: 1 ft}\n", i) }) + "runs:\n" + repeat(5000, func(i int) string {
			return fmt.Sprintf("  r%d: {from: p%d, to: p%d, length: 1 ft}\n", i, i%900, (i+1)%900)
		}),
		"long names":  "job: T\nplaces:\n" + repeat(400, func(i int) string { return fmt.Sprintf("  %s%d: {along: 1 ft}\n", long, i) }) + "parts: {X1..X400: {kind: splice, place: " + long + "}}\n",
		"stacks":      "job: T\nparts: {X1: {kind: frame-point}}\nstacks: {X1: [" + repeat(10000, func(i int) string { return fmt.Sprintf("W%d, ", i) }) + "]}\n",
		"one stud":    "job: T\nparts: {X1: {kind: frame-point}, X2: {kind: frame-point}}\nwires:\n" + repeat(6666, func(i int) string { return fmt.Sprintf("  W%d: {from: X1, to: X2}\n", i) }),
		"leads":       "job: T\nparts: {T1..T2000: {kind: reducer}}\nwires:\n" + repeat(2000, func(i int) string { return fmt.Sprintf("  T%d.memory: {to: T%d.enable}\n", i+1, i+1) }),
		"points":      "job: T\npoints:\n" + repeat(10000, func(i int) string { return fmt.Sprintf("  p%d: p%d\n", i, i+1) }),
		"groups":      "job: T\ngroups:\n" + repeat(10000, func(i int) string { return fmt.Sprintf("  g%d: [X%d]\n", i, i) }),
		"test points": "job: T\ntest-points: [" + repeat(10000, func(i int) string { return fmt.Sprintf("X%d.+, ", i) }) + "]\n",
		"waivers":     "job: T\nwaivers:\n" + repeat(10000, func(i int) string { return "  - {rule: r}\n" }),
		"columns":     strings.Repeat("a,", 100_000) + "\n",
		"rows":        "wire,from\n" + strings.Repeat(",x\n", 100_000),
		"quotes":      "wire,from\n" + strings.Repeat("\"\"\"", 100_000) + "\n",
		"moves":       "job: T\nuse: [a]\nmove: {" + repeat(3333, func(i int) string { return fmt.Sprintf("q%d: X1, ", i) }) + "}\n",
	}
	below := "kit: a\nparts:\n  X1..X9000: {kind: splice}\nwires:\n  W1..W9000: {from: X1, to: X2}\npoints: {p: X1}\n"
	for name, text := range tests {
		t.Run(name, func(t *testing.T) {
			files := fstest.MapFS{"job.yaml": {Data: []byte(text)}, "kits/a.yaml": {Data: []byte(below)}}
			if !strings.HasPrefix(text, "job:") {
				files["job.yaml"] = &fstest.MapFile{Data: []byte("job: T\nuse: [list.csv]\n")}
				files["list.csv"] = &fstest.MapFile{Data: []byte(text)}
			}
			start := time.Now()
			h, findings, err := job.Load("job.yaml", job.Options{FS: files})
			if took := time.Since(start); took > 20*time.Second {
				t.Errorf("took %v", took)
			} else {
				t.Logf("%v, %d bytes, %d findings", took, len(text), len(findings))
			}
			if err != nil || len(findings) > 2000 || (h == nil && len(findings) == 0) {
				t.Errorf("error %v, %d findings", err, len(findings))
			}
			for _, f := range findings {
				if len(f.Message) > 2000 {
					t.Errorf("a message of %d bytes: %.200s", len(f.Message), f.Message)
				}
			}
			if h != nil {
				checkHarness(t, h)
			}
		})
	}
}
