package cases

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/figure"
	"github.com/lugwright/lugwright/wiring/settle"
)

// family is a sort of cart: its platform and what it is converted with, and where its
// 12 V begins.
type family struct {
	use, twelve string
}

// The families. Three ship; the fourth is in testdata/cases.
var (
	separate       = family{"48v-separately-excited, 16s-onboard-charger", "T2.out"}
	separateAcross = family{"48v-separately-excited-across, 16s-onboard-charger", "T2.out"}
	series         = family{"36v-series, 12s-inlet", "T2.out"}
	ac             = family{"48v-ac, 16s-onboard-charger-loop", "T2.out"}
	utility        = family{"48v-utility-12v-key, 16s-12v-key", "T12.out"}
)

func (f family) cart(t *testing.T, lines string) *wiring.Harness {
	t.Helper()
	return written(t, root, fmt.Sprintf("job: M-1\ntitle: A miswired cart\nuse: [%s]\n%s", f.use, lines))
}

// done is what a cart does in a state. Zero is what a parked cart does: nothing.
type done struct {
	Outcome settle.Outcome
	Drives  bool     // traction
	Twelve  bool     // the 12 V of its reducer is on
	Opened  []string // fuses and packs
	Cycle   []string // what alternates, if it does not settle
}

func doneAt(t *testing.T, f family, h *wiring.Harness, p *settle.Point) done {
	t.Helper()
	out := terminal(t, h, f.twelve).Node
	return done{
		Outcome: p.Outcome,
		Drives:  p.Traction(),
		Twelve:  p.Outcome == settle.Settled && p.Reading(out) > 11,
		Opened:  refs(p.Opened()),
		Cycle:   refs(p.Cycle),
	}
}

// Each family as it should be wired: it drives, stays put with its plug in and with the key
// off, and its 12 V follows the key, save where the reducer is declared to be always on.
func TestFamiliesAsTheyShouldBe(t *testing.T) {
	for _, f := range []family{separate, separateAcross, series, ac, utility} {
		net := settle.Compile(f.cart(t, ""))
		for state, want := range map[string]done{
			"key off":    {Twelve: f == utility},
			"ready":      {Twelve: true},
			"driving":    {Drives: true, Twelve: true},
			"drive-away": {Twelve: f != series}, // its plug opens the feed of the key
		} {
			t.Run(f.use+"/"+state, func(t *testing.T) {
				want.Outcome = settle.Settled
				if d := cmp.Diff(want, doneAt(t, f, net.Harness(), at(t, net, state))); d != "" {
					t.Error(d)
				}
			})
		}
	}
}

// miswired is a mistake on a cart of a family, and what the cart then does in a state.
type miswired struct {
	family family
	lines  string // of the job
	state  string
	want   done
	also   func(*testing.T, *wiring.Harness, *settle.Point) // figures that go with it; nil: none
}

func (m miswired) test(t *testing.T, defects ...func(*wiring.Harness) settle.Defect) {
	t.Helper()
	h := m.family.cart(t, m.lines)
	net := settle.Compile(h)
	for _, d := range defects {
		net = net.With(d(h))
	}
	p := at(t, net, m.state)
	if m.want.Outcome == 0 {
		m.want.Outcome = settle.Settled
	}
	if d := cmp.Diff(m.want, doneAt(t, m.family, h, p)); d != "" {
		t.Errorf("%s (-want +got):\n%s", p.Why, d)
	}
	if m.also != nil {
		m.also(t, h, p)
	}
}

// run tests each mistake under the name of its family.
func run(t *testing.T, all []miswired, defects ...func(*wiring.Harness) settle.Defect) {
	for _, m := range all {
		platform, _, _ := strings.Cut(m.family.use, ",")
		t.Run(platform+"/"+m.state, func(t *testing.T) { m.test(t, defects...) })
	}
}

// amps asks for the current of a wire, either way.
func amps(wire string, want, within float64) func(*testing.T, *wiring.Harness, *settle.Point) {
	return func(t *testing.T, h *wiring.Harness, p *settle.Point) {
		t.Helper()
		if got := math.Abs(float64(p.WireAmps(h.Wire(wire), 0))); math.Abs(got-want) > within {
			t.Errorf("%s carries %.3g A, want %v within %v", wire, got, want, within)
		}
	}
}

// days asks how long the cart may be parked.
func days(low, high float64) func(*testing.T, *wiring.Harness, *settle.Point) {
	return func(t *testing.T, h *wiring.Harness, _ *settle.Point) {
		t.Helper()
		l, err := figure.New(h, nil).Parked(t.Context())
		if err != nil {
			t.Fatal(err)
		}
		if d := l.Days(); d < low || d > high {
			t.Errorf("it lasts %.1f days, want %v to %v", d, low, high)
		}
		t.Logf("%.1f days to the floor", l.Days())
	}
}

// Without its interlock lead no family drives. Lights stay where pre-charge or the key
// feeds the reducer: dark lights are no sign of an open solenoid. The inlet of the series
// cart feeds the key itself.
func TestInterlockOpen(t *testing.T) {
	run(t, []miswired{
		{separate, "wires: {W37: {to: capped}}", "driving", done{Twelve: true}, nil},
		{separateAcross, "wires: {W37: {to: capped}}", "driving", done{Twelve: true}, nil},
		{series, "wires: {W14: {to: capped}}", "driving", done{}, nil},
		{ac, "wires: {W57B: {to: capped}}", "driving", done{Twelve: true}, nil},
		{utility, "wires: {W87: {to: capped}}", "driving", done{Twelve: true}, nil},
	})
}

// An enable lead on a point that is always live, and how long the pack then lasts from 80 %
// to its floor. By hand for the first: 88 Ah over 60 mA of idling reducer, 15 of the pack,
// 13 of meter, 5.3 of interlock input, 3 of memory output, 2.6 of run input and 2 of charger
// is 36 days.
func TestEnableOnAnAlwaysLivePoint(t *testing.T) {
	run(t, []miswired{
		{separate, "wires: {W69: {to: K1.in}}", "key off", done{Twelve: true}, days(35, 38)},
		{series, "wires: {W62: {to: K1.in}}", "key off", done{Twelve: true}, days(53, 57)},
		{ac, "wires: {W69: {to: K1.in}}", "key off", done{Twelve: true}, days(53, 57)},
	})
}

// A reducer that is declared to be always on: 2.2 Ah a day and the pack's 15 mA empty 80 %
// of 160 Ah in 51 days; the charger's bleed takes another two. The storage disconnect stops
// all but the pack's own.
func TestReducerThatIsAlwaysOn(t *testing.T) {
	run(t, []miswired{{utility, "", "key off", done{Twelve: true}, days(48, 51)}})
}

// On the controller side of the solenoid it depends on where pre-charge comes from: a
// resistor across the contact keeps the reducer on day and night; where the key or the
// controller pre-charges, the same terminal is right.
func TestEnableOnTheControllerSide(t *testing.T) {
	run(t, []miswired{
		{separate, "wires: {W69: {to: K1.out}}", "key off", done{}, nil},
		{separateAcross, "wires: {W69: {to: K1.out}}", "key off", done{Twelve: true}, days(34, 37)},
		{series, "wires: {W62: {to: K1.out}}", "key off", done{Twelve: true}, days(53, 58)},
		{ac, "wires: {W69: {to: K1.out}}", "key off", done{}, nil},
	})
}

// A reducer that is fed from the far side of the very solenoid whose coil it feeds never
// starts: there is no 12 V to close the solenoid with.
func TestReducerBehindItsOwnSolenoid(t *testing.T) {
	run(t, []miswired{
		{utility, "wires: {W16: {from: K1.out}}", "ready", done{}, nil},
		{utility, "wires: {W16: {from: K1.out}}", "driving", done{}, nil},
	})
}

// The negative of the fuse block on the meter's: all that the 12 V side takes comes back
// through the meter's thin wire, 120 W at 12.5 V less what is lost on the way, or two lamps
// of 18 W.
func TestReturnThroughTheMeter(t *testing.T) {
	meter := func(from, to, cut string) string {
		return fmt.Sprintf("parts: {P9: {kind: meter-voltage, place: dash}, E9: {kind: light-bar, power: 120 W}}\n"+
			"wires:\n  W90: {from: %s, to: P9.+, colour: YE, size: 18 AWG, length: 12 in}\n"+
			"  W91: {from: P9.-, to: %s, colour: BK, size: 18 AWG, length: 8 ft}\n%s", from, to, cut)
	}
	block := "  W65: {from: P9.-}\n  W92: {from: A1.+, to: E9.+}\n  W93: {from: E9.-, to: A1.n}\n"
	run(t, []miswired{
		{separate, meter("X13", "X12", block), "ready", done{Twelve: true}, amps("W91", 10.4, 0.2)},
		{series, meter("X13", "G1.-", block), "ready", done{Twelve: true}, amps("W91", 10.4, 0.2)},
		{ac, meter("X13", "X12", block), "ready", done{Twelve: true}, amps("W91", 10.4, 0.2)},
		{utility, meter("X13", "X12.3", "  W52: {to: P9.-}\n"), "everything on", done{Drives: true, Twelve: true}, amps("W91", 2.95, 0.1)},
	})
}

// With its main contact welded a cart does not drive with the key off, but K1.out and all
// that hangs there is live.
func TestWeldedContact(t *testing.T) {
	welded := func(h *wiring.Harness) settle.Defect {
		i := slices.IndexFunc(h.Part("K1").Elements, func(e wiring.Element) bool { _, ok := e.(*wiring.Contact); return ok })
		return settle.ClosedElement(h.Part("K1").Elements[i])
	}
	live := func(t *testing.T, h *wiring.Harness, p *settle.Point) {
		t.Helper()
		if v := float64(p.Reading(terminal(t, h, "U1.B+").Node)); v < 0.99*float64(p.Reading(terminal(t, h, "G1.+").Node)) {
			t.Errorf("U1.B+ reads %.1f V", v)
		}
	}
	run(t, []miswired{
		{separate, "", "key off", done{Twelve: true}, live},
		{series, "", "key off", done{}, live},
		{ac, "", "key off", done{Twelve: true}, live},
		{utility, "", "key off", done{Twelve: true}, live},
	}, welded)
}

// A suppression diode the wrong way round shorts the coil's supply as soon as the coil is
// switched: the fuse of the key circuit opens and the cart is dead.
func TestReversedDiode(t *testing.T) {
	run(t, []miswired{
		{separate, "wires: {W23: {to: K1.coil-}, W24: {to: K1.coil+}}", "ready", done{Opened: []string{"F11.fuse"}}, nil},
		{series, "wires: {W22: {to: K1.coil-}, W23: {to: K1.coil+}}", "ready", done{Twelve: true}, nil},
		{series, "wires: {W22: {to: K1.coil-}, W23: {to: K1.coil+}}", "driving", done{Opened: []string{"F11.fuse"}}, nil},
		{utility, "wires: {W26: {to: K1.coil-}, W27: {to: K1.coil+}}", "ready", done{Twelve: true, Opened: []string{"F14.fuse"}}, nil},
	})
}

// Two supplies on one bus. Of two packs the fuller drives the other through nothing but
// resistance: 3.33 V over 20 mohm and two cables. Of two reducers the one that is set higher
// carries all until its limit. A second battery on the 12 V side keeps it alive when the
// pack is off.
func TestTwoSuppliesInParallel(t *testing.T) {
	second := "parts: {G2: {kind: pack-lfp, cells: 15}}\n" +
		"wires:\n  W95: {from: G2.+, to: G1.+, colour: RD, size: 2 AWG, length: 12 in}\n" +
		"  W96: {from: G2.-, to: G1.-, colour: BK, size: 2 AWG, length: 12 in}\n"
	reducer := "parts: {T3: {kind: reducer-always-on, amps: 10 A, volts: 12.6 V, works: 24 V to 64 V}, E9: {kind: light-bar, power: 60 W}}\n" +
		"wires:\n  W95: {from: T3.in+, to: F1.out}\n  W96: {from: T3.in-, to: G1.-}\n  W97: {from: T3.out, to: A1.+}\n" +
		"  W98: {from: A1.+, to: E9.+}\n  W99: {from: A1.-, to: E9.-}\n"
	battery := "parts: {G2: {kind: battery-auxiliary}, F9: {kind: fuse-blade, rating: 30 A}}\n" +
		"wires:\n  W95: {from: G2.+, to: F9.in}\n  W96: {from: F9.out, to: %s}\n  W97: {from: G2.-, to: G1.-, colour: BK, size: 10 AWG, length: 12 in}\n"
	run(t, []miswired{
		{separate, second, "key off", done{}, amps("W95", 160, 10)},
		{series, reducer, "ready", done{Twelve: true}, amps("W97", 4.8, 0.2)},
		{separate, fmt.Sprintf(battery, "A1.+"), "pack off", done{Twelve: true}, nil},
		{utility, fmt.Sprintf(battery, "X14"), "pack off", done{Twelve: true}, nil},
	})
}

// A reducer that is supplied through the pre-charge resistor pulls its own supply under its
// lockout, drops out, lets the supply recover, and so on for ever: the state has no operating
// point, and says which element goes to and fro. 60 mA through the 33 ohm of the AC
// controller are borne.
func TestReducerThroughThePrechargeResistor(t *testing.T) {
	hiccups := []string{"T2.main"}
	run(t, []miswired{
		{separate, "wires: {W60: {from: K1.out}, W37: {to: capped}, W69: {to: X13}}", "ready", done{Outcome: settle.Chatters, Cycle: hiccups}, nil},
		{separateAcross, "wires: {W60: {from: K1.out}, W37: {to: capped}}", "ready", done{Outcome: settle.Chatters, Cycle: hiccups}, nil},
		{series, "wires: {W60: {from: K1.out}}", "ready", done{Outcome: settle.Chatters, Cycle: hiccups}, nil},
		{ac, "wires: {W60: {from: K1.out}, W57B: {to: capped}}", "ready", done{Twelve: true}, nil},
	})
}
