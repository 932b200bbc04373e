package quantity

import (
	"math/big"
	"strings"
	"unicode"
)

// Parse reads a quantity of the wanted dimension, as people write it:
//
//	14 in   2.5 mm   1-1/8 in   4 ft 6 in   4'6"   30A   0.3 mohm   -10 C   about 2 ft
//
// Numbers have a decimal point, never a comma; fractions stand before inches and feet
// only, a sign before temperatures only. The case of a unit is forgiven where one reading
// is left ("30 a", "14 IN"), but m and M are not guessed for ohms and farads. The Amount's
// Text keeps number and unit as written, but for blanks and a unit whose case was forgiven.
// The error is always an [*Error]: a bare number, another dimension's unit and so on say
// what to write.
func Parse(text string, want Dimension) (Amount, error) {
	cleaned, err := clean(text)
	if err != nil {
		return Amount{}, err
	}
	a, err := parse(cleaned, want)
	if err != nil {
		return Amount{}, err
	}
	return a, nil
}

// ParseAny reads a quantity whose dimension follows from its unit. F could be farads or
// degrees Fahrenheit: the order of the dimensions given decides; without any, all known
// dimensions are tried in the order of their declaration. The error speaks of the first.
func ParseAny(text string, wants ...Dimension) (Amount, error) {
	if len(wants) == 0 {
		wants = AllDimensions()
	}
	var first error
	for _, want := range wants {
		a, err := Parse(text, want)
		if err == nil {
			return a, nil
		}
		if first == nil {
			first = err
		}
	}
	return Amount{}, first
}

// parse reads a cleaned text.
func parse(text string, want Dimension) (Amount, *Error) {
	body, about := cutAbout(text)
	d := want.facts()
	if len(d.units) == 0 {
		return Amount{}, fault(text, "stands where no quantity is expected", "")
	}
	if body == "" {
		return Amount{}, fault(text, "has no value", "a number and "+either(d.offer))
	}
	if err := notAbout(text, body); err != nil {
		return Amount{}, err
	}
	a, err := parseBody(body, want)
	if err != nil {
		return Amount{}, err
	}
	a.About = about
	return a, nil
}

// cutAbout takes the word about off the front.
func cutAbout(text string) (string, bool) {
	const word = "about "
	if len(text) > len(word) && strings.EqualFold(text[:len(word)], word) {
		return text[len(word):], true
	}
	return text, false
}

// notAbout offers "about" for the other ways of saying so.
func notAbout(text, body string) *Error {
	lower := strings.ToLower(body)
	for _, other := range []string{"~", "≈", "approx. ", "approximately ", "approx ", "circa ", "ca. ", "ca ", "c. "} {
		if strings.HasPrefix(lower, other) {
			return fault(text, "", "write about "+strings.TrimSpace(body[len(other):]))
		}
	}
	return nil
}

// parseBody reads a quantity without "about".
func parseBody(text string, want Dimension) (Amount, *Error) {
	d := want.facts()
	unsigned, negative, err := cutSign(text, d)
	if err != nil {
		return Amount{}, err
	}
	n, rest, ok := cutNumeral(unsigned)
	if !ok {
		return Amount{}, noNumber(text, unsigned, d)
	}
	if want == Length {
		if a, second, err := twoParts(text, n, rest); second {
			return a, err
		}
	}
	if err := misread(unsigned, n, rest); err != nil {
		return Amount{}, err
	}
	if negative {
		n = numeral{"-" + n.text, n.value.Neg(n.value), n.fraction}
	}
	u, spelling, err := findUnit(text, n, strings.TrimSpace(rest), want)
	if err != nil {
		return Amount{}, err
	}
	if n.fraction && u.name != "in" && u.name != "ft" {
		return Amount{}, fault(text, "has a fraction, which stands before in and ft only",
			"write "+decimal(n.value)+" "+spelling)
	}
	value, err := u.value(text, n, d)
	if err != nil {
		return Amount{}, err
	}
	return Amount{Value: value, Dimension: want, Unit: u.name, Text: spaced(n.text, spelling)}, nil
}

// cutSign takes a sign off the front, where the dimension has one.
func cutSign(text string, d *dimension) (string, bool, *Error) {
	if text[0] != '-' && text[0] != '+' {
		return text, false, nil
	}
	body := strings.TrimSpace(text[1:])
	if !d.signed {
		return "", false, fault(text, "has a sign, which only temperatures have", offerWithoutSign(body))
	}
	return body, text[0] == '-', nil
}

func offerWithoutSign(body string) string {
	if _, _, ok := cutNumeral(body); !ok {
		return ""
	}
	return "write " + clip(body)
}

// noNumber explains a text that does not begin with a number.
func noNumber(text, unsigned string, d *dimension) *Error {
	if err := misread(unsigned, numeral{}, unsigned); err != nil && strings.HasPrefix(unsigned, ",") {
		return err
	}
	if u, number, ok := strings.Cut(unsigned, " "); ok && d.has(u) {
		if _, rest, isNumber := cutNumeral(number); isNumber && rest == "" {
			return fault(text, "", "write "+number+" "+u)
		}
	}
	return fault(text, "is no "+d.name, "a number and "+either(d.offer))
}

// findUnit finds what a number counts, and how to spell it: as written where that is a
// known spelling, else the canonical way.
func findUnit(text string, n numeral, written string, want Dimension) (*unit, string, *Error) {
	d := want.facts()
	if written == "" {
		return nil, "", noUnit(text, n, want)
	}
	if u := d.exactly(written); u != nil {
		return u, written, nil
	}
	if units, ok := d.traps[strings.ToLower(written)]; ok {
		return nil, "", fault(text, "", withUnits(n.text, units))
	}
	switch found := d.loosely(written); len(found) {
	case 1:
		return found[0], found[0].name, nil
	case 0:
		return nil, "", wrongUnit(text, written, want)
	default:
		return nil, "", fault(text, "", withUnits(n.text, names(found)))
	}
}

func names(units []*unit) []string {
	out := make([]string, len(units))
	for i, u := range units {
		out[i] = u.name
	}
	return out
}

// noUnit offers the plausible readings of a bare number.
func noUnit(text string, n numeral, want Dimension) *Error {
	if want == Share && n.value.Cmp(one) < 0 && n.value.Sign() > 0 {
		percent := new(big.Rat).Mul(n.value, big.NewRat(100, 1))
		return fault(text, "has no unit", decimal(percent)+" % or "+n.text+" %?")
	}
	return fault(text, "has no unit", withUnits(n.text, want.facts().bare))
}

// wrongUnit explains a unit that the dimension does not have.
func wrongUnit(text, written string, want Dimension) *Error {
	d := want.facts()
	is := "is no " + d.name
	for other := range dimensions {
		if Dimension(other) != want && dimensions[other].has(written) {
			return fault(text, is, either(d.offer))
		}
	}
	for _, joint := range []Joint{At, For, To} {
		if _, _, ok := cutJoint(text, joint); ok {
			return fault(text, "is two quantities, and one belongs here", "")
		}
	}
	if _, err := ParseSize(text); err == nil {
		return fault(text, "is a conductor size and no "+d.name, either(d.offer))
	}
	if strings.ContainsFunc(written, unicode.IsDigit) {
		return fault(text, is, "a number and "+either(d.offer))
	}
	return fault(text, "has an unknown unit", either(d.offer))
}

// value converts a number to the dimension's own unit and keeps it in bounds.
func (u *unit) value(text string, n numeral, d *dimension) (float64, *Error) {
	v := new(big.Rat).Set(n.value)
	if u.zero != "" {
		v.Sub(v, ratio(u.zero))
	}
	f, _ := v.Mul(v, ratio(u.factor)).Float64()
	if f > d.most {
		return 0, fault(text, "is beyond anything on a vehicle", "")
	}
	if f < d.least {
		return 0, fault(text, "is below absolute zero", "")
	}
	return f, nil
}

// ratio reads one of the factors of the unit table.
func ratio(s string) *big.Rat {
	r, ok := new(big.Rat).SetString(s)
	if !ok {
		panic("quantity: the unit table holds " + s)
	}
	return r
}

// decimal writes a ratio with at most four decimals and no trailing zeros.
func decimal(r *big.Rat) string {
	s := r.FloatString(4)
	return strings.TrimSuffix(strings.TrimRight(s, "0"), ".")
}

// spaced joins number and unit: a space before letters, none before ' and ".
func spaced(number, spelling string) string {
	if spelling == "'" || spelling == `"` {
		return number + spelling
	}
	return number + " " + spelling
}
