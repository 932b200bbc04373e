package figure

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"github.com/lugwright/lugwright/wiring/handbook"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// Time gates of ISO 8820-3 (blades) and UL 248-15 (class T), from memory.
func TestFuseOpening(t *testing.T) {
	for _, tt := range []struct {
		style        string
		rating, amps quantity.Ampere
		want         OpeningClass
		holds, opens quantity.Second
	}{
		{"blade", 20, 20, Holds, 360000, 0},
		{"blade", 20, 22, Holds, 360000, 0},
		{"blade", 20, 24, MayOpen, 0.75, 0},
		{"blade", 20, 27, OpensInMinutes, 0.75, 600},
		{"blade", 20, 32, OpensInSeconds, 0.25, 50},
		{"blade", 15, 30, OpensInSeconds, 0.15, 5},
		{"blade", 10, 35, OpensAtOnce, 0.04, 0.5},
		{"blade", 10, 60, OpensAtOnce, 0, 0.5},
		{"blade", 10, -60, OpensAtOnce, 0, 0.5},
		{"Maxi Blade", 50, 100, OpensInSeconds, 2, 60},
		{"maxi blade", 50, 175, OpensInSeconds, 0.2, 7},
		{"maxi blade", 50, 300, OpensAtOnce, 0.04, 1},
		{"class T", 200, 220, Holds, 14400, 0},
		{"class T", 200, 250, MayOpen, 0, 0},
		{"class T", 200, 270, OpensInHours, 0, 7200},
		{"class T", 200, 400, OpensInMinutes, 0, 600},
		{"class T", 200, 1000, OpensInSeconds, 0, 10},
		{"10x38", 15, 15, Holds, 0, 0},
		{"10x38", 15, 16, OpeningUnknown, 0, 0},
		{"10x38", 15, 5000, OpeningUnknown, 0, 0},
		{"", 15, 30, OpeningUnknown, 0, 0},
		{"blade", 0, 30, OpeningUnknown, 0, 0},
		{"blade", 10, quantity.Ampere(math.NaN()), OpeningUnknown, 0, 0},
	} {
		t.Run(fmt.Sprintf("%s %v at %v", tt.style, tt.rating, tt.amps), func(t *testing.T) {
			o := FuseOpening(handbook.Default(), tt.style, tt.rating, tt.amps)
			if o.Class != tt.want || o.Holds != tt.holds || o.Opens != tt.opens {
				t.Errorf("%v, holds %v, opens %v; want %v, %v, %v", o.Class, o.Holds, o.Opens, tt.want, tt.holds, tt.opens)
			}
		})
	}
}

// A 30 A reducer cannot open a 25 A blade, takes minutes at most for a 20 A one and
// seconds for a 15 A one (blade gates of 135 and 200 %, from memory).
func TestLimitedSupplyAgainstFuses(t *testing.T) {
	for _, tt := range []struct {
		rating quantity.Ampere
		want   OpeningClass
	}{{25, MayOpen}, {20, OpensInMinutes}, {15, OpensInSeconds}} {
		if o := FuseOpening(handbook.Default(), "blade", tt.rating, 30); o.Class != tt.want {
			t.Errorf("a %v blade at 30 A %v, want %v", tt.rating, o.Class, tt.want)
		}
	}
}

func TestFuseOpeningNamesItsGates(t *testing.T) {
	text := fmt.Sprint(FuseOpening(handbook.Default(), "blade", 10, 20).Assumes)
	for _, want := range []string{"ISO 8820-3", "from memory", "25 C"} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in %s", want, text)
		}
	}
}

// More current never opens a fuse later, and what is sure to hold is not sure to open.
func TestMoreCurrentOpensSooner(t *testing.T) {
	styles := []string{"blade", "mini blade", "maxi blade", "class T", "10x38", "breaker"}
	rapid.Check(t, func(t *rapid.T) {
		style := rapid.SampledFrom(styles).Draw(t, "style")
		rating := quantity.Ampere(rapid.Float64Range(1, 400).Draw(t, "rating"))
		amps := rating * quantity.Ampere(rapid.Float64Range(0, 10).Draw(t, "multiple"))
		more := amps * quantity.Ampere(rapid.Float64Range(1, 3).Draw(t, "more"))
		less, high := FuseOpening(handbook.Default(), style, rating, amps), FuseOpening(handbook.Default(), style, rating, more)
		if high.Class < less.Class && high.Class != OpeningUnknown {
			t.Fatalf("%v at %v and %v at %v", less.Class, amps, high.Class, more)
		}
		if less.Opens > 0 && (high.Opens == 0 || high.Opens > less.Opens) {
			t.Fatalf("opens after %v at %v and %v at %v", less.Opens, amps, high.Opens, more)
		}
		if less.Holds > 0 && less.Opens > 0 && less.Holds > less.Opens {
			t.Fatalf("holds %v and opens within %v", less.Holds, less.Opens)
		}
	})
}
