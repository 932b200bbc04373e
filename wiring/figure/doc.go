// Package figure computes the figures of a cart that are neither one operating point nor
// the verdict of a rule: how much a short circuit draws, whether a fuse opens for it, how
// the capacitors of a controller charge and run down, how long a charge takes, how long
// one lasts, and what is left of the reducer, the fuse block and the pack.
//
// Each figure is a struct with its own file: quantities with units, the elements that it
// speaks of, and every [Assumption] that went into it. Nothing here judges; what is too
// much or too little is for rules and readers to say.
//
// A [Cart] is made once for a harness and answers everything. It asks package settle for
// operating points, some of them of a changed copy of the harness: with a source in place
// of a capacitor, without consumers, with contacts held as they stand.
package figure
