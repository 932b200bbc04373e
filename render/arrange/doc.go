// Package arrange decides where the parts of a schematic stand on its sheet. It knows no
// output format and no kind of part: it is given a Diagram of boxes with pins, captions
// with sizes, bars and wires, all in units of the drawing grid, and returns a Layout.
//
// The way of a diagram through the packages: arrange places the items and bars, route
// finds the lines of the wires, label finds places for their words. Package schematic
// makes the Diagram from a harness and puts the result on paper.
//
// Everything here is bounded by counts, never by a clock, and draws its chances from a
// generator with a fixed seed: the same diagram always gives the same layout.
package arrange
