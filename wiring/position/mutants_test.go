package position_test

import (
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/position"
)

// Each row is one wire of the two-seat cart landed wrongly, and what that breaks. The
// positions follow from the wiring: what has to be on for the current to take the way.
func TestAWireOnTheWrongTerminal(t *testing.T) {
	tests := []struct {
		name     string
		wrong    func(t *testing.T, h *wiring.Harness)
		property *position.Property
		want     []shown
		way      string // one of the ways of the first counterexample
	}{
		{
			"the enable lead on the battery side of the solenoid",
			func(t *testing.T, h *wiring.Harness) { land(t, h, "W69", "K1.out", "K1.in") },
			position.OffMeansOff(),
			[]shown{{"T2.main", "S1.key off"}},
			"G1.+ - W51 - F1 - W6 - K1.in - W69 - F5 - W62 - T2.enable / T2.in- - W61 - X3 - W52 - G1.-",
		}, {
			"pre-charge across the solenoid, enable on the controller side",
			func(t *testing.T, h *wiring.Harness) { land(t, h, "W21", "X13", "K1.in") },
			position.OffMeansOff(),
			[]shown{{"T2.main", "S1.key off"}},
			"G1.+ - W51 - F1 - W6 - K1.in - W21 - R1 - W22 - V2 - W41 - K1.out - W69 - F5 - W62 - T2.enable / T2.in- - W61 - X3 - W52 - G1.-",
		}, {
			"a lamp fed with pack voltage",
			func(t *testing.T, h *wiring.Harness) { lay(t, h, "W99", "E1.+", "F3.out") },
			position.OffMeansOff(),
			[]shown{
				{"E1.load", "S1.key off"},
				{"X5.load", "S1.key off, S6.switch on"},
				{"P4.amplifier", "S1.key off, P4.switch on, S6.switch on"},
				{"P3.load", "S1.key off, S6.switch on, S7.button down"},
			},
			"G1.+ - W59 - F3 - W99 - E1.+ / E1.- - W73 - A1 - W65 - X3 - W52 - G1.-",
		}, {
			"a 12 V channel bridged to 48 V",
			func(t *testing.T, h *wiring.Harness) { lay(t, h, "W99", "A1.1", "F3.out") },
			position.BusesApart(),
			[]shown{{"G1.+, T2.out", "everything at rest"}},
			"G1.+ - W59 - F3 - W99 - A1.fuse1 - W64 - T2.out",
		}, {
			"48 V behind the switch of a 12 V lamp",
			func(t *testing.T, h *wiring.Harness) { lay(t, h, "W99", "E1.+", "F3.out") },
			position.BusesApart(),
			[]shown{{"G1.+, T2.out", "S6.switch on"}},
			"G1.+ - W59 - F3 - W99 - E1.+ - W72 - S6 - W71 - A1.fuse1 - W64 - T2.out",
		}, {
			// The 12 V loads pull the controller side down, so that the main contact never
			// closes: pre-charge alone joins the buses.
			"48 V behind the main contact",
			func(t *testing.T, h *wiring.Harness) { lay(t, h, "W99", "K1.out", "A1.1") },
			position.BusesApart(),
			[]shown{{"G1.+, T2.out", "S1.key on"}},
			"G1.+ - W51 - F1 - W6 - K1.in - W13 - F11 - W14 - S2 - W16 - S1 - W17 - X13 - W21 - R1 - W22 - V2 - W41 - K1.out - W99 - A1.fuse1 - W64 - T2.out",
		}, {
			"the interlock lead straight on pack positive",
			func(t *testing.T, h *wiring.Harness) { land(t, h, "W37", "T1.lock-b", "F4.out") },
			position.NoDriveOnCharge(),
			[]shown{{"M1", "X1.plug in, S1.key on, S3.direction forward, S4.pedal down"}},
			"U1.interlock: G1.+ - W66 - F4 - W37 - U1.interlock / U1.B- - W7 - G1.-",
		}, {
			"the interlock lead on the controller side",
			func(t *testing.T, h *wiring.Harness) { land(t, h, "W37", "T1.lock-b", "K1.out") },
			position.NoDriveOnCharge(),
			[]shown{{"M1", "X1.plug in, S1.key on, S3.direction forward, S4.pedal down"}},
			"U1.interlock: G1.+ - W51 - F1 - W6 - K1.contact - W37 - U1.interlock / U1.B- - W7 - G1.-",
		}, {
			// 18 A of the charger cannot feed the motor, and the pack is off.
			"the interlock lead straight on pack positive, pack off",
			func(t *testing.T, h *wiring.Harness) { land(t, h, "W37", "T1.lock-b", "F4.out") },
			position.SettlesEverywhere(),
			[]shown{{"M1.field", "G1.pack off, S1.key on, S3.direction forward, S4.pedal down, X1.plug in"}},
			"M1.field: T1.+ - W54 - F2 - W53 - G1.+ - W51 - F1 - W6 - K1.contact - W8 - U1.driver3 - W11 - M1.F1 / " +
				"M1.F2 - W12 - U1.driver4 - W7 - G1.- - W52 - X3 - W55 - T1.-",
		}, {
			"a 48 V buzzer and a 12 V horn on one return that opens",
			func(t *testing.T, h *wiring.Harness) { land(t, h, "W29", "X12", "P3.-") },
			position.SneakPath(),
			[]shown{{"P1.load", "S1.key on, S3.direction reverse"}},
			"G1.+ - W51 - F1 - W6 - K1.in - W13 - F11 - W14 - S2 - W16 - S1 - W17 - X13 - W25 - S3 - W28 - P1.+ / " +
				"P1.- - W29 - P3 - W74 - A1.fuse2 - A1.fuse3 - W77 - X5 - W78 - A1 - W65 - X3 - W52 - G1.-",
		}, {
			"the suppression diode the wrong way round",
			func(t *testing.T, h *wiring.Harness) {
				land(t, h, "W23", "K1.coil+", "X12")
				land(t, h, "W24", "K1.coil-", "K1.coil+")
				land(t, h, "W23", "X12", "K1.coil-")
			},
			position.NoShort(),
			[]shown{{"G1.source", "S1.key on"}},
			"G1.+ - W51 - F1 - W6 - K1.in - W13 - F11 - W14 - S2 - W16 - S1 - W17 - X13 - W19 - K1.coil+ - W24 - V1 - W23 - K1.coil- - W20 - U1.coil - W7 - G1.-",
		}, {
			"the pack shorted behind its fuse",
			func(t *testing.T, h *wiring.Harness) { lay(t, h, "W99", "F1.out", "G1.-") },
			position.NoShort(),
			[]shown{{"G1.source", "everything at rest"}, {"T1.charger", "X1.plug in"}},
			"G1.+ - W51 - F1 - W99 - G1.-",
		}, {
			"the pack shorted without a fuse",
			func(t *testing.T, h *wiring.Harness) { lay(t, h, "W99", "F1.in", "X3.4") },
			position.NoShort(),
			[]shown{{"G1.source", "everything at rest"}, {"T1.charger", "X1.plug in"}},
			"G1.+ - W51 - F1.in - W99 - X3 - W52 - G1.-",
		}, {
			"a lamp shorted behind its switch",
			func(t *testing.T, h *wiring.Harness) { lay(t, h, "W99", "E1.+", "A1.n") },
			position.NoShort(),
			[]shown{{"T2.main", "S1.key on, S6.switch on"}},
			"T2.out - W64 - A1.fuse1 - W71 - S6 - W72 - E1.+ - W99 - A1 - W65 - X3 - W61 - T2.in-",
		},
	}
	for _, tt := range tests {
		t.Run(tt.name+"/"+tt.property.ID, func(t *testing.T) {
			h := example(t, "tern-point-14")
			tt.wrong(t, h)
			r := check(t, h, tt.property, position.CheckOptions{})
			if diff := cmp.Diff(tt.want, shownOf(r)); r.Verdict != position.Broken || diff != "" {
				t.Fatalf("%v (-want +got):\n%s", r.Verdict, diff)
			}
			if all := ways(r.Counterexamples[0]); !slices.Contains(all, tt.way) {
				t.Errorf("%s is not among its ways:\n%s", tt.way, cmp.Diff([]string{tt.way}, all))
			}
			if tt.property.Prune == nil {
				return // it was the full product, save positions that read alike
			}
			full := check(t, h, tt.property, position.CheckOptions{Full: true})
			if diff := cmp.Diff(shownOf(full), shownOf(r)); diff != "" {
				t.Errorf("the full product shows others (-full +pruned):\n%s", diff)
			}
		})
	}
}
