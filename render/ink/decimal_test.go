package ink

import (
	"math"
	"strconv"
	"testing"

	"pgregory.net/rapid"
)

func TestDecimal(t *testing.T) {
	for _, c := range []struct {
		v    float64
		want string
	}{
		{0, "0"}, {math.Copysign(0, -1), "0"}, {-0.0004, "0"}, {12, "12"}, {2.5, "2.5"}, {-0.25, "-0.25"},
		{1.0 / 3, "0.333"}, {297.0005, "297.001"}, {0.0004, "0"}, {1e6, "1000000"},
	} {
		if got := Decimal(c.v); got != c.want {
			t.Errorf("Decimal(%v) = %s, want %s", c.v, got, c.want)
		}
	}
}

// What is written stays within half of the last decimal.
func TestDecimalIsNear(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := rapid.Float64Range(-1000, 1000).Draw(t, "v")
		back, err := strconv.ParseFloat(Decimal(v), 64)
		if err != nil || math.Abs(back-v) > 0.5e-3+1e-9 {
			t.Fatalf("%v became %v (%v)", v, back, err)
		}
	})
}
