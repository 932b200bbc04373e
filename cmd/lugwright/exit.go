package main

// exit is what the program ends with. Of several, the highest counts.
type exit int

const (
	clean     exit = 0 // nothing at or above the level that was asked for
	findings  exit = 1 // something was found
	unusable  exit = 2 // the input or the call cannot be used
	unwritten exit = 3 // output could not be written
)

// exitHelp is how help tells the exit codes.
const exitHelp = `  0  nothing was found at the level that was asked for, or above it
  1  something was found
  2  the input or the call cannot be used
  3  output could not be written
`
