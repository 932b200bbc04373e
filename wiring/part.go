package wiring

import (
	"strings"

	"github.com/lugwright/lugwright/wiring/colour"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// Part is one device on the cart.
type Part struct {
	Designation string // IEC 81346 style: "G1", "K1", "E1F"
	Kind        *Kind
	Title       string // what it is here; falls back to nothing, see Name
	Place       string // name of a Place, or empty
	Note        string
	Serial      string
	AlwaysOn    string // reason why it may draw current with the key off; empty: it may not
	Critical    bool   // held to Limits.Drop
	Ratings     map[string]Rating
	Terminals   []*Terminal // in the order in which they sit on the device
	Controls    []*Control
	Elements    []Element // what is inside
	Hidden      []NodeID  // internal nodes

	Origin  *Layer               // the layer that defines it
	Changed []*Layer             // later layers that changed it
	At      diag.Span            // its designation, where it is defined
	Where   map[string]diag.Span // key of the job file ("rating", "fuses.3", "kind") to the value's place
}

// Name is the title of the part, or its kind's.
func (p *Part) Name() string {
	if p.Title != "" {
		return p.Title
	}
	return p.Kind.Title
}

// Short is what stands under the designation: what the part is here, or the first words of
// its kind's title, "Sound bar" of "Sound bar with its own power button".
func (p *Part) Short() string {
	if p.Title != "" {
		return p.Title
	}
	short := p.Kind.Title
	for _, cut := range []string{",", " with ", " for ", " that ", " in ", " fed ", " on ", " enabled "} {
		if i := strings.Index(short, cut); i > 0 {
			short = short[:i]
		}
	}
	return short
}

// Terminal finds a terminal by its name, another name or its connector pin, without
// regard to case; nil if there is none.
func (p *Part) Terminal(name string) *Terminal {
	want := Fold(name)
	for _, t := range p.Terminals {
		if Fold(t.Name) == want {
			return t
		}
	}
	for _, t := range p.Terminals {
		if t.Pin != "" && Fold(t.Pin) == want {
			return t
		}
		for _, also := range t.Also {
			if Fold(also) == want {
				return t
			}
		}
	}
	return nil
}

// Span returns where a key of the part was written, or where the part was defined.
func (p *Part) Span(key string) diag.Span {
	if s, ok := p.Where[key]; ok {
		return s
	}
	return p.At
}

// Rating is the final value of one of a kind's parameters: a quantity, a pair, a word, a
// count, or a map by channel number.
type Rating struct {
	Amount  quantity.Amount
	Pair    *quantity.Pair
	Word    string                  // as written, whatever it is
	Count   int                     //
	Channel map[int]quantity.Amount // a map rating such as `fuses`
	At      diag.Span               // zero: the kind's default
}

// FormType is how a terminal is made.
type FormType string

// The forms of terminal.
const (
	Stud  FormType = "stud"
	Screw FormType = "screw"
	Spade FormType = "spade"
	Clamp FormType = "clamp"
	Pin   FormType = "pin"
	Lead  FormType = "lead" // a wire that comes attached to the device
	Port  FormType = "port" // takes a ready-made cord
	Joint FormType = "joint"
)

// Form is how a terminal is made, and its size.
type Form struct {
	Type FormType
	Size string // "M8", "5/16 in", "10-32", "6.3"; empty where the form has none
}

// Terminal is one connection of a part.
type Terminal struct {
	Part   *Part
	Name   string // "+", "coil-", "3"
	Form   Form
	Holds  int      // how many wires it takes
	Spoken string   // "controller side"
	Also   []string // other names
	Pin    string   // connector pin, "J1-7"
	Torque quantity.NewtonMetre
	Rated  quantity.Ampere // most current through it
	Lead   *LeadWire       // Form.Type == Lead
	Poles  []Pole          // Form.Type == Port; a port without poles carries data only
	Node   NodeID          // NoNode for ports
	Wires  []*Wire         // what lands here, in the order of wire numbers
	At     diag.Span       // where the kind defines it
}

// Ref is the terminal as the job file writes it: "G1.+", or the part alone where it has
// one terminal.
func (t *Terminal) Ref() string {
	if len(t.Part.Terminals) == 1 && t.Form.Type != Lead {
		return t.Part.Designation
	}
	return t.Part.Designation + "." + t.Name
}

// Pole is one conductor of a port.
type Pole struct {
	Name string
	Node NodeID
}

// LeadWire is the wire that a device comes with.
type LeadWire struct {
	Colour colour.Colour
	Size   quantity.Size
	Length quantity.Amount
	Lug    string // "ring M8", or empty
}

// Control is something that a hand (or a plug) sets.
type Control struct {
	Part      *Part
	Name      string   // "key", "switch", "plug"
	Positions []string // the first is the rest position
}

// Kind is a sort of device as its file describes it.
type Kind struct {
	Name     string
	Title    string
	Letter   string // class letter for designations
	Symbol   string
	Basis    string // where its figures come from
	Traction bool   // this part moves the cart
	Mount    Mount
	Ratings  []RatingSpec
	At       diag.Span
	File     string
}

// Mount says how a device is fixed. The texts are as written.
type Mount struct{ Hole, Screws, Note string }

// RatingSpec is one parameter of a kind.
type RatingSpec struct {
	Name    string
	Needed  bool   // the part must give it
	Map     bool   // by channel number
	Default string // as written; empty if needed or a map
}
