package handbook

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"github.com/lugwright/lugwright/wiring/quantity"
)

// The figures are typed here from the named sections, not from the table.
func TestLimits(t *testing.T) {
	h := Default()
	near(t, "33 CFR 183.455(b)(1) in inches", h.FuseDistance(false).Inches(), 7, 1e-12)
	near(t, "33 CFR 183.455(b)(2) in inches", h.FuseDistance(true).Inches(), 40, 1e-12)
	near(t, "33 CFR 183.455(c) line", float64(h.FuseLine()), 50, 0)
	near(t, "AC 43.13-1B 11-174 lugs", float64(h.LugsPerStud()), 4, 0)
	near(t, "ABYC E-11 critical drop", float64(h.DropLimit(true)), 0.03, 0)
	near(t, "ABYC E-11 other drop", float64(h.DropLimit(false)), 0.1, 0)
	near(t, "AC 43.13-1B 11-66 feeders", float64(h.FeederDrop()), 0.02, 0)
	if got := h.SmallestConductor(false); got != quantity.Gauge(16) {
		t.Errorf("33 CFR 183.425(e): %v, want 16 AWG", got)
	}
	if got := h.SmallestConductor(true); got != quantity.Gauge(18) {
		t.Errorf("33 CFR 183.425(d): %v, want 18 AWG", got)
	}
	near(t, "main fuse behind 5 kA", float64(h.MainFuseBreaks(5000)), 5000, 0)
	near(t, "main fuse behind 11 kA", float64(h.MainFuseBreaks(11000)), 20000, 0)
	near(t, "main fuse behind 25 kA", float64(h.MainFuseBreaks(25000)), 25000, 0)
}

func TestLimitsSayWhereTheyComeFrom(t *testing.T) {
	for _, l := range Default().Limits() {
		if l.Section == "" || l.Subject == "" || l.Status == "" || l.String() == "0" {
			t.Errorf("limit %+v is incomplete", l)
		}
		again, ok := Default().Limit(l.ID)
		if diff := cmp.Diff(l, again); !ok || diff != "" {
			t.Errorf("limit %s: %s", l.ID, diff)
		}
	}
	want := map[string]string{"fuse-distance": "7 in", "smallest-single": "16 AWG", "lugs-per-stud": "4", "drop-critical": "3 %"}
	for id, w := range want {
		if l, _ := Default().Limit(id); l.String() != w {
			t.Errorf("%s prints as %q, want %q", id, l, w)
		}
	}
}

func TestLimitsFaults(t *testing.T) {
	swap := func(old, new string) string {
		body := text(t, "limits")
		if !strings.Contains(body, old) {
			t.Fatalf("the table has no %q", old)
		}
		return strings.Replace(body, old, new, 1)
	}
	tests := []struct{ what, body, says string }{
		{"missing", swap("fuse-line,", "fuse-lime,"), "table limits: the limit fuse-line is missing"},
		{"wrong unit", swap("fuse-distance,7,in", "fuse-distance,7,A"), "table limits: the limit fuse-distance is 7 A, which is not what it limits"},
		{"no size", swap("smallest-single,16,AWG", "smallest-single,16,gauge"), "table limits: the limit smallest-single is 16, which is not what it limits"},
		{"no number", swap("lugs-per-stud,4,", "lugs-per-stud,four,"), "column value: four is no count: a plain whole number"},
		{"nothing", swap("lugs-per-stud,4,", "lugs-per-stud,0,"), "column value: must be above 0"},
		{"twice", swap("touch-line,", "guard-line,"), "column id: guard-line stands twice"},
	}
	for _, test := range tests {
		_, err := Default().With("limits", strings.NewReader(test.body))
		if err == nil || !strings.Contains(err.Error(), test.says) {
			t.Errorf("%s: %v, want %q", test.what, err, test.says)
		}
	}
}
