package wiring

import (
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// NodeID numbers the nodes of a harness: an index into Harness.Nodes.
type NodeID int32

// FrameNode is the vehicle's frame; NoNode is no node at all.
const (
	FrameNode NodeID = 0
	NoNode    NodeID = -1
)

// Node is a point of one potential.
type Node struct {
	Part     *Part     // nil: the frame
	Terminal *Terminal // nil: hidden inside the part
	Name     string    // "+", "ac.L", "v5", "frame"
}

// String is the node as a person would write it: "G1.+", "T1.ac.L", "frame".
func (n Node) String() string {
	if n.Part == nil {
		return n.Name
	}
	return n.Part.Designation + "." + n.Name
}

// Element is one electrical thing inside a part, between nodes. Every element that the
// model knows is one of the structs of this file.
type Element interface {
	// Base returns what all elements have.
	Base() *ElementBase
	// Type is the word of the kind file: "fuse", "converter".
	Type() string
}

// ElementBase is what all elements have.
type ElementBase struct {
	Name string // unique in the part: "fuse3", "enable"
	Part *Part
	At   diag.Span // where the kind defines it
}

// Base returns b itself.
func (b *ElementBase) Base() *ElementBase { return b }

// Ref is the element as findings name it: "A1.fuse3".
func (b *ElementBase) Ref() string { return b.Part.Designation + "." + b.Name }

// Rated is what a contact or a fuse may carry and interrupt.
type Rated struct {
	Amps  quantity.Ampere
	Volts quantity.Volt
}

// Burst is a current that may flow for a time.
type Burst struct {
	Amps quantity.Ampere
	For  quantity.Second
}

// Band is a range of voltage.
type Band struct{ Low, High quantity.Volt }

// Resistor is ohms between two nodes.
type Resistor struct {
	ElementBase
	A, B NodeID
	Ohms quantity.Ohm
	Heat quantity.Watt // most it may dissipate
	// Shunt says that a meter counts the current through it, from A, the side of the loads, to
	// B, the side of the battery.
	Shunt bool
}

// Link joins its nodes into one.
type Link struct {
	ElementBase
	Join []NodeID
}

// Fuse opens when it carries more than Opens times Rating.
type Fuse struct {
	ElementBase
	A, B    NodeID
	Fitted  bool // false: an empty channel
	Channel int  // number in its block; 0: not repeated
	Rating  quantity.Ampere
	Auto    bool   // the rating is to be computed
	Style   string // "blade", "10x38", "class T", "SF51", "single bolt", "breaker"
	Opens   quantity.Ratio
	Ohms    quantity.Ohm
	Volts   quantity.Volt   // rated voltage
	Breaks  quantity.Ampere // interrupting rating
	Holder  quantity.Ampere // most that its holder carries
}

// Switch is worked by a control. Closes gives for each position the groups of nodes that
// it joins: the first of a group to each other one.
type Switch struct {
	ElementBase
	Control *Control
	Closes  map[string][][]NodeID
	Ohms    quantity.Ohm
	Rated   Rated
}

// Coil works the contacts of its part.
type Coil struct {
	ElementBase
	A, B            NodeID
	Ohms            quantity.Ohm
	PullIn, DropOut quantity.Volt
	Hold            quantity.Watt // economiser; 0: none
	Polarised       bool
	Suppressed      bool
	Nominal         quantity.Volt // the voltage that it is named for
}

// Contact is moved by a coil.
type Contact struct {
	ElementBase
	A, B       NodeID
	Coil       *Coil
	RestClosed bool
	Ohms       quantity.Ohm
	Rated      Rated
}

// Diode conducts from A (anode) to B (cathode).
type Diode struct {
	ElementBase
	A, B    NodeID
	Drop    quantity.Volt
	Ohms    quantity.Ohm
	Amps    quantity.Ampere
	Reverse quantity.Volt
}

// Capacitor is open to direct current.
type Capacitor struct {
	ElementBase
	A, B   NodeID
	Farads quantity.Farad
}

// Source is a battery: an open-circuit voltage behind ohms. A is its positive.
type Source struct {
	ElementBase
	A, B      NodeID
	Volts     quantity.Volt // fixed open-circuit voltage; 0: from Chemistry, Cells and state of charge
	Chemistry string        // "LFP", "lead-acid"
	Cells     int
	Ohms      quantity.Ohm
	Trips     quantity.Ampere // protection opens above; 0: never
	When      *Condition
	Capacity  quantity.AmpereHour
	Discharge quantity.Ampere // continuous
	Peak      Burst
	Charge    quantity.Ampere // most charging current
	Low, High quantity.Volt   // limits of the whole source, where stated
	Cold      string          // what it does with charge below freezing: "blocks", "heats", "takes"
	Wakes     string          // what wakes it from the sleep of its protection: "charger", "button", "itself"
	Port      NodeID          // where a charger belongs; FrameNode: on its posts
}

// Mains makes AC present between its poles. AC is not solved.
type Mains struct {
	ElementBase
	L, N  NodeID
	Volts quantity.Volt
	Amps  quantity.Ampere
	When  *Condition
}

// Charger gives constant current, then constant voltage, out of A (positive).
type Charger struct {
	ElementBase
	A, B       NodeID
	Amps       quantity.Ampere
	End        quantity.Volt
	L, N       NodeID // AC poles; NoNode: it needs no AC here
	When       *Condition
	Standby    quantity.Ampere
	Takes      quantity.Watt
	Efficiency quantity.Ratio
	Profile    string
	Starts     quantity.Volt // that it must see before it gives any current
	Wakes      string        // whether it gives voltage to a pack that shows none: "yes", "no"
	Pins       string        // how its pins are while nothing is plugged in: "shrouded", "bare"
}

// Converter makes a regulated voltage at OutA against OutB from InA against InB.
type Converter struct {
	ElementBase
	InA, InB, OutA, OutB NodeID
	Volts                quantity.Volt
	Amps                 quantity.Ampere
	Works                Band
	Starts               quantity.Volt
	When                 *Condition
	Efficiency           quantity.Ratio
	Idle, Standby        quantity.Ampere
	Shares               bool // its output may stand on one bus with another source
}

// LoadLaw says what a load holds constant.
type LoadLaw uint8

// The load laws.
const (
	ConstantPower LoadLaw = iota + 1
	ConstantCurrent
	Resistive
)

// Load is a consumer between A and B.
type Load struct {
	ElementBase
	A, B      NodeID
	Law       LoadLaw
	Watts     quantity.Watt   // ConstantPower
	Amps      quantity.Ampere // ConstantCurrent
	Ohms      quantity.Ohm    // Resistive
	Works     Band            // zero: works at any voltage
	Most      quantity.Volt   // survives at most
	Polarised bool            // A must be positive
	When      *Condition
	Inrush    Burst
	Peak      Burst
	Duty      quantity.Ratio // share of time on; 0: all of it
	Reads     string         // of a gauge: the chemistry whose voltage it shows as charge
}

// Sense watches a voltage, or the presence of AC.
type Sense struct {
	ElementBase
	At, To    NodeID        // voltage of At against To
	Above     quantity.Volt // true from here up; 0: not this way
	Below     quantity.Volt // true from here down; 0: not this way
	Back      quantity.Volt // false again beyond
	Ohms      quantity.Ohm
	EitherWay bool
	Most      quantity.Volt
	AC        bool // watches AC between At and To instead, and is no branch
}

// Driver is an electronic switch that closes while its condition holds.
type Driver struct {
	ElementBase
	A, B  NodeID
	When  *Condition
	Ohms  quantity.Ohm
	Rated Rated
	Peak  Burst
	Duty  quantity.Ratio
	Least quantity.Ampere // of a flasher: below it, it does not work as it should
	Regen quantity.Ampere // of a drive: most that braking pushes back into the battery
	Holds quantity.Volt   // of a drive: braking is cut back so that the bus stays below
	Cuts  quantity.Volt   // of a drive: it stops driving below
}

// Type names of the elements.
func (*Resistor) Type() string  { return "resistor" }
func (*Link) Type() string      { return "link" }
func (*Fuse) Type() string      { return "fuse" }
func (*Switch) Type() string    { return "switch" }
func (*Coil) Type() string      { return "coil" }
func (*Contact) Type() string   { return "contact" }
func (*Diode) Type() string     { return "diode" }
func (*Capacitor) Type() string { return "capacitor" }
func (*Source) Type() string    { return "source" }
func (*Mains) Type() string     { return "mains" }
func (*Charger) Type() string   { return "charger" }
func (*Converter) Type() string { return "converter" }
func (*Load) Type() string      { return "load" }
func (*Sense) Type() string     { return "sense" }
func (*Driver) Type() string    { return "driver" }

// Condition is what an element waits for. A nil *Condition always holds.
type Condition struct {
	Op       ConditionOp
	Element  Element      // Holds: a sense is true, a coil energised, a driver closed, a converter or charger running
	Control  *Control     // Set: the control stands at Position
	Position string       //
	Of       []*Condition // All, Any, Not
}

// ConditionOp is the operator of a Condition.
type ConditionOp uint8

// The operators.
const (
	Holds ConditionOp = iota + 1
	Set
	All
	Any
	Not
)
