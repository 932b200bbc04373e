package kind

import (
	"fmt"
	"slices"
	"strings"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// shape is the form in which a value is written.
type shape uint8

// The shapes.
const (
	aQuantity  shape = iota // one quantity of the dimension
	atPair                  // current or power at a voltage
	forPair                 // current for a time
	aBand                   // voltage to voltage
	quantityAt              // a power, or a power at a voltage
	aCount                  // a whole number
	aWord                   // one of some words, or any text
	aTruth                  // true or false
	aControl                // the name of a control of the kind
	aReference              // the name of another element of the kind
	oneNode                 // a terminal, pole, hidden node or frame
	twoNodes                // a pair of those
	someNodes               // a list of those, ranges standing for all their members
	aCondition              // see condition.go
	someWays                // positions of a control and the nodes that they join
)

// use is what a value must be. A rating takes it from the places where the kind uses it.
type use struct {
	shape      shape
	dim        quantity.Dimension
	known      bool
	words      []string
	zero, auto bool
	from, upTo float64
}

const autoWord = "auto"

// read reads a text as what it is used for.
func (u use) read(text string) (r wiring.Rating, err error) {
	r.Word = text
	if u.auto && strings.EqualFold(text, autoWord) {
		r.Word = autoWord
		return r, nil
	}
	switch u.shape {
	case aQuantity:
		r.Amount, err = quantity.Parse(text, u.dim)
	case quantityAt:
		if quantity.JointOf(text) == quantity.At {
			r.Pair, err = readPair(text, u.dim, quantity.Voltage, quantity.At)
		} else {
			r.Amount, err = quantity.Parse(text, u.dim)
		}
	case atPair:
		r.Pair, err = readPair(text, u.dim, quantity.Voltage, quantity.At)
	case forPair:
		r.Pair, err = readPair(text, u.dim, quantity.Time, quantity.For)
	case aBand:
		r.Pair, err = readPair(text, quantity.Voltage, quantity.Voltage, quantity.To)
	case aCount:
		r.Count, err = quantity.ParseCount(text)
	case aTruth:
		_, err = truthOf(text)
	case aWord:
		err = u.knowsWord(text)
	}
	if err == nil {
		err = u.bounds(r)
	}
	return r, err
}

func readPair(text string, first, second quantity.Dimension, j quantity.Joint) (*quantity.Pair, error) {
	p, err := quantity.ParsePair(text, first, second, j)
	if err != nil {
		return nil, err
	}
	return &p, nil
}

func (u use) knowsWord(text string) error {
	if len(u.words) == 0 || slices.Contains(u.words, text) {
		return nil
	}
	return fmt.Errorf("is %s, not %s", strings.Join(u.words, " or "), text)
}

// truthOf reads true and false as people write them.
func truthOf(text string) (bool, error) {
	switch strings.ToLower(text) {
	case "true", "yes":
		return true, nil
	case "false", "no":
		return false, nil
	}
	return false, fmt.Errorf("is true or false (yes or no), not %s", text)
}

// bounds refuses values that no device has. Zero means "not stated" everywhere in the
// model, and an element without resistance could close a loop that has no solution.
func (u use) bounds(r wiring.Rating) error {
	switch {
	case u.zero:
		return nil
	case u.shape == aCount && r.Count == 0:
		return fmt.Errorf("%s is no number of anything: it is at least 1", r.Word)
	case r.Pair != nil && (r.Pair.First.Value <= 0 || r.Pair.Second.Value <= 0):
		return fmt.Errorf("%s is nothing: both are above 0", r.Word)
	case !r.Amount.Known() || u.dim == quantity.Temperature:
		return nil
	case r.Amount.Value <= 0:
		return fmt.Errorf("%s is nothing: it is above 0", r.Word)
	case r.Amount.Value < u.from:
		return fmt.Errorf("%s is too little: it is at least %s", r.Word, quantity.Ratio(u.from))
	case u.upTo > 0 && r.Amount.Value > u.upTo:
		return fmt.Errorf("%s is too much: it is at most %s", r.Word, quantity.Ratio(u.upTo))
	}
	return nil
}

// and is what a value must be that is used in two ways; ok is false if nothing is both.
func (u use) and(v use) (both use, ok bool) {
	if !u.known {
		return v, true
	}
	both = u
	if u.shape == quantityAt && u.dim == v.dim {
		both.shape = v.shape
	}
	if v.shape == quantityAt && u.dim == v.dim {
		v.shape = u.shape
	}
	if both.shape != v.shape || both.dim != v.dim {
		return u, false
	}
	both.zero, both.auto = u.zero && v.zero, u.auto && v.auto
	both.from = max(u.from, v.from)
	if both.upTo == 0 || v.upTo > 0 {
		both.upTo = max(v.upTo, min(u.upTo, v.upTo))
	}
	if len(u.words) == 0 {
		both.words = v.words
	}
	return both, true
}

// String names what the value is: "current", "voltage to voltage".
func (u use) String() string {
	switch u.shape {
	case atPair:
		return u.dim.String() + " at voltage"
	case forPair:
		return u.dim.String() + " for time"
	case quantityAt:
		return u.dim.String() + ", or " + u.dim.String() + " at voltage"
	case aBand:
		return "voltage to voltage"
	case aCount:
		return "whole number"
	case aWord:
		return "word"
	case aTruth:
		return "true or false"
	}
	return u.dim.String()
}

// examples are values to show in messages, of the sort that is meant most often.
var examples = map[quantity.Dimension]string{
	quantity.Voltage: "58.4 V", quantity.Current: "10 A", quantity.Resistance: "250 ohm", quantity.Power: "35 W",
	quantity.Capacitance: "4.7 mF", quantity.Charge: "110 Ah", quantity.Length: "14 in", quantity.Mass: "45 kg",
	quantity.Share: "90 %", quantity.Time: "30 s", quantity.Torque: "9 Nm", quantity.Temperature: "85 C",
}

// example is a value to show in a message; empty if nothing is known of it.
func (u use) example() string {
	switch u.shape {
	case atPair:
		return examples[u.dim] + " at 60 V"
	case forPair:
		return "220 A for 30 s"
	case aBand:
		return "10 V to 15 V"
	case aCount:
		return "4"
	case aWord:
		if len(u.words) > 0 {
			return u.words[0]
		}
		return ""
	case aTruth:
		return "true"
	}
	return examples[u.dim]
}

// meanings are the ratings that mean something by their names, whether or not an element
// uses them.
var meanings = map[string]use{
	"mass": {shape: aQuantity, dim: quantity.Mass, known: true}, // the lifting caution
}

// useOfDefault is what a rating is that nothing uses, judged by its default.
func useOfDefault(text string) use {
	if a, err := quantity.ParseAny(text); err == nil {
		return use{shape: aQuantity, dim: a.Dimension, known: true, zero: true}
	}
	if _, err := quantity.ParseCount(text); err == nil {
		return use{shape: aCount, known: true, zero: true}
	}
	for _, u := range []use{
		{shape: aBand, known: true},
		{shape: atPair, dim: quantity.Current, known: true}, {shape: atPair, dim: quantity.Power, known: true},
		{shape: forPair, dim: quantity.Current, known: true},
	} {
		if _, err := u.read(text); err == nil {
			return u
		}
	}
	return use{shape: aWord, known: true}
}
