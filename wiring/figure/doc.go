// Package figure computes the figures of a cart that are neither one operating point nor
// the verdict of a rule: how much a short circuit draws, whether a fuse opens for it, how
// the capacitors of a controller charge and run down, how long a charge takes, how long
// one lasts, and what is left of the reducer, the fuse block and the pack.
//
//	Cart.ShortCircuit, Cart.FuseFaults    prospective short-circuit currents
//	FuseOpening                           time-current classes of fuses
//	Cart.Precharge, Cart.Precharges       how a capacitor charges, and heats its resistor
//	Cart.RunDown                          how it runs down after the pack is off
//	Cart.ChargeTime                       constant current, then taper
//	Cart.Lasting, Cart.Parked             hours of lights, days parked
//	Cart.ReducerRooms, BlockRooms, PackRooms   what is left of each
//
// Each figure is a struct with its own file: quantities with units, the elements that it
// speaks of, and every [Assumption] that went into it. Nothing here judges; what is too
// much or too little is for rules and readers to say.
//
// A [Cart] is made once for a harness and answers everything. It asks package settle for
// operating points, some of them of a changed copy of the harness: with a source in place
// of a capacitor, without consumers, with contacts held as they stand.
package figure
