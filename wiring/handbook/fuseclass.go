package handbook

import (
	"strings"

	"github.com/lugwright/lugwright/wiring/quantity"
)

// FuseClass is what a class of fuse can stand and break, as its standard or its makers say.
type FuseClass struct {
	Styles   []string // the words by which fuses name the class
	Name     string   // "strip SF51"
	Standard string   // "ISO 8820-5:2015"
	Volts    []quantity.Volt
	Largest  quantity.Ampere
	Breaks   quantity.Ampere
	At       quantity.Volt // voltage of Breaks; 0: the rated one
	Note     string
	Status   Status
}

// Lowest returns the rated voltage of the class, the lowest where it has several: what may
// be taken of a fuse that is not marked.
func (c FuseClass) Lowest() quantity.Volt { return c.Volts[0] }

// Highest returns the highest rated voltage of the class.
func (c FuseClass) Highest() quantity.Volt { return c.Volts[len(c.Volts)-1] }

var classesDefinition = table{
	name:    "fuse_classes",
	about:   "rated voltage and breaking capacity of each class of fuse",
	columns: []string{"style", "class", "standard", "rated_V", "max_rating_A", "breaking_A", "at_V", "note"},
	load: func(t *Tables, s *sheet) {
		t.classes = nil
		for _, r := range s.rows {
			t.classes = append(t.classes, newFuseClass(r))
		}
	},
}

func newFuseClass(r row) FuseClass {
	c := FuseClass{
		Styles: strings.Split(r.word("style"), "|"), Name: r.word("class"), Standard: r.text("standard"),
		Largest: quantity.Ampere(r.positive("max_rating_A")),
		Breaks:  quantity.Ampere(r.positive("breaking_A")),
		Note:    r.text("note"), Status: r.status(),
	}
	for _, v := range r.voltages("rated_V") {
		if n := len(c.Volts); n > 0 && v <= c.Volts[n-1] {
			r.fail("rated_V", "voltages must rise")
		}
		c.Volts = append(c.Volts, v)
	}
	if at := r.word("at_V"); at != "rated" {
		for _, v := range r.voltages("at_V") {
			c.At = v
		}
	}
	return c
}

// voltages reads "32", "32 or 58", "125 to 160 DC".
func (r row) voltages(column string) []quantity.Volt {
	text := strings.TrimSuffix(r.word(column), " DC")
	for _, word := range []string{" or ", " to "} {
		text = strings.ReplaceAll(text, word, " ")
	}
	var out []quantity.Volt
	for _, field := range strings.Fields(text) {
		v, ok := plainNumber(field)
		if !ok || v == 0 {
			r.fail(column, "%q is no voltage", field)
			return []quantity.Volt{0}
		}
		out = append(out, quantity.Volt(v))
	}
	if len(out) == 0 {
		return []quantity.Volt{0}
	}
	return out
}

// FuseClasses returns what the table has of a style, without regard to case; several where
// the breaking capacity depends on the voltage, none if the style is unknown (breakers:
// only the maker knows).
//
// Source: scope texts of ISO 8820, UL 248-15, IEC 60269-6 and makers; status by row. What
// counts is the marking of the fuse that is fitted.
func (t *Tables) FuseClasses(style string) []FuseClass {
	var found []FuseClass
	for _, c := range t.classes {
		for _, s := range c.Styles {
			if strings.EqualFold(s, style) {
				found = append(found, c)
				break
			}
		}
	}
	return found
}

// AllFuseClasses lists the classes as the table has them.
func (t *Tables) AllFuseClasses() []FuseClass { return append([]FuseClass(nil), t.classes...) }

// Breaking returns the current that a fuse of a style can break at a voltage, and whether
// the table says so: the row with the lowest voltage that is not below the circuit's, and
// no higher rated voltage than the class is made for.
func (t *Tables) Breaking(style string, circuit quantity.Volt) (quantity.Ampere, Status, bool) {
	var best *FuseClass
	for _, c := range t.FuseClasses(style) {
		if c.limit() < circuit || best != nil && best.limit() <= c.limit() {
			continue
		}
		best = &c
	}
	if best == nil {
		return 0, "", false
	}
	return best.Breaks, best.Status, true
}

// limit is the highest voltage at which the class's breaking capacity holds.
func (c FuseClass) limit() quantity.Volt {
	if c.At > 0 {
		return c.At
	}
	return c.Highest()
}
