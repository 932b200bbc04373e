package quantity

import (
	"math/big"
	"strings"
	"unicode"
)

// twoParts reads the one quantity that has two parts: 4 ft 6 in, 4'6". n is the number at
// the front, rest what follows it. The second result is false if there is no second part;
// then the text is to be read as a length with one unit.
func twoParts(text string, n numeral, rest string) (Amount, bool, *Error) {
	foot, tail := cutUnit(strings.TrimSpace(rest))
	if tail == "" {
		return Amount{}, false, nil
	}
	d := Length.facts()
	if !isUnit(d, foot, "ft") {
		if u := d.exactly(foot); u != nil && u.factor != inchMetre {
			if _, err := parseBody(tail, Length); err == nil {
				return Amount{}, true, fault(text, "", "only feet and inches are written in two parts")
			}
		}
		return Amount{}, false, nil
	}
	inches, after, ok := cutNumeral(tail)
	if !ok {
		return Amount{}, true, fault(text, "is no length", "such as 4 ft 6 in")
	}
	inch := strings.TrimSpace(after)
	if inch == "" {
		return Amount{}, true, fault(text, "", "write "+twoPartText(n.text, foot, inches.text, pairOf(foot)))
	}
	if !isUnit(d, inch, "in") {
		return Amount{}, true, fault(text, "is no length", "such as 4 ft 6 in")
	}
	a, err := feetAndInches(text, n, inches)
	if err != nil {
		return Amount{}, true, err
	}
	a.Text = twoPartText(n.text, foot, inches.text, inch)
	return a, true, nil
}

// feetAndInches adds whole feet and less than twelve inches.
func feetAndInches(text string, feet, inches numeral) (Amount, *Error) {
	if !feet.value.IsInt() || feet.fraction {
		return Amount{}, fault(text, "", "before inches, feet are a whole number")
	}
	total := new(big.Rat).Mul(feet.value, big.NewRat(12, 1))
	total.Add(total, inches.value)
	if inches.value.Cmp(big.NewRat(12, 1)) >= 0 {
		return Amount{}, fault(text, "has a foot or more of inches", "write "+decimal(total)+" in")
	}
	u := Length.facts().exactly("in")
	value, err := u.value(text, numeral{value: total}, Length.facts())
	if err != nil {
		return Amount{}, err
	}
	return Amount{Value: value, Dimension: Length, Unit: "ft"}, nil
}

// cutUnit splits at the first digit or point: "ft 6 in" gives "ft" and "6 in".
func cutUnit(text string) (unit, tail string) {
	i := strings.IndexFunc(text, func(r rune) bool { return unicode.IsDigit(r) || r == '.' })
	if i < 0 {
		return text, ""
	}
	return strings.TrimSpace(text[:i]), text[i:]
}

// isUnit reports whether a spelling means the unit of that name, case forgiven.
func isUnit(d *dimension, spelling, name string) bool {
	found := d.loosely(spelling)
	return len(found) == 1 && found[0].name == name
}

// pairOf is the inch that goes with a spelling of the foot.
func pairOf(foot string) string {
	if foot == "'" {
		return `"`
	}
	return "in"
}

// twoPartText keeps 4'6" as it is and writes all else as 4 ft 6 in.
func twoPartText(feet, foot, inches, inch string) string {
	if foot == "'" && inch == `"` {
		return feet + foot + inches + inch
	}
	return feet + " ft " + inches + " in"
}
