// Package wiring holds the nouns of a cart's wiring: parts with terminals and what is
// inside them, wires with their pieces, nets, places, operating states.
//
// A [Harness] is one cart, complete: every layer applied, every rating filled in, every
// element between its nodes. Package job reads one from files; package settle solves it;
// the rules judge it; package render draws it. A Harness is not changed once it has been
// read, and may then be read by many goroutines at once.
//
// Conventions that hold everywhere:
//
//   - a quantity has a type of package quantity; its zero value means "not stated";
//   - a [NodeID] is a point of one potential: a terminal, a pole of a port, a hidden node
//     inside a part, or the vehicle's frame; wires join nodes but do not merge them;
//   - slices are in a fixed order (natural order of designations and numbers), so that the
//     same input always gives the same output;
//   - a [diag.Span] says where in which file a thing was written; what the program itself
//     supplied has the zero Span.
package wiring
