package position_test

import (
	"fmt"
	"io/fs"
	"os"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/job"
	"github.com/lugwright/lugwright/wiring/position"
	"github.com/lugwright/lugwright/wiring/settle"
)

// overlay is the examples with one more file.
type overlay struct {
	fs.FS
	more fstest.MapFS
}

func (o overlay) Open(name string) (fs.File, error) {
	if _, ok := o.more[name]; ok {
		return o.more.Open(name)
	}
	return o.FS.Open(name)
}

// twelve is the two-seat cart with four more lamps, each with a rocker of its own, on
// channels 5 to 8: with the direction switch in forward, twelve switches of two positions.
func twelve(t testing.TB) (*wiring.Harness, *position.Space) {
	t.Helper()
	var text strings.Builder
	text.WriteString("job: TP-14-12\ntitle: The two-seat cart with four more lamps\nuse: [tern-point-14.yaml]\n")
	text.WriteString("parts:\n  A1: {fuses: {5: 5 A, 6: 5 A, 7: 5 A, 8: 5 A}}\n")
	for i := 5; i <= 8; i++ {
		fmt.Fprintf(&text, "  S2%d: {kind: rocker, place: dash}\n  E2%d: {kind: light-bar, power: 30 W, place: front}\n", i, i)
	}
	text.WriteString("wires:\n")
	for i := 5; i <= 8; i++ {
		fmt.Fprintf(&text, "  W20%d: {from: A1.%d, to: S2%d.in, colour: OG, size: 16 AWG, length: 18 in}\n", i, i, i)
		fmt.Fprintf(&text, "  W21%d: {from: S2%d.out, to: E2%d.+, colour: OG, size: 16 AWG, length: 4 ft}\n", i, i, i)
		fmt.Fprintf(&text, "  W22%d: {from: E2%d.-, to: A1.n, colour: BK, size: 16 AWG, length: 4 ft}\n", i, i)
	}
	files := overlay{os.DirFS("../../examples/tern-point"), fstest.MapFS{"jobs/twelve.yaml": {Data: []byte(text.String())}}}
	h, findings, err := job.Load("jobs/twelve.yaml", job.Options{FS: files})
	if err != nil || h == nil {
		t.Fatalf("%v\n%v", err, findings)
	}
	space, err := position.All(h).Distinct().Fix(control(t, h, "S3.direction"), "forward")
	if err != nil {
		t.Fatal(err)
	}
	if space.Count() != 4096 || len(space.Axes()) != 12 {
		t.Fatalf("%d positions of %d switches", space.Count(), len(space.Axes()))
	}
	return h, space
}

func BenchmarkTwelveSwitches(b *testing.B) {
	h, space := twelve(b)
	net := settle.Compile(h)
	for b.Loop() {
		moving := 0
		err := position.Sweep(b.Context(), net, space, position.Options{}, func(s position.Seen) bool {
			if s.Point.Traction() {
				moving++
			}
			return true
		})
		// Driving: pack on, run, key on, pedal down, plug out, in all 128 positions of the
		// seven accessory switches.
		if err != nil || moving != 128 {
			b.Fatalf("%d positions drive, %v", moving, err)
		}
	}
	b.ReportMetric(float64(space.Count())*float64(b.N)/b.Elapsed().Seconds(), "positions/s")
}

func BenchmarkAllProperties(b *testing.B) {
	h, _ := twelve(b)
	c := position.NewCart(h, nil)
	for b.Loop() {
		if _, err := position.CheckAll(b.Context(), c, position.Properties(), position.CheckOptions{}); err != nil {
			b.Fatal(err)
		}
	}
}
