package kind

import (
	"testing"
	"time"

	"github.com/lugwright/lugwright/wiring"
)

// The largest part that a job can ask for, and as many parts as a job may have, are built
// in the time that their number explains. The limits are generous, for busy machines.
func TestBuildLarge(t *testing.T) {
	block := mustRead(t, "kind: block\nratings: {channels: 8, fuses: {}}\nterminals:\n  +: {form: pin}\n  n: {form: pin}\n  1..channels: {form: pin}\n  in1..channels: {form: pin}\n"+
		"inside:\n  - fuse: {between: [+, 1..channels], rating: fuses}\n  - sense: {name: on, at: in1..channels, to: n, above: 6 V}\n  - driver: {between: [+, 1..channels], when: on}\n")
	start := time.Now()
	_, p, findings := built(t, block, "{channels: 10000, fuses: {1..10000: 10 A}}")
	t.Logf("10,000 channels: %v", time.Since(start).Round(time.Millisecond))
	if len(findings) > 0 || len(p.Terminals) != 20002 || len(p.Elements) != 30000 {
		t.Errorf("%d terminals, %d elements, %v", len(p.Terminals), len(p.Elements), lines(findings))
	}

	small := mustRead(t, "kind: lamp\n"+lamp)
	h := &wiring.Harness{}
	for range 10000 {
		small.Build(h, &wiring.Part{Designation: "E1"}, Given{})
	}
	took := time.Since(start)
	t.Logf("and 10,000 lamps: %v", took.Round(time.Millisecond))
	if took > 20*time.Second {
		t.Errorf("took %v", took)
	}
}
