package cases

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/figure"
	"github.com/lugwright/lugwright/wiring/meter"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/settle"
)

// scene is a cart in a state, perhaps with something wrong that is not in its drawing.
type scene struct {
	h     *wiring.Harness
	point *settle.Point
}

func newScene(t *testing.T, h *wiring.Harness, fault, state string) scene {
	t.Helper()
	net := settle.Compile(h)
	if fault != "" {
		net = net.With(defectOf(t, h, fault))
	}
	return scene{h, at(t, net, state)}
}

// defectOf reads what is wrong: "open W14", "closed K1.contact", "joint W6 at 10 mohm",
// "bridge U1.key and U1.brake at 5 kohm".
func defectOf(t *testing.T, h *wiring.Harness, text string) settle.Defect {
	t.Helper()
	what, ohmsText, _ := strings.Cut(text, " at ")
	var ohms quantity.Ohm
	if ohmsText != "" {
		a, err := quantity.Parse(ohmsText, quantity.Resistance)
		if err != nil {
			t.Fatalf("%q: %v", text, err)
		}
		ohms = quantity.Ohm(a.Value)
	}
	words := strings.Fields(what)
	switch words[0] {
	case "bridge":
		return settle.Bridge(terminal(t, h, words[1]).Node, terminal(t, h, words[3]).Node, ohms)
	case "joint":
		return settle.BadJoint(wire(t, h, words[1]), ohms)
	case "closed":
		return settle.ClosedElement(element(t, h, words[1]))
	case "open":
		if w := h.Wire(words[1]); w != nil {
			return settle.OpenWire(w)
		}
		return settle.OpenElement(element(t, h, words[1]))
	}
	t.Fatalf("%q is no fault", text)
	return settle.Defect{}
}

func wire(t *testing.T, h *wiring.Harness, number string) *wiring.Wire {
	t.Helper()
	w := h.Wire(number)
	if w == nil {
		t.Fatalf("there is no wire %s", number)
	}
	return w
}

// element finds "K1.contact".
func element(t *testing.T, h *wiring.Harness, ref string) wiring.Element {
	t.Helper()
	for _, p := range h.Parts {
		for _, e := range p.Elements {
			if e.Base().Ref() == ref {
				return e
			}
		}
	}
	t.Fatalf("there is no element %s", ref)
	return nil
}

// facts is what can be said of a scene, each with what it reads.
var facts = []struct {
	form  *regexp.Regexp
	holds func(t *testing.T, s scene, words []string) error
}{
	{regexp.MustCompile(`^(moves|stays)$`), factMoves},
	{regexp.MustCompile(`^(settles|chatters)$`), factSettles},
	{regexp.MustCompile(`^(\w+) (on|off)$`), factOn},
	{regexp.MustCompile(`^(\w+) (opens)$`), factOpens},
	{regexp.MustCompile(`^(\w+) (limits)$`), factLimits},
	{regexp.MustCompile(`^(\S+) (proves nothing)$`), factProves},
	{regexp.MustCompile(`^(\S+) (-?[\d.]+) to (-?[\d.]+) V$`), factVolts},
	{regexp.MustCompile(`^(\S+) (-?[\d.]+) to (-?[\d.]+) A$`), factAmps},
	{regexp.MustCompile(`^(\S+) loses ([\d.]+) to ([\d.]+) V$`), factDrop},
	{regexp.MustCompile(`^lasts ([\d.]+) to ([\d.]+) days$`), factLasts},
}

// check holds a scene to a list of facts, "moves; W6 loses 0.5 to 1 V".
func (s scene) check(t *testing.T, list string) {
	t.Helper()
	for _, text := range strings.Split(list, ";") {
		text = strings.TrimSpace(text)
		known := false
		for _, f := range facts {
			if words := f.form.FindStringSubmatch(text); words != nil {
				known = true
				if err := f.holds(t, s, words[1:]); err != nil {
					t.Errorf("%s: %v %s", text, err, s.point.Why)
				}
			}
		}
		if !known {
			t.Errorf("%q is no fact", text)
		}
	}
}

func factMoves(_ *testing.T, s scene, words []string) error {
	if s.point.Traction() != (words[0] == "moves") {
		return fmt.Errorf("traction is %v", s.point.Traction())
	}
	return nil
}

func factSettles(_ *testing.T, s scene, words []string) error {
	if (s.point.Outcome == settle.Settled) != (words[0] == "settles") {
		return fmt.Errorf("it is %v", s.point.Outcome)
	}
	return nil
}

func factOn(t *testing.T, s scene, words []string) error {
	p := s.h.Part(words[0])
	if p == nil {
		t.Fatalf("there is no part %s", words[0])
	}
	if s.point.On(p) != (words[1] == "on") {
		return fmt.Errorf("it is %v", s.point.On(p))
	}
	return nil
}

func factOpens(_ *testing.T, s scene, words []string) error {
	if !ofPart(s.point.Opened(), words[0]) {
		return fmt.Errorf("what opens is %v", refs(s.point.Opened()))
	}
	return nil
}

func factLimits(_ *testing.T, s scene, words []string) error {
	if !ofPart(s.point.Limiting(), words[0]) {
		return fmt.Errorf("in their limit are %v", refs(s.point.Limiting()))
	}
	return nil
}

func ofPart(es []wiring.Element, designation string) bool {
	return slices.ContainsFunc(es, func(e wiring.Element) bool { return e.Base().Part.Designation == designation })
}

func factProves(t *testing.T, s scene, words []string) error {
	sheet, err := meter.New(s.h).Settle(t.Context(), s.point.State)
	if err != nil {
		return err
	}
	if r := sheet.Read(terminal(t, s.h, words[0])); !r.Proof.Nothing() {
		return fmt.Errorf("%v is %v", r, r.Proof)
	}
	return nil
}

func factVolts(t *testing.T, s scene, words []string) error {
	return between(words, float64(s.point.Reading(terminal(t, s.h, words[0]).Node)))
}

func factAmps(t *testing.T, s scene, words []string) error {
	return between(words, float64(s.point.WireAmps(wire(t, s.h, words[0]), 0)))
}

func factDrop(t *testing.T, s scene, words []string) error {
	return between(words, math.Abs(float64(s.point.WireDrop(wire(t, s.h, words[0]), 0))))
}

func factLasts(t *testing.T, s scene, words []string) error {
	l, err := figure.New(s.h, nil).Parked(t.Context())
	if err != nil {
		return err
	}
	return between(append([]string{""}, words...), l.Days())
}

// between holds a figure to a range, of which the words behind the first are the ends.
func between(words []string, got float64) error {
	low, errLow := strconv.ParseFloat(words[1], 64)
	high, errHigh := strconv.ParseFloat(words[2], 64)
	if errLow != nil || errHigh != nil || got < low || got > high {
		return fmt.Errorf("it is %.4g", got)
	}
	return nil
}
