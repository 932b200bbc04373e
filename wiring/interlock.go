package wiring

import "github.com/lugwright/lugwright/wiring/diag"

// InterlockKind says what a cart's interlock lead needs in order to let it drive.
type InterlockKind string

// The kinds of interlock.
const (
	NoInterlock                InterlockKind = "none"                // the cart has none
	InterlockPackPositive      InterlockKind = "pack+"               // pack positive, through fuses and lockout contacts only
	InterlockFeed              InterlockKind = "feed"                // the feed of key or run switch goes through it: its two leads joined, or fused pack positive
	InterlockReturn            InterlockKind = "return"              // pack negative: it is in the return of coil or enable
	InterlockLoop              InterlockKind = "loop"                // its two leads joined; pack positive would destroy the input
	InterlockAuxPositive       InterlockKind = "aux+"                // the 12 V control positive
	InterlockClosedWhenPlugged InterlockKind = "closed-when-plugged" // left open and capped: closed means that the cord is in
)

// InterlockKinds lists the kinds, commonest first.
func InterlockKinds() []InterlockKind {
	return []InterlockKind{
		InterlockPackPositive, InterlockFeed, InterlockReturn, InterlockLoop,
		InterlockAuxPositive, InterlockClosedWhenPlugged, NoInterlock,
	}
}

// Interlock is what keeps a cart from driving off with the cord in.
type Interlock struct {
	Kind      InterlockKind
	Note      string
	Wires     []*Wire     // the interlock leads: what lands, or did before it was moved, on the point `interlock`
	Terminals []*Terminal // the cart's own terminals that the leads come from
	At        diag.Span   // where the kind is declared; zero: nobody did, and it is the commonest
}
