package difference

import (
	"slices"

	"github.com/lugwright/lugwright/wiring"
)

// Netlist is the wiring of one cart as plain data.
type Netlist struct {
	Parts  []Part  // in the order of designations
	Wires  []Wire  // in the order of numbers
	Stacks []Stack // of every stud, in the order of parts
}

// Part is one device.
type Part struct {
	Name  string // its designation
	Kind  string
	Facts []Fact // by key
}

// Wire is one conductor, or one ready-made cord.
type Wire struct {
	Name  string // its number, or the terminal of its lead
	Ends  [2]End // in either order
	Facts []Fact // by key: what is true of the wire as a whole and of the piece that is cut
	Leads []string
}

// End is one end of a wire.
type End struct {
	On     string  // "G1.+", "capped", or what else [wiring.End.String] says
	State  Landing // what sort of place that is
	Lug    string
	Pieces []Value // that lengthen the wire at this end, outwards: "GN/WH 18 AWG 14 in"
}

// Landing says in what sort of place an end is.
type Landing uint8

// The sorts of place.
const (
	OnTerminal Landing = iota
	Capped             // insulated and tied back
	Loose              // landed nowhere
)

// Stack is the order of lugs on a stud, from the face of the terminal outwards.
type Stack struct {
	Terminal string
	Wires    []string
}

// Value is something that was written. Two values are the same if Exact is: "4 ft" and
// "48 in" are two texts of one length.
type Value struct{ Text, Exact string }

// Fact is one thing that is known of a part or wire.
type Fact struct {
	Key string // "place", "rating amps", "fuse 3", "colour"
	Value
}

// Word is a value that is what it is called.
func Word(text string) Value { return Value{text, text} }

// Of makes the netlist of a harness.
func Of(h *wiring.Harness) Netlist {
	var n Netlist
	for _, p := range h.Parts {
		n.Parts = append(n.Parts, partOf(p))
	}
	for _, w := range h.Wires {
		n.Wires = append(n.Wires, wireOf(w))
	}
	n.Stacks = stacksOf(h)
	return n
}

// byName finds the parts of a netlist by designation.
func (n Netlist) byName() map[string]*Part {
	found := make(map[string]*Part, len(n.Parts))
	for i := range n.Parts {
		found[wiring.Fold(n.Parts[i].Name)] = &n.Parts[i]
	}
	return found
}

// facts keeps the values that say something.
func facts(all ...Fact) []Fact {
	return slices.DeleteFunc(all, func(f Fact) bool { return f.Text == "" })
}

// value finds a fact by its key; the zero Value if it is not there.
func value(all []Fact, key string) Value {
	for _, f := range all {
		if f.Key == key {
			return f.Value
		}
	}
	return Value{}
}
