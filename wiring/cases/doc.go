// Package cases holds the checker against carts with a mistake each, and has no code of its
// own: it is the room of tests that need the whole of wiring at once.
//
//   - families_test.go: four families of invented carts, each miswired in the ways that are
//     met in the trade. What they then do is asked of the solver alone, without a rule.
//   - field_test.go: mistakes that owners met, as small jobs in testdata/cases/field, and
//     what is found in each.
//   - mutants_test.go: the carts that ship with something changed at random, how many of
//     those behave or stand differently, and how many of those are reported.
package cases
