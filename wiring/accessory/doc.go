// Package accessory puts one more consumer on a cart: on the next free fused channel, with
// its switch, its wires, its return and its fuse, as text that is inserted into the job.
//
// Nothing is written that was not tried: [Add] reads the changed job and refuses it, with
// the numbers, if a reducer, a feed or the pack would be asked for too much, or if a rule
// finds an error that was not there before.
package accessory
