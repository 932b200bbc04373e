package arrange

// What a layout costs, in units of wire, at first sight. The numbers follow what worked in
// trials on carts of some sixty wires; they need not be exact, since the router judges last.
const (
	costLength   = 1.0
	costBend     = 7.0
	costHeavy    = 2.5  // times, for a bend of a traction cable
	costBack     = 14.0 // a wire that leaves a pin backwards
	costCross    = 24.0
	costTouch    = 20.0 // a bend on a foreign wire
	costRail     = 22.0
	costShare    = 12.0 // for each unit that two wires share
	costBody     = 25   // for each point in a body
	costText     = 15   // for each point in a caption
	costMetal    = 25   // for each point on a foreign bar
	costWords    = 4    // for each point in a label
	costNoRoom   = 36.0 // a label without room
	costNoMark   = 12.0 // the name of a terminal without room
	costNoName   = 20.0 // the name of a bar without room
	costOverlap  = 25.0 // two items that overlap, and
	costArea     = 5.0  // for each square unit of it
	costOffLevel = 9.0  // an item that is out of its row
	costOrder    = 8.0  // two neighbours of a row in the wrong order
	costOutside  = 60.0 // for each unit beyond the edge of the sheet
	offSheet     = 1e8  // a wire for which the sheet has no room at all
	heavyWeight  = 4
)
