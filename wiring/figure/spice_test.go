package figure

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// spice runs a deck and returns what its .meas lines found.
func spice(t *testing.T, deck string) map[string]float64 {
	t.Helper()
	program, err := exec.LookPath("ngspice")
	if err != nil {
		if os.Getenv("LUGWRIGHT_TOOLS") == "required" {
			t.Fatal("ngspice is required and missing")
		}
		t.Skip("ngspice is missing: no independent solver to compare with")
	}
	file := filepath.Join(t.TempDir(), "deck.cir")
	if err := os.WriteFile(file, []byte(deck), 0o600); err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command(program, "-b", file).CombinedOutput()
	found := map[string]float64{}
	for _, line := range strings.Split(string(out), "\n") {
		name, value, ok := strings.Cut(line, "=")
		fields := strings.Fields(value)
		if !ok || len(fields) == 0 {
			continue
		}
		if v, err := strconv.ParseFloat(fields[0], 64); err == nil {
			found[strings.TrimSpace(name)] = v
		}
	}
	if err != nil || len(found) == 0 {
		t.Fatalf("ngspice found nothing: %v\n%s", err, out)
	}
	return found
}

// measures asks for the voltage of node c at these times.
func measures(times []float64) string {
	var b strings.Builder
	for i, at := range times {
		fmt.Fprintf(&b, ".meas tran v%d find v(c) at=%g\n", i, at)
	}
	return b.String()
}

func compareWithSpice(t *testing.T, tr Transient, deck string, times []float64) {
	t.Helper()
	theirs := spice(t, deck+measures(times)+".end\n")
	for i, at := range times {
		v, ok := theirs[fmt.Sprintf("v%d", i)]
		if !ok {
			t.Fatalf("ngspice says nothing of %v s", at)
		}
		within(t, fmt.Sprintf("voltage after %v s", at), tr.At(quantity.Second(at)), quantity.Volt(v), 0.02)
	}
}

// A pre-charge from the key, through a diode, with a bleed and a load of constant power
// from 9 V up behind it.
func TestPrechargeAgreesWithSpice(t *testing.T) {
	b := newBench()
	b.source("G1", 52.8, 0.01)
	b.resistor("R1.ohms", "G1.+", "V2.a", 470)
	put(b, "V2.diode", &wiring.Diode{A: b.node("V2.a"), B: b.node("U1.+"), Drop: 0.7, Ohms: 0.01})
	b.resistor("U1.bleed", "U1.+", "G1.-", 10e3)
	put(b, "E1.load", &wiring.Load{A: b.node("U1.+"), B: b.node("G1.-"), Law: wiring.ConstantPower, Watts: 0.4, Works: wiring.Band{Low: 9}})
	e := b.capacitor("U1.capacitor", "U1.+", "G1.-", 4.7e-3)
	compareWithSpice(t, follow(t, b.cart(), e, state()), `* pre-charge of a controller
V1 p 0 52.8
R0 p q 0.01
R1 q a 470
B1 a c I = max(0, (V(a,c) - 0.7) / 0.01)
R2 c 0 10k
B2 c 0 I = (V(c) >= 9) ? 0.4 / V(c) : V(c) * 0.4 / 81
C1 c 0 4.7m IC=0
.tran 10m 20 0 10m uic
`, []float64{0.1, 0.5, 1, 2, 4, 6.6, 10, 20})
}

// A charged capacitor that runs a reducer down to its lockout at 30 V, and a coil and a
// bleed from there.
func TestRunDownAgreesWithSpice(t *testing.T) {
	b, e, _ := parked(true)
	put(b, "T2.main", &wiring.Converter{
		InA: b.node("U1.+"), InB: b.node("G1.-"), OutA: b.node("T2.out"), OutB: b.node("G1.-"),
		Volts: 12, Amps: 25, Works: wiring.Band{Low: 30, High: 64}, Efficiency: 0.9, Idle: 0.06,
	})
	b.resistor("E1.lamp", "T2.out", "G1.-", 48)
	b.resistor("K2.coil", "U1.+", "G1.-", 600)
	r, err := b.cart().RunDown(t.Context(), e, state(), state())
	if err != nil {
		t.Fatal(err)
	}
	volts := 12.0 * 48 / 48.005
	compareWithSpice(t, r.Transient, fmt.Sprintf(`* run-down of a controller
C1 c 0 4.7m IC=%.9g
R1 c 0 10k
R2 c 0 600
* its input: the idle current and what the lamp takes, until the lockout at 30 V latches
B1 c 0 I = (V(off) < 0.5) ? 0.06 + %.9g / V(c) : 0
B2 0 off I = (V(c) < 30 && V(off) < 1) ? 20m : 0
C2 off 0 1u IC=0
R3 off 0 1g
.tran 1m 4 0 0.2m uic
`, float64(r.From), volts*volts/48/0.9), []float64{0.01, 0.03, 0.06, 0.1, 0.5, 1, 2, 4})
}
