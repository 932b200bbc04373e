// Package path says what reaches what on a harness, and through which wires and parts.
//
// A [Graph] holds every node of a harness and one [Edge] for each thing that joins two of
// them: a wire, a fuse, a switch in some position, a load. A search names the sorts of
// edge that it may pass ([Through]) and answers with a [Reach]: the set of nodes, and for
// each the [Path] that leads there, so that whoever asks can also explain. On top of it
// stand the answers that rules ask for again and again: can two nodes be joined in one
// position of every switch ([Graph.Joined]), how much current can a fault draw there
// before a fuse opens ([Graph.Protection]), and at which voltages the supplies of a cart
// can put a node ([Supplies]).
//
// Nothing here solves a circuit: where volts and amperes matter, package settle does that.
package path
