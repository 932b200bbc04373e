package kind

import (
	"strings"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// shape is the form in which a parameter is written.
type shape uint8

// The shapes.
const (
	aQuantity  shape = iota // one quantity of the dimension
	atPair                  // QUANTITY at QUANTITY: current or power at a voltage
	forPair                 // current for a time
	aBand                   // voltage to voltage
	quantityAt              // a quantity, or a power at a voltage
	aCount                  // a whole number
	aWord                   // one of some words, or any text
	aTruth                  // true or false
	oneNode                 // a terminal, pole, hidden node or frame
	twoNodes                // a pair of those
	someNodes               // a list of those, ranges standing for all their members
	aCondition              // see condition.go
	someWays                // positions of a control and the nodes that they join
	aReference              // the name of another element of the kind
)

// param is one parameter of an element type. The table of an element's parameters is what
// its reading, its checking and its reference page come from.
type param struct {
	name  string
	shape shape
	dim   quantity.Dimension // of a quantity, or of the first of an atPair
	need  bool
	def   string // default as the reference prints it; empty: none
	rule  bool   // used by rules only, not by the solver
	words []string
	doc   string
}

// elementType is one sort of element.
type elementType struct {
	name   string
	doc    string // what it behaves as
	params []param
	build  func(*args) wiring.Element
}

// elementTypes is every sort of element, in the order of the reference.
var elementTypes = []*elementType{
	&resistorType, &linkType, &fuseType, &switchType, &coilType, &contactType, &diodeType,
	&capacitorType, &sourceType, &mainsType, &chargerType, &converterType, &loadType,
	&senseType, &driverType,
}

func findElementType(name string) *elementType {
	for _, t := range elementTypes {
		if t.name == name {
			return t
		}
	}
	return nil
}

func elementTypeNames() []string {
	names := make([]string, len(elementTypes))
	for i, t := range elementTypes {
		names[i] = t.name
	}
	return names
}

func (t *elementType) param(name string) *param {
	for i := range t.params {
		if t.params[i].name == name {
			return &t.params[i]
		}
	}
	return nil
}

func (t *elementType) paramNames() []string {
	names := []string{"name"}
	for _, p := range t.params {
		names = append(names, p.name)
	}
	return names
}

// use is what a rating is, learnt from where it is used.
type use struct {
	shape shape
	dim   quantity.Dimension
	known bool
}

// example is a value to show in a message.
func (u use) example() string {
	switch u.shape {
	case atPair:
		return "10 A at 60 V"
	case forPair:
		return "220 A for 30 s"
	case aBand:
		return "10 V to 15 V"
	case aCount:
		return "16"
	case aWord:
		return "LFP"
	}
	switch u.dim {
	case quantity.Voltage:
		return "58.4 V"
	case quantity.Resistance:
		return "250 ohm"
	case quantity.Power:
		return "35 W"
	}
	return "10 A"
}

// article puts a or an before a kind's name.
func article(name string) string {
	if name != "" && strings.ContainsRune("aeiou", rune(name[0])) {
		return "an " + name
	}
	return "a " + name
}
