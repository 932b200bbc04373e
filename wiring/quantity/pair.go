package quantity

import "strings"

// examples stand in errors of pairs that lack their second half.
var examples = map[Joint]string{
	At:  "such as 10 A at 60 V",
	For: "such as 220 A for 30 s",
	To:  "such as 10 to 15 V",
}

// ParsePair reads two quantities and the word between them: "10 A at 60 V", "220 A for
// 30 s", "30 V to 72 V". Before "to" the first unit may be left out ("10 to 15 V"), and
// the first quantity must not be above the second. The error is always an [*Error].
func ParsePair(text string, first, second Dimension, joint Joint) (Pair, error) {
	cleaned, err := clean(text)
	if err != nil {
		return Pair{}, err
	}
	p, err := parsePair(cleaned, first, second, joint)
	if err != nil {
		return Pair{}, err
	}
	return p, nil
}

// JointOf returns the joint that a text holds, or "" if it is no pair by its looks.
func JointOf(text string) Joint {
	cleaned, err := clean(text)
	if err != nil {
		return ""
	}
	for _, joint := range []Joint{At, For, To} {
		if _, _, ok := cutJoint(cleaned, joint); ok {
			return joint
		}
	}
	return ""
}

func parsePair(text string, first, second Dimension, joint Joint) (Pair, *Error) {
	left, right, ok := cutJoint(text, joint)
	if !ok {
		return Pair{}, noJoint(text, first, second, joint)
	}
	b, err := parse(right, second)
	if err != nil {
		return Pair{}, err
	}
	if joint == To && isBare(left) {
		left += " " + b.Unit
	}
	a, err := parse(left, first)
	if err != nil {
		return Pair{}, err
	}
	if joint == To && first == second && a.Value > b.Value {
		return Pair{}, fault(text, "runs downwards", "write "+b.String()+" to "+a.String())
	}
	return Pair{First: a, Second: b, Joint: joint}, nil
}

// cutJoint splits a text at the word of a joint, case forgiven.
func cutJoint(text string, joint Joint) (left, right string, ok bool) {
	word := " " + string(joint) + " "
	i := strings.Index(strings.ToLower(text), word)
	if i < 0 || len(strings.ToLower(text)) != len(text) {
		return "", "", false
	}
	return text[:i], text[i+len(word):], true
}

// isBare reports whether a text is a number without a unit, perhaps with "about".
func isBare(text string) bool {
	body, _ := cutAbout(text)
	_, rest, ok := cutNumeral(strings.TrimLeft(body, "+- "))
	return ok && rest == ""
}

// noJoint explains a text that lacks the word between two quantities.
func noJoint(text string, first, second Dimension, joint Joint) *Error {
	if text == "" {
		return fault(text, "has no value", examples[joint])
	}
	if a, b, ok := dashed(text, first, second); ok && joint == To {
		return fault(text, "", "write "+a+" to "+b)
	}
	if a, err := parse(text, first); err == nil {
		return fault(text, "has no "+second.String()+" with it",
			a.String()+" "+string(joint)+" a number and "+either(second.facts().offer))
	}
	return fault(text, "is no "+first.String()+" "+string(joint)+" "+second.String(), examples[joint])
}

// dashed reads a range written with a dash or dots: "10-15 V", "30 V - 72 V", "10..15 V".
func dashed(text string, first, second Dimension) (a, b string, ok bool) {
	for _, dash := range []string{"...", "..", "-"} {
		left, right, cut := strings.Cut(text, dash)
		left, right = strings.TrimSpace(left), strings.TrimSpace(right)
		if !cut || left == "" {
			continue
		}
		high, err := parse(right, second)
		if err != nil {
			continue
		}
		if isBare(left) {
			return left, right, true
		}
		if _, err := parse(left, first); err == nil {
			return left, high.String(), true
		}
	}
	return "", "", false
}

// Known reports whether anything was stated.
func (p Pair) Known() bool { return p.First.Known() }

// String prints the pair as written: "10 to 15 V", "10 A at 60 V". It returns "" for the
// zero Pair.
func (p Pair) String() string {
	if !p.Known() {
		return ""
	}
	return p.First.String() + " " + string(p.Joint) + " " + p.Second.String()
}
