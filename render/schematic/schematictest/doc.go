// Package schematictest makes jobs for tests of drawings: invented variants of the shipped
// carts, and netlists of boxes of which nothing is known. The same number always makes the
// same job.
package schematictest
