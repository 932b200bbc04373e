package handbook

import (
	"math"
	"strconv"
	"strings"

	"github.com/lugwright/lugwright/wiring/quantity"
)

// deratingTable holds the notes of the ampacity table.
//
// Source: 33 CFR 183.425 Table 5 note 1 (engine spaces, 50 C) and note 2 (bundles); the
// bundle factors and the 105 C engine-space factor read, the others from memory.
type deratingTable struct {
	engine []engineFactor // by insulation, rising
	bundle []bundleFactor // by count, rising
}

type engineFactor struct {
	insulation quantity.Celsius
	factor     quantity.Ratio
	status     Status
}

type bundleFactor struct {
	from, to int // conductors; to 0: without end
	factor   quantity.Ratio
}

var deratingDefinition = table{
	name:    "derating",
	about:   "factors on ampacity for hot spaces and bundles",
	columns: []string{"kind", "key", "factor"},
	load: func(t *Tables, s *sheet) {
		t.derating = deratingTable{}
		for _, r := range s.rows {
			t.derating.add(r)
		}
		t.derating.check(s)
	},
}

func (d *deratingTable) add(r row) {
	factor := quantity.Ratio(r.positive("factor"))
	if factor > 1 {
		r.fail("factor", "must be at most 1")
	}
	switch kind := r.word("kind"); kind {
	case "engine_space":
		d.engine = append(d.engine, engineFactor{quantity.Celsius(r.positive("key")), factor, r.status()})
	case "bundle":
		from, to, ok := countRange(r.word("key"))
		if !ok {
			r.fail("key", "%q is no number of conductors such as 3, 4-6 or 25+", r.text("key"))
		}
		d.bundle = append(d.bundle, bundleFactor{from, to, factor})
	default:
		r.fail("kind", "%q is neither engine_space nor bundle", kind)
	}
}

// countRange reads 3, 4-6 or 25+.
func countRange(text string) (from, to int, ok bool) {
	if open, isOpen := strings.CutSuffix(text, "+"); isOpen {
		n, err := strconv.Atoi(open)
		return n, 0, err == nil
	}
	low, high, isRange := strings.Cut(text, "-")
	if !isRange {
		high = low
	}
	from, errFrom := strconv.Atoi(low)
	to, errTo := strconv.Atoi(high)
	return from, to, errFrom == nil && errTo == nil && from <= to
}

// check notes counts of conductors that no row, or more than one, covers.
func (d *deratingTable) check(s *sheet) {
	const most = 1000
	for n := 1; n <= most; n++ {
		rows := 0
		for _, b := range d.bundle {
			if b.covers(n) {
				rows++
			}
		}
		if rows != 1 {
			s.fail("%d rows give the factor of a bundle of %d conductors, not one", rows, n)
			return
		}
	}
}

func (b bundleFactor) covers(n int) bool { return b.from <= n && (b.to == 0 || n <= b.to) }

// tableAmbient is the ambient of the ampacity table.
const tableAmbient = 30.0

// AmbientFactor returns the share of its table current that a conductor may carry at
// another ambient than 30 C: sqrt((Tc-Ta)/(Tc-30)), where Tc is the rating of its
// insulation. It is 0 where the ambient is at the rating or above. Cold gives no credit:
// the factor is never above 1 (our own choice).
//
// The square root follows from heat that grows with the square of current. The published
// engine-space factors agree to 0.01 but for 200 C insulation ([Tables.EngineSpaceFactor]).
func AmbientFactor(insulation, ambient quantity.Celsius) quantity.Ratio {
	left := float64(insulation - ambient)
	room := float64(insulation) - tableAmbient
	if left <= 0 || room <= 0 {
		return 0
	}
	factor := math.Sqrt(left / room)
	return quantity.Ratio(math.Min(1, factor))
}

// EngineSpaceFactor returns the published factor for engine spaces (50 C ambient) by
// insulation, its status, and whether the table has that insulation.
//
// Source: 33 CFR 183.425 Table 5 note 1; 105 C read, others from memory.
func (t *Tables) EngineSpaceFactor(insulation quantity.Celsius) (quantity.Ratio, Status, bool) {
	for _, e := range t.derating.engine {
		if e.insulation == insulation {
			return e.factor, e.status, true
		}
	}
	return 0, "", false
}

// BundleFactor returns the share of its table current that each of n current-carrying
// conductors in one bundle may carry; 1 for fewer than three.
//
// Source: 33 CFR 183.425 Table 5 note 2; read. In that rule it binds circuits of 50 V and
// more; boat practice applies it to all.
func (t *Tables) BundleFactor(n int) quantity.Ratio {
	factor := quantity.Ratio(1)
	for _, b := range t.derating.bundle {
		if b.covers(n) {
			factor = b.factor
		}
	}
	return factor
}

// Derate returns a current times factors.
func Derate(amps quantity.Ampere, factors ...quantity.Ratio) quantity.Ampere {
	for _, f := range factors {
		amps *= quantity.Ampere(f)
	}
	return amps
}
