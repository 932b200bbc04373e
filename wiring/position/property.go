package position

import (
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/settle"
)

// Property is something that must hold in every position. Its functions must be safe for
// concurrent use; any of them but Judge may be nil.
type Property struct {
	ID    string // plain words with hyphens: "buses-apart"
	Title string // one line: what holds
	Means string // what exactly is asked of each position

	// Premise narrows a space to the positions that the property speaks of, as one space
	// or several. None: it does not speak of this cart, for the reason that it returns.
	Premise func(*Cart, *Space) (spaces []*Space, why string)
	// Prune replaces a space by smaller ones that break the property if and only if the
	// space does. None: no position can break it. It says why.
	Prune func(*Cart, *Space) (spaces []*Space, why string)
	// May reports whether a position could break the property, before it is settled. It
	// must not be false of one that does.
	May func(*Cart, *wiring.State) bool
	// Network is the network in which positions are settled; nil: that of the cart.
	Network func(*Cart) *settle.Network
	// Unsettled says that Judge wants points that are not settled, too. Otherwise each of
	// them is a Doubt.
	Unsettled bool
	// Judge lists what breaks the property at a point.
	Judge func(*Cart, *settle.Point) []Violation
}

// Violation is one thing that breaks a property at a point.
type Violation struct {
	Subject string         // what it is about: "M1", "K1.coil", "G1.+, T2.out"; of each a proof shows one position
	Element wiring.Element // the same where it is an element; else nil
	Says    string         // a sentence: what is wrong, with figures
	Ways    func() []Way   // explains it; called only for what is shown. nil: nothing to explain
}

// Way is how current comes to something, or how two things are joined.
type Way struct {
	What string    // what the way leads to: "K1.coil", or nothing for the first one
	Feed path.Path // from the positive of a supply, or from one end to the other of what is joined
	Back path.Path // on to the negative of the supply; no steps where Feed says it all
}

// Properties lists the properties that every cart should have.
func Properties() []*Property {
	return []*Property{
		BusesApart(),
		NoShort(),
		NoDriveOnCharge(),
		NoDriveWithCord(),
		OffMeansOff(),
		SneakPath(),
		SettlesEverywhere(),
	}
}
