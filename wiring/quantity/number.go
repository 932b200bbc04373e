package quantity

import (
	"math/big"
	"regexp"
	"strings"
)

// numeral is a number as written. Arithmetic on it is exact, so that 4 ft 6 in is the very
// float64 that 1.3716 is.
type numeral struct {
	text     string
	value    *big.Rat
	fraction bool // written with a fraction stroke
}

// The forms of a number. Twelve digits are more than any rule, gauge or meter shows.
var (
	mixedForm    = regexp.MustCompile(`^(\d{1,6})[ -](\d{1,4})/(\d{1,4})`)
	fractionForm = regexp.MustCompile(`^(\d{1,4})/(\d{1,4})`)
	decimalForm  = regexp.MustCompile(`^(?:\d{1,12}(?:\.\d{1,12})?|\.\d{1,12})`)
)

// cutNumeral takes a number off the front of a cleaned text. It returns false if there is
// none; what follows may still show that the number is malformed (see misread).
func cutNumeral(text string) (numeral, string, bool) {
	if m := mixedForm.FindStringSubmatch(text); m != nil {
		if n, ok := mixed(m); ok {
			return n, text[len(m[0]):], true
		}
	}
	if m := fractionForm.FindStringSubmatch(text); m != nil {
		if v, ok := new(big.Rat).SetString(m[0]); ok {
			return numeral{m[0], v, true}, text[len(m[0]):], true
		}
	}
	if m := decimalForm.FindString(text); m != "" {
		if v, ok := new(big.Rat).SetString(m); ok {
			return numeral{m, v, false}, text[len(m):], true
		}
	}
	return numeral{}, text, false
}

// mixed reads 1-1/8: a whole number and a proper fraction.
func mixed(m []string) (numeral, bool) {
	part, ok := new(big.Rat).SetString(m[2] + "/" + m[3])
	if !ok || part.Cmp(one) >= 0 {
		return numeral{}, false
	}
	whole, _ := new(big.Rat).SetString(m[1])
	return numeral{m[0], whole.Add(whole, part), true}, true
}

var one = big.NewRat(1, 1)

var (
	decimalComma   = regexp.MustCompile(`^(\d*),(\d+)(.*)$`)
	thousandsComma = regexp.MustCompile(`^(\d{1,3}),(\d{3})(.*)$`)
	exponentForm   = regexp.MustCompile(`^[eE][+-]?\d`)
	gapForm        = regexp.MustCompile(`^ ?[\d.]`)
)

// misread explains a number that goes on in a way that no number does; text is the whole,
// rest what follows the part that could be read. It returns nil if the number is well
// formed.
func misread(text string, n numeral, rest string) *Error {
	switch {
	case thousandsComma.MatchString(text):
		m := thousandsComma.FindStringSubmatch(text)
		return fault(text, "", "write "+m[1]+m[2]+m[3]+" or "+m[1]+"."+m[2]+m[3])
	case decimalComma.MatchString(text):
		m := decimalComma.FindStringSubmatch(text)
		if m[1] == "" {
			m[1] = "0"
		}
		return fault(text, "", "write "+m[1]+"."+m[2]+m[3])
	case exponentForm.MatchString(rest):
		return fault(text, "has an exponent", "write the number out in full")
	case strings.HasPrefix(rest, "."):
		return fault(text, "has a stray point in its number", "")
	case strings.HasPrefix(rest, "/"), strings.HasPrefix(rest, "-"):
		return fault(text, "is no number", "")
	case gapForm.MatchString(rest):
		return fault(text, "has a gap or too many digits in its number", "")
	}
	return nil
}
