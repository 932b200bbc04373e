package ink

import (
	"math"
	"strconv"
)

// Decimals of a millimetre that formats write: thousandths, far below what a printer
// resolves, so that rounding never opens a gap between a wire and its pin.
const Decimals = 3

// Decimal writes a length in millimetres for a format that is text, rounded to Decimals,
// without zeros at its end and never as minus zero.
func Decimal(v float64) string {
	scale := math.Pow10(Decimals)
	v = math.Round(v*scale) / scale
	if v == 0 {
		v = 0 // no negative zero
	}
	return strconv.FormatFloat(v, 'f', -1, 64)
}
