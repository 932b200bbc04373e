package symptom_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"github.com/lugwright/lugwright/wiring/fault"
	"github.com/lugwright/lugwright/wiring/job/jobtest"
	"github.com/lugwright/lugwright/wiring/symptom"
)

// complaints settles one fault of a cart and listens to its owner.
func complaints(t testing.TB, c *fault.Cart, name string) []string {
	t.Helper()
	for _, f := range c.Faults(fault.Modes()) {
		if f.Name != name {
			continue
		}
		v, err := c.Survey(t.Context(), []fault.Fault{f}, c.Harness.States)
		if err != nil {
			t.Fatal(err)
		}
		var keys []string
		for _, k := range symptom.Complaints(&symptom.View{Cart: c, Healthy: v.Healthy, Now: v.Rows[0].Seen}) {
			keys = append(keys, k.Key())
		}
		return keys
	}
	t.Fatalf("the cart has no fault %q", name)
	return nil
}

// What an owner says follows from the circuit alone: worked out by hand from the drawings of
// the two-seat cart, whose interlock lead is fed through F4, whose key circuit hangs on F11
// and makes the reducer's enable live through K1, and whose lights are on channel 1.
func TestComplaintsOfTheTwoSeatCart(t *testing.T) {
	c := fault.NewCart(jobtest.Example(t, "tern-point-14"))
	dead12 := []string{"twelve-dead"}
	noKey := []string{"does-not-move", "solenoid-silent", "twelve-dead", "consumer-dead P1"}
	for name, want := range map[string][]string{
		"W37 open":                       {"does-not-move", "solenoid-silent"},
		"F4 blown":                       {"does-not-move", "solenoid-silent"},
		"F11 blown":                      noKey,
		"F11 missing":                    noKey,
		"S1 makes no contact":            noKey,
		"F3 blown":                       dead12,
		"W65 open":                       dead12,
		"T2.main dead":                   dead12,
		"T2 enable stuck off":            dead12,
		"A1.1 blown":                     {"consumer-dead E1"},
		"W75 open":                       {"consumer-dead P3"},
		"P3 itself dead":                 {"consumer-dead P3"},
		"S7 stuck at down":               {"consumer-stays-on P3"},
		"W71 chafed through to negative": {"fuse-opens A1.1", "consumer-dead E1"},
		"E1 shorted inside":              {"fuse-opens A1.1", "consumer-dead E1"},
		"W10 open":                       {"does-not-move"},
		"W26 open":                       {"moves-one-way"},
		"W7 loose at a lug":              {"joint-hot"},
		"S4 stuck at down":               {"moves-by-itself"},
		"T1.lockout output shorted":      {"moves-on-charge"},
		"F2 blown":                       {"does-not-charge"},
		"X1: no AC at the outlet":        {"moves-on-charge", "does-not-charge"},
		"T1 dead":                        {"does-not-charge"},
		"W67 open":                       {"consumer-dead P2"},
		"K1 contact welded":              {"consumer-stays-on X5", "flat-soon"},
		// the diode across the coil shorts the key circuit as soon as the coil is to pull in
		"V1 wrong way round":                            {"does-not-move", "solenoid-silent", "fuse-opens F11", "twelve-dead", "consumer-dead P1"},
		"W20 loose at a lug":                            nil, // 0.2 V lost in the coil's feed: nobody notices
		"W7, W29, W38, W52 chafed through to the frame": nil, // the frame is not bonded: nothing happens until a second one
	} {
		got := complaints(t, c, name)
		if diff := cmp.Diff(want, got); diff != "" {
			t.Errorf("%s (-want +got):\n%s", name, diff)
		}
	}
}

func TestSymptomsSayWhatTheyAre(t *testing.T) {
	seen := map[string]bool{}
	for _, s := range symptom.Symptoms() {
		if s.ID == "" || s.Says == "" || s.Severity.String() == "unknown" || s.Find == nil || seen[s.ID] {
			t.Errorf("symptom %q does not say what it is, or is there twice", s.ID)
		}
		seen[s.ID] = true
	}
}
