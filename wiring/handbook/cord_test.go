package handbook

import (
	"testing"

	"github.com/lugwright/lugwright/wiring/quantity"
)

// charger_cord.csv: manuals of UL 1236 chargers. Each cell is asked at both ends of its
// range of current and of length.
func TestChargerCordAgainstTable(t *testing.T) {
	lengths := []struct {
		column     string
		over, upTo float64 // ft
	}{{"awg_25ft", 0, 25}, {"awg_50ft", 25, 50}, {"awg_100ft", 50, 100}, {"awg_150ft", 100, 150}}
	for _, row := range check(t, "charger_cord.csv") {
		low, high := row.must(t, "at_least_A"), row.must(t, "less_than_A")
		for _, l := range lengths {
			want := row.gauge(t, l.column)
			for _, amps := range []float64{low, (low + high) / 2, high - 0.001} {
				for _, ft := range []float64{l.over + 0.1, l.upTo} {
					got, err := Default().ChargerCord(quantity.Ampere(amps), quantity.Feet(ft))
					if err != nil || got != want {
						t.Errorf("%g A over %g ft: %v, %v; want %v", amps, ft, got, err, want)
					}
				}
			}
		}
	}
	if s, err := Default().ChargerCord(20, quantity.Feet(25)); err == nil {
		t.Errorf("20 A is within the table: %v", s)
	}
	if s, err := Default().ChargerCord(10, quantity.Feet(151)); err == nil {
		t.Errorf("151 ft is within the table: %v", s)
	}
}

// flexible_cord.csv: NEC table 400.5.
func TestFlexibleCordAgainstTable(t *testing.T) {
	for _, row := range check(t, "flexible_cord.csv") {
		size := row.gauge(t, "awg")
		for loaded, column := range map[int]string{2: "A_two_conductors", 3: "A_three_conductors"} {
			got, err := Default().FlexibleCord(size, loaded)
			if err != nil || float64(got) != row.must(t, column) {
				t.Errorf("%v with %d loaded: %v, %v; want %s", size, loaded, got, err, row[column])
			}
		}
	}
	if _, err := Default().FlexibleCord(quantity.Gauge(12), 4); err == nil {
		t.Error("four loaded conductors are in the table")
	}
	_, err := Default().FlexibleCord(quantity.Gauge(11), 2)
	if want := "the handbook has no flexible cord of 11 AWG: it has some of 18 AWG to 2 AWG"; err == nil || err.Error() != want {
		t.Errorf("11 AWG: %v, want %s", err, want)
	}
}
