package work

import (
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// Verb is what an act does.
type Verb string

// The verbs.
const (
	Set   Verb = "set"   // a control to a position
	Free  Verb = "free"  // a control may stand anywhere from here on
	Lift  Verb = "lift"  // an end of a strand off its terminal
	Cover Verb = "cover" // a bare end: insulate it
	Land  Verb = "land"  // an end of a strand on its terminal
	Join  Verb = "join"  // pieces that extend a strand to one of its ends
	Take  Verb = "take"  // a device off the cart
	Mount Verb = "mount" // a device on the cart
	Pull  Verb = "pull"  // a fuse
	Fit   Verb = "fit"   // a fuse
	Guard Verb = "guard" // put the cover on a battery post
	Prove Verb = "prove" // measure that capacitors are empty
	Read  Verb = "read"  // take readings
	Raise Verb = "raise" // the driven wheels off the ground
)

// Act is the smallest thing that is done. Which fields count follows from the verb.
type Act struct {
	Verb     Verb
	Strand   *Strand          // Lift, Cover, Land, Join
	End      int              // of the strand
	Terminal *wiring.Terminal // Land, Guard; of Lift where the end was; Cover of a lead without a strand
	Under    []*Strand        // Land, Lift: lugs further out that come off for it and go back
	Device   *Device          // Take, Mount
	Control  *wiring.Control  // Set, Free
	Position string           // Set
	Fuse     *wiring.Fuse     // Pull, Fit
}

// Fact is a voltage that a meter should read.
type Fact struct {
	Red, Black *wiring.Terminal
	State      string // the operating state; empty: as the cart stands
	Volts      quantity.Volt
	Floating   bool          // a meter shows about 0, and that is no zero
	AtMost     quantity.Volt // instead of Volts: no more than this
}
