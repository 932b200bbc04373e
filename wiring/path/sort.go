package path

import "strings"

// Sort is a set of sorts of edge.
type Sort uint32

// The sorts. A single edge has exactly one.
const (
	Wire      Sort = 1 << iota // a wire, or one pole of a cord
	Link                       // metal inside a part
	Fuse                       // fitted fuses and breakers; an empty channel is no edge
	Switch                     // one pair of terminals that a hand switch joins
	Contact                    // moved by a coil
	Driver                     // electronic switch
	Diode                      // from anode to cathode only
	Resistor                   //
	Coil                       //
	Load                       //
	Sense                      // watches a voltage; senses of AC are no edge
	Capacitor                  //
	Source                     // through a battery, + to -
	Charger                    // between its output terminals
	Input                      // of a converter, between its input terminals
	Output                     // of a converter, between its output terminals
)

// Common sets.
const (
	// Conductors are copper alone.
	Conductors = Wire | Link
	// Metal is copper that something can open: fuses, hand switches, contacts.
	Metal = Conductors | Fuse | Switch | Contact
	// Conducting is all that carries a load's current without being a load.
	Conducting = Metal | Driver | Diode
	// Consumers are what uses current.
	Consumers = Coil | Load | Input
)

var sortNames = [...]string{
	"wire", "link", "fuse", "switch", "contact", "driver", "diode", "resistor", "coil",
	"load", "sense", "capacitor", "source", "charger", "input", "output",
}

// String lists the sorts of the set: "wire|link".
func (s Sort) String() string {
	var names []string
	for i, name := range sortNames {
		if s&(1<<i) != 0 {
			names = append(names, name)
		}
	}
	if len(names) == 0 {
		return "nothing"
	}
	return strings.Join(names, "|")
}
