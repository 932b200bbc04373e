package failuremode_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"github.com/lugwright/lugwright/wiring/failuremode"
	"github.com/lugwright/lugwright/wiring/job/jobtest"
)

// Rows whose effects follow by hand from the drawing of the two-seat cart: its lights hang on
// channel 1 of A1, its pack floats off the frame.
func TestRows(t *testing.T) {
	h := jobtest.Example(t, "tern-point-14")
	rows, err := failuremode.Analyse(t.Context(), h)
	if err != nil {
		t.Fatal(err)
	}
	type row struct{ Mode, End, Detection, Limits, Severity, Occurrence string }
	want := map[string]row{
		"A1.1 blown":                      {"fuse blown", "Light bar (E1) is dead", "the driver, in everything on", "", "loss", "common"},
		"E1 shorted inside":               {"consumer shorted", "fuse A1.1 opens at once; Light bar (E1) is dead", "the driver, in everything on", "A1.1 opens", "loss", "rare"},
		"S4 stuck at down":                {"switch stuck", "it moves when it should not", "the driver, in ready", "", "hazard", "occasional"},
		"W55 chafed through to the frame": {"chafed through to the frame", "", "not at all: inspection", "", "none", "occasional"},
	}
	got := map[string]row{}
	for _, r := range rows {
		if _, ok := want[r.Failure]; ok {
			got[r.Failure] = row{r.Mode, r.End, r.Detection, r.Limits, r.Severity.String(), r.Occurrence.String()}
		}
		if r.Item == "" || r.Cause == "" || r.Severity.String() == "unknown" {
			t.Errorf("a row without item, cause or severity: %+v", r)
		}
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
	of := failuremode.Of(rows, h.Part("S7"))
	for _, r := range of {
		if !r.Candidate.Faults[0].Concerns(h.Part("S7")) {
			t.Errorf("%s is no failure of S7", r.Failure)
		}
	}
	if len(of) == 0 || len(of) == len(rows) {
		t.Errorf("%d of %d rows are of S7", len(of), len(rows))
	}
}
