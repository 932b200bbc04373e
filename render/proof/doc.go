// Package proof reads a finished SVG of a schematic back and judges it: what is joined to
// what, as the lines on the paper say, and whether a person could misread them.
//
// Read looks at geometry. Groups say which marks belong to one wire, one part or one label,
// and how a pin is called; that a wire ends on that pin, or that three lines meet in a dot,
// must be there to be seen. All lengths are millimetres.
package proof
