// Package difference says what one cart's netlist has and another's has not: the cart as it
// came against the job, or two revisions of one job.
//
// A [Netlist] is the wiring of a [wiring.Harness] as plain data; [Compare] of two of them is a
// [Difference], a list of changes in a fixed order. From it follow marks for a drawing
// ([Difference.Marks]) and the line for the revision list of the title block
// ([Difference.Note], [NextIndex]).
//
// Identity is by name: designations of parts, numbers of wires. A wire that is found under
// another number on the same lead of a device has been renumbered, since a lead has one wire.
// Which end of a wire is called from and which to has no meaning, so a wire that is
// merely written the other way round has not changed. What the program itself supplies, such
// as a length reckoned from places, is compared like what was written: it is what stands on
// the sheets.
package difference
