// Package kind reads descriptions of devices ("kinds") and builds parts from them: their
// terminals, ratings, controls, and the electrical elements inside.
//
// A kind is data. [Read] checks a kind file as far as that is possible without a part, and
// [Definition.Build] makes a part of it, with the ratings that a job gives. Each sort of
// element is one file of this package: a table of its parameters, from which reading,
// checking and the written reference follow, and a function that makes the element.
package kind

import (
	"slices"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/source"
)

// Definition is a kind as its file describes it, checked and ready to build parts from.
// It is not changed after it was read and may be used by many goroutines at once.
type Definition struct {
	wiring.Kind
	ratings   []ratingSpec
	terminals []terminalSpec
	elements  []elementSpec
	controls  []controlSpec
	hidden    []*source.Node
	uses      map[string]use // what each rating must be, by how it is used
}

// Lookup finds a kind by its name, for `like`. A nil definition that is found is one that
// cannot be used, which has been reported.
type Lookup func(name string) (*Definition, bool)

// controlSpec is something that a hand sets.
type controlSpec struct {
	name      string
	positions []string
}

// elementSpec is one entry of `inside`.
type elementSpec struct {
	typ    *elementType
	name   string // given or by default; a repeated element adds its number
	body   *source.Node
	at     *source.Node // the type word, for messages
	faulty bool         // a fault has been reported: it is not built
}

// repeated reports whether the element is made once a number of a range.
func (s *elementSpec) repeated() bool { return len(s.typ.ranges(s.body)) > 0 }

// Rating finds one of the kind's parameters by name.
func (d *Definition) Rating(name string) (wiring.RatingSpec, bool) {
	i := slices.IndexFunc(d.Kind.Ratings, func(r wiring.RatingSpec) bool { return r.Name == name })
	if i < 0 {
		return wiring.RatingSpec{}, false
	}
	return d.Kind.Ratings[i], true
}

// RatingNames lists the kind's parameters in the order of its file.
func (d *Definition) RatingNames() []string {
	names := make([]string, len(d.Kind.Ratings))
	for i, r := range d.Kind.Ratings {
		names[i] = r.Name
	}
	return names
}

func (d *Definition) control(name string) (controlSpec, bool) {
	for _, c := range d.controls {
		if c.name == name {
			return c, true
		}
	}
	return controlSpec{}, false
}

func (d *Definition) controlNames() []string {
	names := make([]string, len(d.controls))
	for i, c := range d.controls {
		names[i] = c.name
	}
	return names
}
