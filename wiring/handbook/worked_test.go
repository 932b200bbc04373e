package handbook

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/lugwright/lugwright/wiring/quantity"
)

// example is one row of worked_examples.csv: what is given, and what the source got.
type example struct {
	record
	t     *testing.T
	given map[string]string
}

func newExample(t *testing.T, row record) example {
	e := example{record: row, t: t, given: map[string]string{}}
	for _, pair := range strings.Split(row["givens"], ";") {
		key, value, _ := strings.Cut(pair, "=")
		e.given[key] = value
	}
	return e
}

// has reports whether all of the keys are given.
func (e example) has(keys ...string) bool {
	for _, k := range keys {
		if _, ok := e.given[k]; !ok {
			return false
		}
	}
	return true
}

// x returns a given number.
func (e example) x(key string) float64 {
	e.t.Helper()
	f, err := strconv.ParseFloat(e.given[key], 64)
	if err != nil {
		e.t.Fatalf("%s: given %s: %v", e.record["id"], key, err)
	}
	return f
}

func (e example) amps() quantity.Ampere         { return quantity.Ampere(e.x("i_A")) }
func (e example) volts(k string) quantity.Volt  { return quantity.Volt(e.x(k)) }
func (e example) ohms(k string) quantity.Ohm    { return quantity.Ohm(e.x(k)) }
func (e example) feet(k string) quantity.Metre  { return quantity.Feet(e.x(k)) }
func (e example) ratio(k string) quantity.Ratio { return quantity.Ratio(e.x(k)) }

func (e example) size() quantity.Size {
	e.t.Helper()
	s, err := quantity.ParseSize(e.given["awg"] + " AWG")
	if err != nil {
		e.t.Fatalf("%s: %v", e.record["id"], err)
	}
	return s
}

// number fails unless got is what the source has, within the row's tolerance.
func (e example) number(got float64) {
	e.t.Helper()
	near(e.t, e.record["id"]+" "+e.record["quantity"], got, e.must(e.t, "expected"), e.must(e.t, "tol")+1e-12)
}

// text fails unless got is what the source has.
func (e example) text(got string) {
	e.t.Helper()
	if got != e.record["expected"] {
		e.t.Errorf("%s %s = %s, want %s", e.record["id"], e.record["quantity"], got, e.record["expected"])
	}
}

func (e example) noError(err error) {
	e.t.Helper()
	if err != nil {
		e.t.Fatalf("%s: %v", e.record["id"], err)
	}
}

// unknown fails a row that no function of this package answers.
func (e example) unknown() {
	e.t.Helper()
	e.t.Errorf("%s: nothing answers a %s from %v", e.record["id"], e.record["kind"], e.given)
}

// answers run the rows of each kind; solverKinds belong to the network solver.
var answers = map[string]func(example){
	"drop":        answerDrop,
	"ampacity":    answerAmpacity,
	"fuse":        answerFuse,
	"resistance":  answerResistance,
	"temperature": answerTemperature,
	"select":      answerSelect,
	"switch":      answerSwitch,
	"cord":        answerCord,
	"pack":        answerPack,
	"power":       answerPower,
	"rule":        answerRule,
}

var solverKinds = []string{"network", "precharge", "rc", "rl", "short"}

// worked_examples.csv: each row names its source. Rows of kind short that give a factor k
// are the adiabatic law and run here.
func TestWorkedExamples(t *testing.T) {
	ran, skipped := map[string]int{}, map[string]int{}
	for _, row := range check(t, "worked_examples.csv") {
		e := newExample(t, row)
		kind := row["kind"]
		answer, ok := answers[kind]
		switch {
		case ok:
			answer(e)
			ran[kind]++
		case kind == "short" && e.has("k"):
			answerAdiabatic(e)
			ran["adiabatic"]++
		case slices.Contains(solverKinds, kind):
			skipped[kind]++
		default:
			t.Errorf("%s is of the unknown kind %s", row["id"], kind)
		}
	}
	for kind := range answers {
		if ran[kind] == 0 {
			t.Errorf("no row of kind %s was run", kind)
		}
	}
	t.Logf("ran %s; left to the solver: %s", tally(ran), tally(skipped))
}

// tally writes counts by name, in order.
func tally(counts map[string]int) string {
	var parts []string
	total := 0
	for name, n := range counts {
		parts = append(parts, fmt.Sprintf("%s %d", name, n))
		total += n
	}
	slices.Sort(parts)
	return fmt.Sprintf("%d (%s)", total, strings.Join(parts, ", "))
}

func answerDrop(e example) {
	switch {
	case e.has("ohm_per_ft", "total_ft"):
		e.number(float64(Drop(e.amps(), quantity.Ohm(e.x("ohm_per_ft")*e.x("total_ft")))))
		e.aircraftDrop()
	case e.has("K", "cmil", "oneway_ft"):
		e.number(float64(Drop(e.amps(), CircularMilResistance(e.x("K"), 2*e.feet("oneway_ft"), e.x("cmil")))))
	case e.has("drop_V", "source_V"):
		e.number(100 * float64(DropShare(e.volts("drop_V"), e.volts("source_V"))))
	case e.has("ohm_per_kft", "oneway_ft"):
		perMetre := OhmPerMetre(e.x("ohm_per_kft") / float64(quantity.Feet(1000)))
		e.number(float64(Drop(e.amps(), perMetre.Of(2*e.feet("oneway_ft")))))
	case e.has("loop_ft", "ohm_per_loop_ft"):
		e.number(float64(Drop(e.amps(), quantity.Ohm(e.x("loop_ft")*e.x("ohm_per_loop_ft")))))
	default:
		e.unknown()
	}
}

// aircraftDrop repeats a row with the resistance of our own aircraft-wire table.
func (e example) aircraftDrop() {
	w, ok := Default().FAAWire(e.size())
	if !ok {
		e.unknown()
		return
	}
	e.number(float64(Drop(e.amps(), w.Most.Of(e.feet("total_ft")))))
}

func answerAmpacity(e example) {
	switch {
	case e.has("chart_A"):
		factors := []quantity.Ratio{e.ratio("f1")}
		if e.has("f2") {
			factors = append(factors, e.ratio("f2"))
		}
		e.number(float64(Derate(quantity.Ampere(e.x("chart_A")), factors...)))
	case e.has("table_A"):
		e.number(float64(Derate(quantity.Ampere(e.x("table_A")), e.ratio("factor"))))
	case e.has("awg", "rating_C", "factors"):
		c, err := Default().Ampacity(e.size(), quantity.Celsius(e.x("rating_C")))
		e.noError(err)
		e.number(float64(Derate(c.Amps, e.factors()...)))
	default:
		e.unknown()
	}
}

// factors looks each factor of a row up in the notes of the ampacity table.
func (e example) factors() []quantity.Ratio {
	insulation := quantity.Celsius(e.x("rating_C"))
	engine, _, _ := Default().EngineSpaceFactor(insulation)
	known := []quantity.Ratio{engine, Default().BundleFactor(3), Default().BundleFactor(6), Default().BundleFactor(24)}
	var out []quantity.Ratio
	for _, text := range strings.Split(e.given["factors"], "*") {
		f, err := strconv.ParseFloat(text, 64)
		e.noError(err)
		i := slices.Index(known, quantity.Ratio(f))
		if i < 0 {
			e.t.Errorf("%s: no note has the factor %v", e.record["id"], f)
			continue
		}
		out = append(out, known[i])
	}
	return out
}

func answerFuse(e example) {
	c, err := Default().Ampacity(e.size(), quantity.Celsius(e.x("rating_C")))
	e.noError(err)
	series, _ := Default().FuseSeries("NEC 240.6(A)")
	e.number(float64(Default().HighestFuse(c.Amps, e.volts("nominal_V"), series)))
}

func answerResistance(e example) {
	switch {
	case e.has("cmil", "ft", "rho_ohm_cmil_ft"):
		e.number(float64(CircularMilResistance(e.x("rho_ohm_cmil_ft"), e.feet("ft"), e.x("cmil"))))
	case e.has("source_V", "load_V", "legs"):
		e.number(float64(LegResistance(e.volts("source_V"), e.volts("load_V"), e.amps(), int(e.x("legs")))))
	case e.has("ohm_a", "ohm_b"):
		e.number(float64(Parallel(e.ohms("ohm_a"), e.ohms("ohm_b"))))
	case e.has("awg", "in"):
		r, err := Default().Resistance(e.size(), quantity.Inches(e.x("in")), 20)
		e.noError(err)
		e.number(float64(r) * 1000)
	default:
		e.unknown()
	}
}

func answerTemperature(e example) {
	switch {
	case e.has("L1_ft", "T2_C"):
		e.number(HotLength(e.feet("L1_ft"), quantity.Celsius(e.x("T2_C"))).Feet())
	case e.has("r20_ohm", "alpha", "T_C"):
		leg := Linear(e.ohms("r20_ohm"), e.x("alpha"), quantity.Celsius(e.x("T_C")))
		amps := quantity.Ampere(e.x("source_V") / float64(e.ohms("load_ohm")+2*leg))
		if e.record["quantity"] == "drop" {
			e.number(float64(Drop(amps, leg)))
			return
		}
		e.number(float64(e.volts("source_V") - 2*Drop(amps, leg)))
	default:
		e.unknown()
	}
}

func answerSelect(e example) {
	switch {
	case e.given["table"] == "faa_ac43_13_1b_wire":
		w, ok := Default().FAAWireForDrop(e.amps(), e.feet("total_ft"), e.volts("limit_V"))
		if !ok {
			e.unknown()
		}
		e.text(w.Size.GaugeName())
	case e.has("K", "roundtrip_ft"):
		cmil := CircularMilsForDrop(e.x("K"), e.amps(), e.feet("roundtrip_ft"), e.volts("limit_V"))
		size, _ := SizeForArea(FromCircularMils(cmil))
		e.text(size.GaugeName())
	case e.has("cmil_min"):
		size, _ := SizeForArea(FromCircularMils(e.x("cmil_min")))
		e.text(size.GaugeName())
	default:
		e.unknown()
	}
}

func answerSwitch(e example) {
	need, err := Default().SwitchRating(e.volts("nominal_V"), LoadKind(e.given["load"]), e.amps())
	e.noError(err)
	e.number(float64(need.Amps))
}

func answerCord(e example) {
	switch {
	case e.has("watts", "rated_V"):
		e.number(float64(InputCurrent(quantity.Watt(e.x("watts")), e.volts("rated_V"))))
	case e.has("i_A", "ft"):
		size, err := Default().ChargerCord(e.amps(), e.feet("ft"))
		e.noError(err)
		e.text(size.GaugeName())
	default:
		e.unknown()
	}
}

func answerPack(e example) {
	if e.has("cell_V") {
		pack, err := Default().Pack("lead-acid", int(e.x("cells")))
		e.noError(err)
		near(e.t, e.record["id"]+" cell", float64(pack.Chemistry.RestedFull), e.x("cell_V"), 0)
		e.number(float64(pack.RestedFull()))
		return
	}
	pack, err := Default().Pack("LFP", int(e.x("cells")))
	e.noError(err)
	e.number(float64(pack.Full()))
}

func answerPower(e example) {
	e.number(float64(ConverterInput(e.volts("out_V"), quantity.Ampere(e.x("out_A")), e.ratio("efficiency"), e.volts("in_V"))))
}

func answerRule(e example) {
	pass := false
	switch {
	case e.has("distance_in", "sheathed"):
		pass = quantity.Inches(e.x("distance_in")) <= Default().FuseDistance(e.given["sheathed"] == "yes")
	case e.has("lugs"):
		pass = int(e.x("lugs")) <= Default().LugsPerStud()
	default:
		e.unknown()
	}
	e.text(map[bool]string{true: "pass", false: "fail"}[pass])
}

func answerAdiabatic(e example) {
	if k := e.x("k"); k != PVCCopper {
		e.t.Errorf("%s: k = %v, want that of copper in PVC, %v", e.record["id"], k, PVCCopper)
	}
	got := AdiabaticTime(PVCCopper, quantity.SquareMillimetre(e.x("area_mm2")), e.amps())
	if math.IsInf(float64(got), 0) {
		e.unknown()
	}
	e.number(float64(got))
}
