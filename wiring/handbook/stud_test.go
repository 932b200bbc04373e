package handbook

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"github.com/lugwright/lugwright/wiring/quantity"
)

func thread(t *testing.T, text string) quantity.Thread {
	t.Helper()
	th, err := tableThread(text)
	if err != nil {
		t.Fatal(err)
	}
	return th
}

// hex_and_stud.csv: ISO 4014, 272, 273, public machine manuals.
func TestStudsAgainstTable(t *testing.T) {
	for _, row := range check(t, "hex_and_stud.csv") {
		name := row["thread"]
		stud, err := Default().Stud(thread(t, name))
		if err != nil {
			t.Error(err)
			continue
		}
		near(t, name+" fine hole", stud.Holes.Fine.Millimetres(), row.must(t, "hole_fine_mm"), 1e-9)
		near(t, name+" medium hole", stud.Holes.Medium.Millimetres(), row.must(t, "hole_medium_mm"), 1e-9)
		near(t, name+" coarse hole", stud.Holes.Coarse.Millimetres(), row.must(t, "hole_coarse_mm"), 1e-9)
		checkSpanners(t, stud, row)
		checkTorques(t, stud, row)
		near(t, name+" spanner", stud.Spanners[0].Width.Millimetres(), row.must(t, "af_iso_mm"), 1e-9)
		checkNearInch(t, stud, row)
	}
}

// checkSpanners wants each width of the row once.
func checkSpanners(t *testing.T, stud Stud, row record) {
	t.Helper()
	want := map[string]bool{}
	for _, column := range []string{"af_iso_mm", "af_old_din_mm", "af_jis_mm"} {
		if row[column] != "" {
			want[row[column]+" mm"] = true
		}
	}
	got := map[string]bool{}
	for _, s := range stud.Spanners {
		got[s.Name] = true
	}
	if diff := cmp.Diff(want, got); diff != "" || len(stud.Spanners) != len(got) {
		t.Errorf("spanners of %s (-want +got):\n%s", row["thread"], diff)
	}
}

// checkTorques wants the steel torques within 15 % of 0.2 x 0.75 x 580 MPa x area x d.
func checkTorques(t *testing.T, stud Stud, row record) {
	t.Helper()
	name := row["thread"]
	law := 0.2 * 0.75 * 580 * row.must(t, "stress_area_mm2") * stud.Thread.DiameterMM() / 1000
	near(t, name+" computed torque", float64(stud.Steel.Computed), law, 0.051) // printed to a tenth
	nearly(t, name+" oiled torque", float64(stud.Steel.Oiled), law, 0.15)
	if dry, ok := row.number(t, "torque_88_dry_Nm"); ok {
		near(t, name+" dry torque", float64(stud.Steel.Dry), dry, 0)
		if stud.Steel.Dry <= stud.Steel.Oiled {
			t.Errorf("%s takes %v dry and %v oiled", name, stud.Steel.Dry, stud.Steel.Oiled)
		}
	}
	low, ok := row.number(t, "terminal_low_Nm")
	if stud.Terminal.Known() != ok || float64(stud.Terminal.Low) != low {
		t.Errorf("%s terminal from %v, want %v", name, stud.Terminal.Low, low)
	}
	if ok && stud.Terminal.High >= stud.Steel.Oiled {
		t.Errorf("a terminal of %s takes as much as steel", name)
	}
}

// checkNearInch wants the inch stud to take the row's holes.
func checkNearInch(t *testing.T, stud Stud, row record) {
	t.Helper()
	inch, err := Default().Stud(thread(t, row["near_inch_stud"]))
	if err != nil {
		t.Error(err)
		return
	}
	if inch.Metric != stud.Thread || inch.Holes != stud.Holes {
		t.Errorf("%s takes the row %v, want %v", row["near_inch_stud"], inch.Metric, stud.Thread)
	}
	if len(inch.Spanners) != 1 || !strings.HasSuffix(inch.Spanners[0].Name, " in") {
		t.Errorf("%s takes the spanners %v", row["near_inch_stud"], inch.Spanners)
	}
}

// ASME B18.2, from memory.
func TestInchSpanners(t *testing.T) {
	for text, want := range map[string]string{"5/16-18": "1/2 in", "3/8 in": "9/16 in", "10-32": "3/8 in"} {
		th, err := quantity.ParseThread(text)
		if err != nil {
			t.Fatal(err)
		}
		stud, err := Default().Stud(th)
		if err != nil || len(stud.Spanners) != 1 || stud.Spanners[0].Name != want || stud.Thread != th {
			t.Errorf("%s: %+v, %v; want %s", text, stud.Spanners, err, want)
		}
	}
}

func TestUnknownStud(t *testing.T) {
	_, err := Default().Stud(thread(t, "M16"))
	want := "the handbook has no stud M16: it has M4 (#8), M5 (#10), M6 (1/4 in), M8 (5/16 in), M10 (3/8 in), M12 (1/2 in)"
	if err == nil || err.Error() != want {
		t.Errorf("M16: %v\nwant %s", err, want)
	}
}

// lug_fit.csv: geometry of studs against ISO 273 fine holes.
func TestLugsAgainstTable(t *testing.T) {
	for _, row := range check(t, "lug_fit.csv") {
		stud := thread(t, row["stud"])
		near(t, row["stud"]+" diameter", stud.DiameterMM(), row.must(t, "stud_mm"), 0.006)
		lug, err := Default().LugFor(stud)
		if err != nil {
			t.Error(err)
			continue
		}
		if lug.Metric != thread(t, row["smallest_metric_lug"]) {
			t.Errorf("%s takes %v, want %s", row["stud"], lug.Metric, row["smallest_metric_lug"])
		}
		near(t, row["stud"]+" hole", lug.Hole.Millimetres(), row.must(t, "lug_hole_mm"), 1e-9)
		wantFit(t, lug.Metric, stud, Right)
		wantFit(t, stud, stud, Right)
		if over := row["one_size_over"]; over != "" {
			wantFit(t, thread(t, over), stud, OneOver)
			wantFit(t, lug.Metric, thread(t, over), TooSmall)
		}
	}
}

func wantFit(t *testing.T, lug, stud quantity.Thread, want Fit) {
	t.Helper()
	if got, err := Default().Fit(lug, stud); err != nil || got != want {
		t.Errorf("a lug %v on a stud %v is %v, %v; want %v", lug, stud, got, err, want)
	}
}

// 5/16 on M8 and 3/8 on M10 are right (common practice).
func TestFit(t *testing.T) {
	tests := []struct {
		lug, stud string
		want      Fit
	}{
		{"5/16", "M8", Right},
		{"3/8", "M10", Right},
		{"M8", "5/16", Right},
		{"M6", "M8", TooSmall},
		{"1/4", "5/16", TooSmall},
		{"3/8", "M8", OneOver},
		{"M12", "M8", TooLarge},
		{"1/2", "#10", TooLarge},
		{"M8", "M6", OneOver},
	}
	for _, test := range tests {
		wantFit(t, thread(t, test.lug), thread(t, test.stud), test.want)
	}
	pitched, err := quantity.ParseThread("M8x1.25")
	if err != nil {
		t.Fatal(err)
	}
	wantFit(t, thread(t, "M8"), pitched, Right)
	if _, err := Default().Fit(thread(t, "M8"), thread(t, "M16")); err == nil {
		t.Error("M16 is no row of the table")
	}
	if _, err := Default().Fit(thread(t, "M16"), thread(t, "M8")); err == nil {
		t.Error("M16 is no row of the table")
	}
}

func TestFitNames(t *testing.T) {
	want := []string{"unknown", "too small", "right", "one size over", "too large"}
	for i, w := range want {
		if got := Fit(i).String(); got != w {
			t.Errorf("fit %d is %q, want %q", i, got, w)
		}
	}
}
