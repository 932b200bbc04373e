package wiring

import (
	"github.com/lugwright/lugwright/wiring/colour"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// Wire is one conductor, or one ready-made cord between two ports, from an end to an end.
// From and To have no electrical meaning.
type Wire struct {
	Number     string // "W37"; empty for a lead that nobody numbered
	From, To   End
	Pieces     []Piece          // from From to To; joined end to end
	Insulation quantity.Celsius // temperature rating; 0: not stated
	Volts      quantity.Volt    // voltage rating of the insulation; 0: not stated
	Loom       string
	For        string // what it does: "interlock"
	Note       string

	// Planned is the wire as it was planned, where `as-built` says that it was built otherwise:
	// its ends and pieces then. nil: it is as planned.
	Planned *Wire

	Interlock bool                 // lands on the platform's point `interlock`, or did before a layer moved it
	Origin    *Layer               // the layer that defines it
	Changed   []*Layer             // later layers that changed it
	Moved     []Move               // ends that later layers landed elsewhere, oldest first
	At        diag.Span            // its number, where it is defined
	Where     map[string]diag.Span // key ("from", "to", "colour", "size", "length") to the value's place
}

// Name is the wire's number, or the terminal of its lead.
func (w *Wire) Name() string {
	if w.Number != "" {
		return w.Number
	}
	for _, e := range []End{w.From, w.To} {
		if e.Terminal != nil && e.Terminal.Form.Type == Lead {
			return e.Terminal.Ref()
		}
	}
	return "?"
}

// Span returns where a key of the wire was written, or where the wire was defined.
func (w *Wire) Span(key string) diag.Span {
	if s, ok := w.Where[key]; ok {
		return s
	}
	return w.At
}

// Cord reports whether the wire is a ready-made cord between two ports.
func (w *Wire) Cord() bool {
	return w.From.Terminal != nil && w.From.Terminal.Form.Type == Port
}

// Ends returns From and To.
func (w *Wire) Ends() [2]*End { return [2]*End{&w.From, &w.To} }

// Other returns the end that is not at t. If both are, it returns To.
func (w *Wire) Other(t *Terminal) *End {
	if w.From.Terminal == t {
		return &w.To
	}
	return &w.From
}

// Length is the whole length, and whether every piece states one; About is set if any
// piece is an estimate.
func (w *Wire) Length() (total quantity.Metre, about, known bool) {
	known = len(w.Pieces) > 0
	for _, p := range w.Pieces {
		if !p.Length.Known() {
			known = false
			continue
		}
		total += quantity.Metre(p.Length.Value)
		about = about || p.Length.About
	}
	return total, about, known
}

// Untouched reports whether the wire is as the platform had it: defined there and changed
// by no later layer.
func (w *Wire) Untouched() bool {
	return w.Origin != nil && w.Origin.Kind == PlatformLayer && len(w.Changed) == 0
}

// End is one end of a wire.
type End struct {
	Terminal *Terminal // nil: capped, or loose
	Capped   bool      // insulated and tied back
	Loose    string    // not landed: what it landed on before that was removed ("A1.3"); empty otherwise
	Lug      string    // "ring M8", "spade 6.3", "none"; what is stated or follows from the terminal
	Stated   bool      // the lug was stated, not computed
	Point    string    // the named point through which the end was written; empty if by terminal
	At       diag.Span
}

// String is the end as a person would write it.
func (e End) String() string {
	switch {
	case e.Terminal != nil:
		return e.Terminal.Ref()
	case e.Capped:
		return "capped"
	case e.Loose != "":
		return "loose, was on " + e.Loose
	}
	return "nowhere"
}

// Move is an end of a wire that a layer landed elsewhere.
type Move struct {
	To  bool   // the end `to`; else `from`
	Was string // terminal it was on
	By  *Layer
	At  diag.Span
}

// PieceKind says how a piece came into the wire.
type PieceKind string

// The kinds of piece.
const (
	LeadPiece   PieceKind = "lead"   // came attached to a device
	CutPiece    PieceKind = "wire"   // cut from the reel for this wire
	ExtendPiece PieceKind = "extend" // lengthens what existed
	CordPiece   PieceKind = "cord"
)

// Piece is one length of one colour and size.
type Piece struct {
	Kind     PieceKind
	Colour   colour.Colour   // zero: unknown
	Size     quantity.Size   // zero: unknown
	Auto     bool            // the size is to be computed
	Length   quantity.Amount // zero: unknown
	Reckoned bool            // nobody stated the length: it follows from places and runs
	Joint    string          // how it is joined to the piece before it: "butt", "solder", "plug", "stud"; empty for the first
	At       diag.Span
}

// Loom holds wires together.
type Loom struct {
	Name    string
	Cover   string // "split tube", "tape", "braid", "lacing", "sheath", "none"
	Colour  colour.Colour
	Twisted bool
	Runs    []*Run
	At      diag.Span
}

// Place is somewhere on the vehicle.
type Place struct {
	Name    string
	Along   quantity.Amount  // from the front bumper
	Height  quantity.Amount  // above the floor
	Ambient quantity.Celsius // 0: Assume.Ambient
	At      diag.Span
}

// Run is a way between two places.
type Run struct {
	Name     string
	From, To *Place
	Length   quantity.Amount
	At       diag.Span
}
