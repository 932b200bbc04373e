package settle

import (
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/lugwright/lugwright/wiring"
)

// What an independent solver may differ by: the greater of a millionth and 1 uV.
const (
	agreeRatio = 1e-6
	agreeVolts = 1e-6
)

// ngspice finds the program. Where it is missing the test skips, or fails if tools are
// required.
func ngspice(t testing.TB) (program string) {
	t.Helper()
	program, ok := haveNgspice(t)
	if !ok {
		t.Skip("ngspice is missing: no independent solver to compare with")
	}
	return program
}

func haveNgspice(t testing.TB) (program string, ok bool) {
	t.Helper()
	program, err := exec.LookPath("ngspice")
	if err != nil && os.Getenv("LUGWRIGHT_TOOLS") == "required" {
		t.Fatal("ngspice is required and missing")
	}
	return program, err == nil
}

// ngspiceVersion is the program's own word for what it is: "ngspice-39".
func ngspiceVersion(t testing.TB, program string) string {
	t.Helper()
	out, _ := exec.Command(program, "--version").CombinedOutput()
	version := regexp.MustCompile(`ngspice-[0-9.]+`).FindString(string(out))
	if version == "" {
		t.Fatalf("ngspice does not say which it is:\n%s", out)
	}
	return version
}

// run gives ngspice a deck and returns all that it prints.
func run(t testing.TB, program, deck string) string {
	t.Helper()
	file := filepath.Join(t.TempDir(), "deck.cir")
	if err := os.WriteFile(file, []byte(deck), 0o600); err != nil {
		t.Fatal(err)
	}
	// With its commands in a control block ngspice says that it had nothing to do, and exits
	// with 1; whether it found anything is judged by what it printed.
	out, _ := exec.Command(program, "-b", file).CombinedOutput()
	return string(out)
}

// solve runs a deck and returns the voltages by node name.
func solve(t testing.TB, program, deck string) map[string]float64 {
	t.Helper()
	out := run(t, program, deck)
	volts := map[string]float64{}
	for _, line := range strings.Split(out, "\n") {
		name, value, ok := strings.Cut(line, " = ")
		if v, err := strconv.ParseFloat(strings.TrimSpace(value), 64); ok && err == nil {
			volts[strings.TrimSpace(name)] = v
		}
	}
	if len(volts) == 0 {
		t.Fatalf("ngspice found nothing:\n%s", out)
	}
	volts["0"] = 0
	return volts
}

// spiceVolts is what ngspice finds at each node that does not float.
func spiceVolts(t testing.TB, program string, p *Point) map[wiring.NodeID]float64 {
	t.Helper()
	begin := solve(t, program, newDeck(p, true).finish(nil))
	d := newDeck(p, false)
	volts := solve(t, program, d.finish(begin))
	found := map[wiring.NodeID]float64{}
	for n := range p.net.harness.Nodes {
		if v, ok := volts[d.name(wiring.NodeID(n))]; ok && !p.Floating(wiring.NodeID(n)) {
			found[wiring.NodeID(n)] = v
		}
	}
	return found
}

// compareWithSpice holds every voltage of a point to what ngspice finds, and every element
// that watches a voltage to what it would do at ngspice's.
func compareWithSpice(t *testing.T, p *Point) {
	t.Helper()
	compare(t, p, spiceVolts(t, ngspice(t), p))
}

func compare(t *testing.T, p *Point, theirs map[wiring.NodeID]float64) {
	t.Helper()
	for n := range p.net.harness.Nodes {
		id := wiring.NodeID(n)
		if p.Floating(id) {
			continue
		}
		v, ok := theirs[id]
		if ours := float64(p.Volts(id)); !ok || !agree(ours, v) {
			t.Errorf("%v: %.9g V, ngspice has %.9g V", p.net.harness.Nodes[id], ours, v)
		}
	}
	watches(t, p, theirs)
	if t.Failed() {
		t.Logf("deck:\n%s", newDeck(p, false).finish(nil))
	}
}

func agree(ours, theirs float64) bool {
	return math.Abs(ours-theirs) <= max(agreeRatio*math.Abs(theirs), agreeVolts)
}

// watches holds the memory of a point, which the deck takes over, to ngspice's voltages:
// each sense, coil and converter must have a right to stand as it does.
func watches(t *testing.T, p *Point, volts map[wiring.NodeID]float64) {
	t.Helper()
	for _, part := range p.net.harness.Parts {
		for _, e := range part.Elements {
			a, b, low, high := window(p, e)
			if a == b || p.Floating(a) || p.Floating(b) {
				continue
			}
			v := volts[a] - volts[b]
			if s, ok := e.(*wiring.Sense); !ok || s.EitherWay {
				v = math.Abs(v)
			}
			if v < low-agreeVolts || v > high+agreeVolts {
				t.Errorf("%s, which holds: %v, sees %v V, and may not outside %v to %v V", e.Base().Ref(), p.Holds(e), v, low, high)
			}
		}
	}
}

// window is between which voltages an element that watches one may stand as it does,
// whatever it came from; a and b are equal for elements that watch none.
func window(p *Point, e wiring.Element) (a, b wiring.NodeID, low, high float64) {
	low, high = math.Inf(-1), math.Inf(1)
	holds := p.Holds(e)
	switch e := e.(type) {
	case *wiring.Sense:
		return e.At, e.To, senseLow(e, holds), senseHigh(e, holds)
	case *wiring.Coil:
		if holds {
			low = orElse(float64(e.DropOut), float64(e.PullIn)/4)
		} else {
			high = float64(e.PullIn)
		}
		return e.A, e.B, low, high
	case *wiring.Converter:
		if holds {
			return e.InA, e.InB, float64(e.Works.Low), float64(e.Works.High)
		}
	}
	return wiring.NoNode, wiring.NoNode, low, high
}

// senseLow is the voltage below which a sense cannot stand as it does.
func senseLow(e *wiring.Sense, holds bool) float64 {
	switch {
	case e.Above != 0 && holds:
		return orElse(float64(e.Back), 0.9*float64(e.Above))
	case e.Below != 0 && !holds:
		return float64(e.Below)
	}
	return math.Inf(-1)
}

// senseHigh is the voltage above which it cannot.
func senseHigh(e *wiring.Sense, holds bool) float64 {
	switch {
	case e.AC:
		return math.Inf(1)
	case e.Above != 0 && !holds:
		return float64(e.Above)
	case e.Below != 0 && holds:
		return orElse(float64(e.Back), 1.1*float64(e.Below))
	}
	return math.Inf(1)
}
