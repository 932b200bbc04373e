package wiring

import (
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// Harness is one cart's wiring. See the package comment for its conventions.
type Harness struct {
	Identity    Identity
	Shop        Shop
	Layers      []*Layer // lowest first; the last one is the file that was asked for
	Parts       []*Part
	Wires       []*Wire
	Nodes       []Node // by NodeID; Nodes[0] is the frame
	Points      []Point
	Places      []*Place
	Runs        []*Run
	Looms       []*Loom
	States      []*State
	Stacks      []Stack // as stated; the others are computed
	Limits      Limits
	Assume      Assume
	Waivers     []diag.Waiver
	TestPoints  []*Terminal
	Interlock   *Interlock    // nil: no layer speaks of one
	Before      []RemovedPart // parts that lower layers had and a higher one took away
	BeforeWires []RemovedWire // the same for wires
	Files       *diag.Files   // text of everything that was read, for quoting lines

	parts map[string]*Part
	wires map[string]*Wire
}

// Identity is what the title block says of a job (ISO 7200).
type Identity struct {
	Number   string // identification number, the job's header
	Title    string
	About    string
	Cart     string
	Customer string
	By       string // creator
	Approved string // approval person
	Kind     LayerKind
	At       diag.Span
	History  []Revision // oldest first
}

// Revision is one row of the revision list.
type Revision struct {
	Index string // A, B, …
	Date  string // as written, ISO 8601 calendar date
	By    string
	Note  string
	At    diag.Span
}

// Shop is who issues the drawing.
type Shop struct{ Name, Address, Phone string }

// LayerKind is the sort of file that a layer came from.
type LayerKind string

// The sorts of layer.
const (
	CatalogLayer  LayerKind = "catalog"
	ShopLayer     LayerKind = "shop"
	PlatformLayer LayerKind = "platform"
	KitLayer      LayerKind = "kit"
	AddonLayer    LayerKind = "addon"
	JobLayer      LayerKind = "job"
	ListLayer     LayerKind = "list" // a CSV wire list
)

// Layer is one file that took part in a harness.
type Layer struct {
	Kind   LayerKind
	Title  string // its header
	File   string // as spans name it
	Suffix string // given by `suffix`, empty if none
	About  string
	At     diag.Span
	Needs  []Need // what the layer expects of the ones below
}

// Need is a point that a layer expects, and whether it found it.
type Need struct {
	Point, What string
	Met         bool
	At          diag.Span
}

// Limits are what rules compare against. They always hold a value.
type Limits struct {
	Drop         quantity.Ratio  // share of voltage lost on the way to a critical part, default 3 %
	DropOther    quantity.Ratio  // the same for the others, default 10 %
	FuseDistance quantity.Metre  // unprotected length from a source, default 7 in
	KeyOff       quantity.Ampere // standby current, default 30 mA
	Lugs         int             // lugs on one stud, default 4
}

// Assume is what is taken where a job says nothing. It always holds a value.
type Assume struct {
	Ambient    quantity.Celsius // default 40 C
	Insulation quantity.Celsius // insulation's temperature rating; 0: not stated
	Volts      quantity.Volt    // voltage rating of insulation, default 60 V
	Slack      quantity.Metre   // added to runs, default 12 in
	SOC        quantity.Ratio   // state of charge, default 80 %
	Conductor  quantity.Celsius // conductor temperature for resistance, default 20 C
}

// Stack is the order of lugs on one stud as a job states it, face of the terminal first.
type Stack struct {
	Terminal *Terminal
	Wires    []*Wire
	At       diag.Span
}

// Point is a terminal with a name that kits and add-ons use, such as "pack+".
type Point struct {
	Name     string
	Terminal *Terminal // nil: the cart has none
	At       diag.Span
}

// RemovedPart is a part that a lower layer had and a higher one removed. Its nodes are no
// part of the harness.
type RemovedPart struct {
	Part     *Part
	By       *Layer
	At       diag.Span
	Wires    []*Wire // what went with it
	Replaced bool    // another device took its designation
}

// RemovedWire is a wire that a lower layer had and a higher one removed, itself or together
// with a part. An end that was on a removed part is Loose.
type RemovedWire struct {
	Wire *Wire
	By   *Layer
	At   diag.Span
}

// Index must be called once when Parts and Wires are complete; it sorts them and makes
// them findable by name. It returns the harness.
func (h *Harness) Index() *Harness {
	sortParts(h.Parts)
	sortWires(h.Wires)
	h.parts = make(map[string]*Part, len(h.Parts))
	for _, p := range h.Parts {
		h.parts[Fold(p.Designation)] = p
	}
	h.wires = make(map[string]*Wire, len(h.Wires))
	for _, w := range h.Wires {
		h.wires[Fold(w.Name())] = w
	}
	return h
}

// Part finds a part by its designation, without regard to case; nil if there is none.
func (h *Harness) Part(designation string) *Part { return h.parts[Fold(designation)] }

// Wire finds a wire by its number, or a lead without one by its terminal ("T2.memory"),
// without regard to case; nil if there is none.
func (h *Harness) Wire(name string) *Wire { return h.wires[Fold(name)] }

// Terminal finds "G1.+", or the only terminal of a part by the part alone ("X5"); nil if
// there is none. Other names and pins of a terminal are accepted.
func (h *Harness) Terminal(ref string) *Terminal {
	name, terminal, dotted := cutRef(ref)
	p := h.Part(name)
	if p == nil {
		return nil
	}
	if !dotted {
		if len(p.Terminals) == 1 {
			return p.Terminals[0]
		}
		return nil
	}
	return p.Terminal(terminal)
}

// Point finds a named point; the second result is false if no layer defines it.
func (h *Harness) Point(name string) (Point, bool) {
	for _, p := range h.Points {
		if p.Name == name {
			return p, true
		}
	}
	return Point{}, false
}

// State finds an operating state by name; nil if there is none.
func (h *Harness) State(name string) *State {
	for _, s := range h.States {
		if s.Name == name {
			return s
		}
	}
	return nil
}

// Place finds a place by name; nil if there is none.
func (h *Harness) Place(name string) *Place {
	for _, p := range h.Places {
		if p.Name == name {
			return p
		}
	}
	return nil
}
