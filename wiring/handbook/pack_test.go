package handbook

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"github.com/lugwright/lugwright/wiring/quantity"
)

// lifepo4.csv: cell values of public charts times the count.
func TestPacksAgainstTable(t *testing.T) {
	for _, row := range check(t, "lifepo4.csv") {
		name := row["pack"]
		pack, err := Default().Pack(row["chemistry"], int(row.must(t, "cells")))
		if err != nil {
			t.Fatal(err)
		}
		near(t, name+" nominal", float64(pack.Nominal()), row.must(t, "nominal_V"), 1e-9)
		near(t, name+" full", float64(pack.Full()), row.must(t, "full_V"), 1e-9)
		near(t, name+" floor", float64(pack.Floor()), row.must(t, "low_V"), 1e-9)
		near(t, name+" rested", float64(pack.RestedFull()), row.must(t, "rested_full_V"), 1e-9)
		if cautious, ok := row.number(t, "cautious_low_V"); ok {
			near(t, name+" cautious", float64(pack.Cautious()), cautious, 1e-9)
		} else if pack.Cautious() != 0 {
			t.Errorf("%s has a cautious voltage of %v", name, pack.Cautious())
		}
		near(t, name+" margin to 60 V", 60-float64(pack.Full()), row.must(t, "margin_to_60_V"), 1e-9)
		if got, want := Default().Guarded(pack), row["over_50_nominal"] == "yes"; got != want {
			t.Errorf("%s is guarded: %v, want %v", name, got, want)
		}
		if got, want := Default().Touchable(pack), row["over_60_full"] == "no"; got != want {
			t.Errorf("%s is touchable: %v, want %v", name, got, want)
		}
	}
}

func TestPackNames(t *testing.T) {
	lfp, _ := Default().Pack("lfp", 16)
	lead, _ := Default().Pack("Lead-Acid", 24)
	if lfp.Name() != "16S LFP" || lead.Name() != "24-cell lead-acid" {
		t.Errorf("packs are called %q and %q", lfp.Name(), lead.Name())
	}
}

func TestPackFaults(t *testing.T) {
	for _, cells := range []int{0, -3} {
		if _, err := Default().Pack("LFP", cells); err == nil {
			t.Errorf("a pack of %d cells exists", cells)
		}
	}
	_, err := Default().Pack("potato", 4)
	if want := `the handbook has no cells of "potato": it has LFP, lead-acid`; err == nil || err.Error() != want {
		t.Errorf("potato: %v, want %s", err, want)
	}
}

// lead_acid_rest.csv: a public inverter manual. Its 12 V and 48 V columns are rounded to
// 0.1 and 0.4 V, so cells times the count differ by up to half of that.
func TestLeadAcidRestAgainstTable(t *testing.T) {
	for _, row := range check(t, "lead_acid_rest.csv") {
		charge := quantity.Ratio(row.must(t, "charge_pct") / 100)
		for column, cells := range map[string]int{"cell_V": 1, "V12": 6, "V24": 12, "V36": 18, "V48": 24} {
			pack, err := Default().Pack("lead-acid", cells)
			if err != nil {
				t.Fatal(err)
			}
			tolerance := 0.01 * float64(cells) * 0.85
			near(t, column+" at "+row["charge_pct"]+" %", float64(pack.RestVolts(charge)), row.must(t, column), tolerance)
		}
	}
}

// The LFP curve is invented; these are its fixed points, and what families of carts are
// told: 52.8 V at half, 54.4 V rested full, 40.0 V at the floor, for 16 cells.
func TestLFPRest(t *testing.T) {
	pack, err := Default().Pack("LFP", 16)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "half", float64(pack.RestVolts(0.5)), 52.8, 1e-9)
	near(t, "rested full", float64(pack.RestVolts(1)), float64(pack.RestedFull()), 1e-9)
	near(t, "floor", float64(pack.RestVolts(0)), float64(pack.Floor()), 1e-9)
	near(t, "beyond full", float64(pack.RestVolts(1.5)), 54.4, 1e-9)
	near(t, "beyond empty", float64(pack.RestVolts(-1)), 40, 1e-9)
	source, _ := Default().Source("rest_lfp")
	if !strings.Contains(source.Text, "invented, rounded, typical") || statusOf(source.Status) != Memory {
		t.Errorf("the LFP curve passes for %q, %q", source.Text, source.Status)
	}
}

func TestRestCurvesInvert(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		chemistry := rapid.SampledFrom([]string{"LFP", "lead-acid"}).Draw(t, "chemistry")
		pack, err := Default().Pack(chemistry, rapid.IntRange(1, 24).Draw(t, "cells"))
		if err != nil {
			t.Fatal(err)
		}
		charge := rapid.Float64Range(0, 1).Draw(t, "charge")
		more := rapid.Float64Range(charge, 1).Draw(t, "more")
		volts := pack.RestVolts(quantity.Ratio(charge))
		if pack.RestVolts(quantity.Ratio(more)) < volts {
			t.Fatalf("voltage falls from %v to %v", charge, more)
		}
		if back := float64(pack.ChargeAt(volts)); math.Abs(back-charge) > 1e-6 {
			t.Fatalf("%v at %v reads back as %v", volts, charge, back)
		}
		if low, high := pack.ChargeAt(0), pack.ChargeAt(1000); low != 0 || high != 1 {
			t.Fatalf("beyond the ends: %v and %v", low, high)
		}
	})
}
