// Package route finds the lines of the wires between the items and bars of a laid-out
// diagram: on the unit grid, level and upright, with few bends and crossings.
//
// A wire is routed by A* over place and direction. Wires are laid one after the other,
// shortest first; what fails may tear up others and try again, a bounded number of times;
// at the end wires that came out dearer than they need be are laid anew.
//
// What may never happen: a wire through a body or a caption, two wires on one stretch, a
// bend or an end on a foreign wire, a foreign wire over a pin. Crossings are allowed, at a
// price. Several wires of one pin join on a short trunk before it and nowhere else, since
// a longer one would hide on which stud a lug lands.
package route

import "github.com/lugwright/lugwright/render/symbol"

// Prices of a path. They follow what worked in trials on carts of some sixty wires.
const (
	priceStep      = 10
	priceBend      = 70
	priceCrossing  = 320
	priceTee       = 25
	priceTeeAtPin  = 45  // beside the pin itself: legible, but tight
	priceHeavyTee  = 120 // more for a traction cable, which should run straight to its pin
	priceFourWay   = 60  // two taps at one point of a bar
	priceParallel  = 7   // a foreign wire one unit beside
	priceBeside    = 3   // a body one unit beside
	priceBesideBar = 15  // a bar one unit beside
	priceTight     = 40  // a body half a unit beside
	priceFront     = 60  // before a foreign pin
	priceRail      = 400 // across a supply rail
	priceTorn      = 600 // on a foreign wire, which then is torn up
	priceHistory   = 150 // more for each time that the stretch was fought over
	bodyMargin     = 0.5 // clear of a body, exclusive: pins stand there
	captionMargin  = 0.3 // clear of words
	trunkPerWire   = 2   // units of trunk for each wire of a pin after the first
	firstEffort    = 2500
	lastEffort     = 30000
	tearRounds     = 6
	rerouteRounds  = 4
	worthRerouting = 30 // above its lower bound
)

// Result is where the wires of a diagram run, index by index.
type Result struct {
	Paths    [][]symbol.Cell // corners from end 0 to end 1; nil: no way was found
	Dots     []symbol.Cell   // where wires join: tees before pins, landings on bars
	Failed   []int           // wires without a path
	Crossing int             // number of crossings
	Bends    int             // number of bends
}
