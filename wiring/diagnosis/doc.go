// Package diagnosis finds the one thing that is wrong with a cart, from what its owner saw
// and what a meter reads.
//
// A [Table] holds what every single fault of a cart would read at every place in every
// state. A [Case] begins with all of them as candidates. What the owner saw ([Case.Answer])
// and what was read (Case.Readings) leave those that fit, within a tolerance; and
// [Case.Next] is the step that is worth most, a question or a measurement: its expected
// information, in bits, for the trouble of taking it. It ends when no step tells the
// candidates that are left apart: they are one group, and one look at them decides.
// [Table.Chart] follows every answer, for a chart on paper.
//
// The likelihoods before the first measurement are those of the faults' classes (package
// fault). The expected information of a measurement is the entropy of its outcomes (C. E.
// Shannon, A Mathematical Theory of Communication, 1948).
package diagnosis
