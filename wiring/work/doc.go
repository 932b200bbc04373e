// Package work puts the cart as it came and the cart of the job on one bench, so that the
// cart can be built and settled as it stands in the middle of the conversion.
//
// A bench holds both carts as one set of devices and strands of wire, with one numbering of
// nodes (bench.go, graft.go, strand.go). A world is the cart at one moment: which devices
// are on it, where each end of each strand is, which fuses are in, which controls are held
// (world.go); it carries out acts (act.go), refuses those that cannot be done, and gives the
// harness and the operating states of that moment (snapshot.go). Nothing orders acts yet.
//
// A battery's own switch counts as off for what is switched and as on for what is touched:
// it is no disconnect, since semiconductors leak and hands slip.
package work
