// Package sizing chooses the conductor and the fuse of a run.
//
//	Choose   from a current, a length and a voltage; says what each requirement asks for
//	Fill     the sizes and ratings that a job leaves to the program, by the same choice
//
// A conductor must carry what its fuse lets through, must not lose more volts than it may,
// and must not be thinner than the smallest that is run. The thickest of the three wins,
// and [Choice.Needs] says which that was and which row of which table it comes from.
//
// Nothing here judges a cart: rules do. What is chosen here is chosen so that they find
// nothing.
package sizing
