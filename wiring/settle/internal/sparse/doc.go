// Package sparse solves A x = b for the matrices of nodal analysis: n equations, one a
// node, with an off-diagonal pair of entries wherever a branch joins two nodes.
//
// The work is done in three steps, each of which is kept for as long as it holds good:
//
//	Pattern   which entries can be other than zero, in what order to eliminate, which
//	          entries fill in; once for a network
//	Matrix    the values; once for an operating point
//	Factors   A = L D U, L and U of unit diagonal; then any number of right-hand sides
//
// A wiring harness is nearly a tree, and the order of least degree eliminates a tree
// without any fill, so time and memory grow with the number of branches.
//
// There is no pivoting beside that order: the matrices are those of passive networks,
// diagonally dominant up to the small negative slope of constant-power loads, for which
// elimination in any order is stable. A pivot that is not positive says that the network
// has no stable operating point near this one; [Factors.Factor] reports it.
//
// A Pattern is not changed by use and may serve many goroutines; a Matrix and Factors
// serve one.
package sparse
