package handbook

import (
	"strings"
	"testing"

	"github.com/lugwright/lugwright/wiring/quantity"
)

// AC 43.13-1B Table 11-6.
func TestFAADropAgainstTable(t *testing.T) {
	for _, row := range check(t, "faa_ac43_13_1b_drop.csv") {
		nominal := quantity.Volt(row.must(t, "nominal_V"))
		continuous, ok := Default().FAADrop(nominal, false)
		intermittent, ok2 := Default().FAADrop(nominal, true)
		if !ok || !ok2 {
			t.Errorf("no drop for %v", nominal)
		}
		near(t, "continuous", float64(continuous), row.must(t, "continuous_V"), 0)
		near(t, "intermittent", float64(intermittent), row.must(t, "intermittent_V"), 0)
		near(t, "per cent", float64(DropShare(continuous, nominal))*100, row.must(t, "continuous_pct"), 0.005)
	}
	if v, ok := Default().FAADrop(48, false); ok {
		t.Errorf("the circular has %v for 48 V", v)
	}
}

// AC 43.13-1B Table 11-3.
func TestFAAProtectorAgainstTable(t *testing.T) {
	for _, row := range check(t, "faa_ac43_13_1b_protector.csv") {
		breaker, fuse, ok := Default().FAAProtector(row.gauge(t, "awg"))
		want, _ := row.number(t, "breaker_A")
		if !ok || float64(breaker) != want || float64(fuse) != row.must(t, "fuse_A") {
			t.Errorf("%s AWG: breaker %v, fuse %v, %v; want %v", row["awg"], breaker, fuse, ok, row)
		}
	}
	if _, _, ok := Default().FAAProtector(quantity.Gauge(3)); ok {
		t.Error("the circular has 3 AWG")
	}
}

// AC 43.13-1B Table 11-4.
func TestFAASwitchAgainstTable(t *testing.T) {
	for _, row := range check(t, "faa_ac43_13_1b_switch.csv") {
		kind, _, _ := strings.Cut(row["load"], " ")
		need, err := Default().SwitchRating(quantity.Volt(row.must(t, "nominal_V")), LoadKind(kind), 1)
		if err != nil || need.Factor != row.must(t, "factor") || need.Beyond || float64(need.Amps) != need.Factor {
			t.Errorf("%s at %s V: %+v, %v; want %s", row["load"], row["nominal_V"], need, err, row["factor"])
		}
	}
}

func TestSwitchBetweenVoltages(t *testing.T) {
	tests := []struct {
		nominal quantity.Volt
		column  quantity.Volt
		beyond  bool
	}{
		{6, 12, false}, {12, 12, false}, {13.2, 28, false}, {28, 28, false}, {48, 28, true},
	}
	for _, test := range tests {
		need, err := Default().SwitchRating(test.nominal, MotorLoad, 10)
		if err != nil || need.Column != test.column || need.Beyond != test.beyond {
			t.Errorf("%v: %+v, %v; want the column %v, beyond %v", test.nominal, need, err, test.column, test.beyond)
		}
	}
	if _, err := Default().SwitchRating(12, "heavy", 10); err == nil {
		t.Error("heavy is a kind of load")
	}
}

// AC 43.13-1B Table 11-9.
func TestFAAWireAgainstTable(t *testing.T) {
	for _, row := range check(t, "faa_ac43_13_1b_wire.csv") {
		size := row.gauge(t, "awg")
		w, ok := Default().FAAWire(size)
		if !ok {
			t.Errorf("no wire %v", size)
			continue
		}
		for i, column := range []string{"A_105C", "A_150C", "A_200C"} {
			near(t, size.String()+" "+column, float64(w.Amps[i]), row.must(t, column), 0)
		}
		perKft := w.Most.Of(quantity.Feet(1000))
		nearly(t, size.String()+" ohm per 1000 ft", float64(perKft), row.must(t, "max_ohm_per_kft"), 1e-12)
		nearly(t, size.String()+" cmil", CircularMils(w.Area), row.must(t, "nominal_cmil"), 1e-12)
		solid, err := Default().Resistance(size, quantity.Feet(1000), 20)
		if err != nil {
			t.Fatal(err)
		}
		near(t, size.String()+" against solid copper", float64(perKft/solid), row.must(t, "ratio_to_solid"), 0.0006)
	}
	if _, ok := Default().FAAWire(quantity.Gauge(3)); ok {
		t.Error("the circular has 3 AWG")
	}
	if _, ok := Default().FAAWireForDrop(500, quantity.Feet(1000), 0.1); ok {
		t.Error("some wire carries 500 A over 1000 ft at 0.1 V")
	}
}

// AC 43.13-1B Tables 11-7 and 11-8, as arithmetic and on solid copper.
func TestFAAExamples(t *testing.T) {
	for _, row := range check(t, "faa_ac43_13_1b_examples.csv") {
		name := row["table"] + " row " + row["row"]
		run, amps := quantity.Feet(row.must(t, "run_ft")), quantity.Ampere(row.must(t, "current_A"))
		size := row.gauge(t, "awg")
		w, ok := Default().FAAWire(size)
		if !ok {
			t.Fatalf("no wire %v", size)
		}
		drop := Drop(amps, w.Most.Of(run))
		near(t, name, float64(drop), row.must(t, "drop_arith_V"), 0.0005)
		solid, err := Default().RunDrop(size, run, amps, 20)
		if err != nil {
			t.Fatal(err)
		}
		near(t, name+" on solid copper", float64(solid), row.must(t, "drop_solid_V"), 0.0006)
		limit, _ := Default().FAADrop(quantity.Volt(row.must(t, "system_V")), false)
		near(t, name+" limit", float64(limit), row.must(t, "limit_V"), 0)
	}
}
