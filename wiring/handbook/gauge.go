package handbook

import (
	"fmt"
	"math"
	"sort"
	"strings"

	"github.com/lugwright/lugwright/wiring/quantity"
)

// MM2PerCircularMil is the area of a circle of one thousandth of an inch: pi/4 x 0.0254^2.
const MM2PerCircularMil = math.Pi / 4 * 0.0254 * 0.0254

// GaugeDiameter returns the diameter of a solid conductor of AWG n, where 0 is 1/0 and -3
// is 4/0: 0.127 mm x 92^((36-n)/39). Source: ASTM B258. Computed.
func GaugeDiameter(n int) quantity.Metre {
	return quantity.Millimetres(0.127 * math.Pow(92, float64(36-n)/39))
}

// GaugeArea returns the area of copper of AWG n, whether solid or stranded. Source: ASTM
// B258. Computed.
func GaugeArea(n int) quantity.SquareMillimetre {
	d := GaugeDiameter(n).Millimetres()
	return quantity.SquareMillimetre(math.Pi / 4 * d * d)
}

// CircularMils returns an area in circular mils.
func CircularMils(a quantity.SquareMillimetre) float64 { return float64(a) / MM2PerCircularMil }

// FromCircularMils returns an area in mm2.
func FromCircularMils(cmil float64) quantity.SquareMillimetre {
	return quantity.SquareMillimetre(cmil * MM2PerCircularMil)
}

// saeTable is the copper of SAE-gauge cable, thickest first.
//
// Source: minimum copper of SAE J1127 and J1128 cable from a public catalogue page; read.
type saeTable []saeRow

type saeRow struct {
	gauge int
	cmil  float64
}

var saeDefinition = table{
	name:    "sae",
	about:   "copper of SAE-gauge cable",
	columns: []string{"gauge", "cmil"},
	load: func(t *Tables, s *sheet) {
		var out saeTable
		for _, r := range s.rows {
			size := r.gauge("gauge")
			out = append(out, saeRow{int(size.Number), r.positive("cmil")})
		}
		for i := 1; i < len(out) && len(s.faults) == 0; i++ {
			if out[i].cmil >= out[i-1].cmil || out[i].gauge <= out[i-1].gauge {
				s.rows[i].fail("cmil", "rows go from thick to thin, and copper must fall with them")
			}
		}
		t.sae = out
	},
}

// gauge reads a cell such as 2/0 or 14 as an AWG size.
func (r row) gauge(column string) quantity.Size {
	size, err := quantity.ParseSize(r.cells[column] + " AWG")
	if err != nil {
		r.fail(column, "%q is no gauge", r.cells[column])
	}
	return size
}

// Area returns the area of copper of a conductor size: AWG by the gauge law, SAE by the
// sae table, mm2 and kcmil as they say. An SAE gauge that the table lacks is an error.
func (t *Tables) Area(size quantity.Size) (quantity.SquareMillimetre, error) {
	switch size.System {
	case quantity.AWG:
		return GaugeArea(int(size.Number)), nil
	case quantity.MM2:
		return quantity.SquareMillimetre(size.Number), nil
	case quantity.KCMIL:
		return FromCircularMils(size.Number * 1000), nil
	case quantity.SAE:
		return t.sae.area(size)
	}
	return 0, fmt.Errorf("no conductor size is stated")
}

func (table saeTable) area(size quantity.Size) (quantity.SquareMillimetre, error) {
	var have []string
	for _, r := range table {
		if r.gauge == int(size.Number) {
			return FromCircularMils(r.cmil), nil
		}
		have = append(have, quantity.Size{System: quantity.SAE, Number: float64(r.gauge)}.GaugeName())
	}
	return 0, fmt.Errorf("the handbook has no copper area for %v: it has SAE %s", size, strings.Join(have, " "))
}

// standardGauges are the gauges that shops stock, thin to thick: the even ones and all
// from 1 up. Common practice, no published source.
var standardGauges = []int{18, 16, 14, 12, 10, 8, 6, 4, 2, 1, 0, -1, -2, -3}

// StandardSizes lists the conductor sizes to choose from, thin to thick: 18 AWG, the
// thinnest with an ampacity, to 4/0 AWG.
func StandardSizes() []quantity.Size {
	sizes := make([]quantity.Size, len(standardGauges))
	for i, n := range standardGauges {
		sizes[i] = quantity.Gauge(n)
	}
	return sizes
}

// SizeForArea returns the thinnest standard size with at least that much copper; false if
// even the thickest has less.
func SizeForArea(area quantity.SquareMillimetre) (quantity.Size, bool) {
	sizes := StandardSizes()
	i := sort.Search(len(sizes), func(i int) bool { return GaugeArea(int(sizes[i].Number)) >= area })
	if i == len(sizes) {
		return quantity.Size{}, false
	}
	return sizes[i], true
}
