// Package failuremode sets the single faults of a cart as an analysis of failure modes and
// effects, with the columns of IEC 60812: item, failure mode, cause, effect at the place,
// effect on the cart, how it is detected, what limits it, severity and occurrence.
//
// Effects are not guessed: each fault is settled in every state, and the row says what
// changed. Severity and occurrence are classes of our own: common practice, no published
// source. [Analyse] does the whole cart; Rows may be narrowed to one part.
package failuremode
