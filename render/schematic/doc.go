// Package schematic turns a harness into the sheets of its schematic: which parts stand on
// which sheet, where, with which symbols, how the wires run and what is written on them.
//
// One way through it: circuit.go reads devices, bars and lines out of the harness;
// cluster.go and split.go divide them into sheets; diagram.go makes of each sheet a diagram
// without kinds, which packages arrange, route and label lay out; draw.go puts the result
// on a page. Nothing electrical is computed here.
package schematic
