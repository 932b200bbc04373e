package job_test

import (
	"fmt"
	"strconv"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"github.com/lugwright/lugwright/wiring/job"
)

func itoa(n int) string { return strconv.Itoa(n) }

// largeJob writes a job of n wires, every fourth with a lead, with places, looms and notes:
// about 400 bytes a wire.
func largeJob(n int) []byte {
	var b strings.Builder
	b.WriteString("job: L-1\nplaces: {dash: {along: 2 ft}, rear: {along: 90 in}}\nruns: {tunnel: {from: dash, to: rear, length: 7 ft}}\nlooms: {main loom: {cover: tape, runs: [tunnel]}}\n")
	fmt.Fprintf(&b, "parts:\n  A1..A%d: {kind: fuse-block, channels: 12, place: dash}\n", n/10+1)
	fmt.Fprintf(&b, "  E1..E%d: {kind: lamp, place: rear}\n  T1..T%d: {kind: reducer, place: rear}\n", n, n/4+1)
	b.WriteString("wires:\n")
	note := strings.Repeat("clipped every 12 in under the bed, clear of the spring; ", 5)
	for i := 1; i <= n; i++ {
		to := fmt.Sprintf("E%d.+", i)
		if i%4 == 0 {
			to = fmt.Sprintf("T%d.memory", i/4)
		}
		fmt.Fprintf(&b, "  W%d: {from: A%d.%d, to: %s, colour: OG/BK, size: 16 AWG, loom: main loom, for: lamp number %d of a very long train, note: %q}\n",
			i, i/10+1, i%10+1, to, i, note)
	}
	return []byte(b.String())
}

// A job of 5,000 wires is read whole, and time grows with its length, not with the square
// of it: ten times the wires may take at most thirty times as long.
func TestLargeJob(t *testing.T) {
	took := func(n int) time.Duration {
		text := largeJob(n)
		if n == 5000 && len(text) < 2_000_000 {
			t.Errorf("the job has %d bytes, want 2 MB", len(text))
		}
		start := time.Now()
		h := load(t, fstest.MapFS{"job.yaml": {Data: text}}, "job.yaml")
		if len(h.Wires) != n || h.Wire("W" + itoa(n)).Pieces[0].Colour.String() != "OG/BK" {
			t.Errorf("%d wires of %d", len(h.Wires), n)
		}
		return time.Since(start)
	}
	took(100)
	for try := 1; ; try++ { // a busy machine may be busy at the wrong moment, but not each time
		small, large := took(500), took(5000)
		t.Logf("500 wires in %v, 5000 in %v", small, large)
		if large <= 30*small || large <= 2*time.Second {
			return
		}
		if try == 3 {
			t.Fatalf("500 wires take %v, 5000 take %v", small, large)
		}
	}
}

func BenchmarkLoad5000Wires(b *testing.B) {
	text := largeJob(5000)
	files := fstest.MapFS{"job.yaml": {Data: text}}
	b.SetBytes(int64(len(text)))
	for b.Loop() {
		if _, _, err := job.Load("job.yaml", job.Options{FS: files}); err != nil {
			b.Fatal(err)
		}
	}
}
