package figure

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/job"
)

// directly is a solenoid that closes onto an empty capacitor, its coil on the battery side:
// so much voltage is lost then that the coil would let go, if it had the time.
func directly() (*bench, *wiring.Capacitor, *wiring.Control) {
	b := newBench()
	b.source("G1", 48, 0.01)
	key := b.key("S1", "key")
	b.wire("G1.+", "K1.in", 0.0005)
	b.wire("K1.in", "S1.in", 0.1)
	coil := put(b, "K1.coil", &wiring.Coil{A: b.node("S1.out"), B: b.node("G1.-"), Ohms: 150, PullIn: 30, DropOut: 10})
	put(b, "K1.contact", &wiring.Contact{A: b.node("K1.in"), B: b.node("K1.out"), Coil: coil, Ohms: 0.0003})
	b.wire("K1.out", "U1.+", 0.001)
	return b, b.capacitor("U1.capacitor", "U1.+", "G1.-", 4.7e-3), key
}

func TestSolenoidOntoEmptyCapacitor(t *testing.T) {
	b, e, key := directly()
	p := precharge(t, b.cart(), e, state(key), 0)
	if !p.None || len(p.Stages) != 1 || !p.Stages[0].Quick || p.Ending != Rests {
		t.Fatalf("it %v: %+v", p.Ending, p.Stages)
	}
	// The coil's third of an ampere is not in these.
	within(t, "first current", p.Most(), 48/0.0118, 1)
	within(t, "time constant", p.Stages[0].Tau(), 4.7e-3*0.0118, 1e-8)
	within(t, "final voltage", p.Final, 48, 0.01)
	within(t, "voltage after one time constant", p.At(p.Stages[0].Tau()), 48*(1-1/2.718281828459045), 0.01)
}

// A controller on the wrong poles is charged the other way round, and its hiccup leaves a
// pre-charge that is never done.
func TestPrechargeGoneWrong(t *testing.T) {
	b, e := family(16, 470, 0.01, 4.7e-3, 10e3)
	e.A, e.B = e.B, e.A
	p := precharge(t, b.cart(), e, state(), 0.5)
	within(t, "voltage", p.Reaches, -50.43, 0.01)
	within(t, "time to 95 %", p.To95, 6.318, 0.01)

	b, e = family(16, 470, 0.01, 4.7e-3, 10e3)
	put(b, "T2.main", &wiring.Converter{
		InA: e.A, InB: e.B, OutA: b.node("T2.out"), OutB: e.B,
		Volts: 12.5, Amps: 25, Works: wiring.Band{Low: 30, High: 64}, Starts: 31, Idle: 0.06,
	})
	p = precharge(t, b.cart(), e, state(), 0.5)
	if p.Ending != Hiccups || p.Alone.Ending != Hiccups {
		t.Errorf("it %v", p.Ending)
	}
	within(t, "highest voltage", p.Reaches, 31, 0.01)
	within(t, "share", p.Share, 31/52.8, 0.001)
}

// Of several states, the first in which something limits the current counts; else the
// first that charges the capacitor at all; a capacitor that no state charges is left out.
func TestPrechargesChooseTheirState(t *testing.T) {
	b, _, key := directly()
	b.capacitor("U2.capacitor", "U2.+", "G1.-", 1e-3)
	b.capacitor("U3.unstated", "U1.+", "G1.-", 0)
	off, ready, driving := state(), state(key), state(key)
	off.Name, ready.Name, driving.Name = "key off", "ready", "driving"
	b.h.States = []*wiring.State{off, ready, driving}
	all, err := b.cart().Precharges(t.Context())
	if err != nil || len(all) != 1 || all[0].State != ready || !all[0].None {
		t.Fatalf("pre-charges %+v: %v", all, err)
	}
	b.resistor("R1.ohms", "K1.in", "K1.out", 470)
	all, err = b.cart().Precharges(t.Context())
	if err != nil || len(all) != 1 || all[0].State != off || all[0].None {
		t.Fatalf("with a resistor across the contact: %+v: %v", all, err)
	}
	within(t, "voltage", all[0].Reaches, 48, 1e-3)
}

// The example platform whose resistor lies across the contact: the controller's side is at
// pack voltage day and night, and the solenoid closes onto next to nothing. An invented
// cart; 50.2 V was solved in ngspice for 52.8 V, 470 ohm and 9.1 kohm.
func TestPrechargeAcrossTheContact(t *testing.T) {
	root := t.TempDir()
	if err := os.CopyFS(root, os.DirFS("../../examples/tern-point")); err != nil {
		t.Fatal(err)
	}
	text := "job: T-1\ntitle: test\nuse: [48v-separately-excited-across, 16s-onboard-charger]\n"
	if err := os.WriteFile(filepath.Join(root, "jobs", "across.yaml"), []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	h, findings, err := job.Load("jobs/across.yaml", job.Options{FS: os.DirFS(root)})
	if err != nil || h == nil {
		t.Fatal(err, findings)
	}
	c := New(h, nil)
	e := each[*wiring.Capacitor](c)[0]
	parked := precharge(t, c, e, h.State("key off"), 0.5)
	within(t, "voltage while parked", parked.Reaches, 50.4, 0.1)
	within(t, "share", parked.Share, 0.955, 0.002)
	within(t, "time to 95 %", parked.To95, 6.29, 0.05)
	if got := refs(parked.Through); !strings.Contains(got, "R1.resistor") || parked.Closes != nil {
		t.Errorf("on the way: %s; closes %+v", got, parked.Closes)
	}
	heat := parked.Heats[0]
	within(t, "watts with the controller shorted", heat.Fault, 58.4*58.4/470, 0.02)
	within(t, "standing watts", heat.Standing, 0.0125, 0.002)
	tow := precharge(t, c, e, h.State("tow"), 0.5)
	near(t, "voltage in tow", tow.Reaches, parked.Reaches)
}

func TestWords(t *testing.T) {
	for got, want := range map[string]string{
		Rests.String():                   "rests",
		Hiccups.String():                 "hiccups",
		Undecided.String():               "undecided",
		Ending(0).String():               "not found yet",
		Duty(0).String():                 "not known",
		OpeningClass(200).String():       "opens at once",
		Joule(6.5538).String():           "6.55 J",
		Joule(1234).String():             "1230 J",
		(&Unknown{"G1", "gone"}).Error(): "G1: gone",
		(&Unsettled{"ready", 2, "K1 alternates"}).Error(): `ready has no operating point: it ends as "chatters": K1 alternates`,
		listed(nil, 3):                          "",
		listed([]string{"W1"}, 3):               "W1",
		listed([]string{"W1", "W2"}, 3):         "W1 and W2",
		listed([]string{"1", "2", "3", "4"}, 3): "1, 2 and 2 more",
	} {
		if got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}
