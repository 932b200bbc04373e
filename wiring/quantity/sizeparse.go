package quantity

import (
	"math/big"
	"strconv"
	"strings"
)

// Bounds of conductor sizes. AWG of ASTM B258 runs from 4/0 to 40 for what anyone pulls
// through a vehicle; the areas are our own, far beyond both ends of a cart.
const (
	largestGauge  = -3 // 4/0
	smallestGauge = 40
	mostMM2       = 1000
	mostKCMIL     = 2000
)

// exampleSizes stand in errors that know nothing better.
const exampleSizes = "such as 12 AWG or 35 mm2"

// sizeUnits are the spellings that are taken as they stand, case forgiven.
var sizeUnits = map[string]SizeSystem{
	"awg": AWG, "sae": SAE,
	"mm2": MM2, "mm²": MM2, "mm^2": MM2, "sq mm": MM2, "sqmm": MM2, "qmm": MM2,
	"kcmil": KCMIL, "mcm": KCMIL, // MCM is the older name of kcmil
}

// Unit returns how the system is written behind a number: "AWG", "mm2".
func (s SizeSystem) Unit() string {
	switch s {
	case AWG:
		return "AWG"
	case SAE:
		return "SAE"
	case MM2:
		return "mm2"
	case KCMIL:
		return "kcmil"
	}
	return ""
}

// Gauge makes an AWG size: 2 is 2 AWG, 0 is 1/0 AWG, -3 is 4/0 AWG.
func Gauge(n int) Size { return Size{AWG, float64(n)} }

// ParseSize reads a conductor size: "2 AWG", "2/0 AWG" (also "00 AWG"), "10 SAE", "35 mm2",
// "250 kcmil". Gauge without its system is an error that says why. The error is always an
// [*Error].
func ParseSize(text string) (Size, error) {
	cleaned, err := clean(text)
	if err != nil {
		return Size{}, err
	}
	s, err := parseSize(cleaned)
	if err != nil {
		return Size{}, err
	}
	return s, nil
}

func parseSize(text string) (Size, *Error) {
	if text == "" {
		return Size{}, fault(text, "has no value", exampleSizes)
	}
	if rest, ok := strings.CutPrefix(text, "#"); ok {
		return Size{}, hashed(text, strings.TrimSpace(rest))
	}
	number, written := cutGauge(text)
	if number == "" {
		return Size{}, backwards(text)
	}
	system, ok := sizeUnits[strings.ToLower(written)]
	if !ok {
		return Size{}, noSystem(text, number, written)
	}
	if system == AWG || system == SAE {
		return gauge(text, number, system)
	}
	return area(text, number, system)
}

// cutGauge splits "2/0 AWG" and "35mm2" into number and unit.
func cutGauge(text string) (number, unit string) {
	i := strings.IndexFunc(text, func(r rune) bool {
		return !strings.ContainsRune("0123456789./,-", r)
	})
	if i < 0 {
		return text, ""
	}
	return strings.TrimSpace(text[:i]), strings.TrimSpace(text[i:])
}

// gauge reads a gauge number: 2, 2/0, 00.
func gauge(text, number string, system SizeSystem) (Size, *Error) {
	n, ok := gaugeNumber(number)
	if !ok {
		return Size{}, fault(text, "is no gauge", "a whole number, or 1/0 to 4/0")
	}
	if n < largestGauge {
		return Size{}, fault(text, "is larger than any gauge", "above 4/0 sizes are in kcmil or mm2")
	}
	if n > smallestGauge {
		return Size{}, fault(text, "is finer than any wire here", "the finest is "+strconv.Itoa(smallestGauge)+" AWG")
	}
	return Size{system, float64(n)}, nil
}

// gaugeNumber reads a gauge: n, n/0 or a row of zeros.
func gaugeNumber(number string) (int, bool) {
	if zeros := strings.Count(number, "0"); zeros == len(number) && zeros > 0 && zeros < 9 {
		return 1 - zeros, true
	}
	if left, ok := strings.CutSuffix(number, "/0"); ok && len(left) == 1 && isDigits(left) && left != "0" {
		return 1 - int(left[0]-'0'), true
	}
	if !isDigits(number) || len(number) > 4 || number[0] == '0' {
		return 0, false
	}
	n, err := strconv.Atoi(number)
	return n, err == nil
}

// area reads an area in mm2 or kcmil.
func area(text, number string, system SizeSystem) (Size, *Error) {
	n, rest, ok := cutNumeral(number)
	if !ok || rest != "" || n.fraction {
		if err := misread(text, n, rest); err != nil {
			return Size{}, err
		}
		return Size{}, fault(text, "is no conductor size", exampleSizes)
	}
	most := int64(mostMM2)
	if system == KCMIL {
		most = mostKCMIL
	}
	if n.value.Sign() <= 0 || n.value.Cmp(big.NewRat(most, 1)) > 0 {
		return Size{}, fault(text, "is no size of a conductor", "")
	}
	f, _ := n.value.Float64()
	return Size{system, f}, nil
}

// noSystem explains a size whose unit is missing or is not one.
func noSystem(text, number, written string) *Error {
	switch strings.ToLower(strings.TrimSuffix(written, ".")) {
	case "":
		return bareSize(text, number)
	case "ga", "gauge", "g", "gage", "b&s":
		return fault(text, "does not say which gauge", number+" AWG, or "+number+" SAE, which is 3 to 11 % less copper?")
	case "mm":
		return fault(text, "is a length", "write "+number+" mm2")
	case "cmil", "cm", "circular mils":
		return fault(text, "is no conductor size", "circular mils are written in thousands: kcmil")
	}
	return fault(text, "is no conductor size", exampleSizes)
}

// bareSize offers the plausible readings of a number without a system.
func bareSize(text, number string) *Error {
	var units []string
	if n, ok := gaugeNumber(number); ok && n >= largestGauge && n <= smallestOffered {
		units = append(units, AWG.Unit())
	}
	if n, rest, ok := cutNumeral(number); ok && rest == "" && !n.fraction && n.value.Sign() > 0 {
		v, _ := n.value.Float64()
		if v <= mm2Offered {
			units = append(units, MM2.Unit())
		}
		if v >= kcmilOffered && v <= mostKCMIL {
			units = append(units, KCMIL.Unit())
		}
	}
	if len(units) == 0 {
		return fault(text, "is no conductor size", exampleSizes)
	}
	return fault(text, "", withUnits(number, units))
}

// What a bare number is offered as: sizes that are found on a cart.
const (
	smallestOffered = 30
	mm2Offered      = 240
	kcmilOffered    = 250
)

// hashed explains "#2", which in a job file would begin a comment.
func hashed(text, rest string) *Error {
	number, written := cutGauge(rest)
	if _, ok := gaugeNumber(number); !ok {
		return fault(text, "is no conductor size", exampleSizes)
	}
	if _, ok := sizeUnits[strings.ToLower(written)]; ok {
		return fault(text, "", "write "+clip(rest))
	}
	return fault(text, "", "write "+number+" AWG")
}

// backwards offers "2 AWG" for "AWG 2".
func backwards(text string) *Error {
	i := strings.IndexAny(text, "0123456789")
	if i > 0 {
		unit := strings.ToLower(strings.TrimRight(text[:i], " #-"))
		if system, ok := sizeUnits[unit]; ok {
			return fault(text, "", "write "+clip(text[i:])+" "+system.Unit())
		}
	}
	return fault(text, "is no conductor size", exampleSizes)
}

// GaugeName returns the number as it is marked: "2", "2/0". For areas it is the number.
func (s Size) GaugeName() string {
	if (s.System == AWG || s.System == SAE) && s.Number <= 0 {
		return strconv.Itoa(1-int(s.Number)) + "/0"
	}
	return strconv.FormatFloat(s.Number, 'f', -1, 64)
}

// String prints the size as it is marked on the wire: "2 AWG", "2/0 AWG", "35 mm2". It
// returns "" for the zero Size.
func (s Size) String() string {
	if !s.Known() {
		return ""
	}
	return s.GaugeName() + " " + s.System.Unit()
}
