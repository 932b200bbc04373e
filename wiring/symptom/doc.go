// Package symptom says what a fault looks like to an owner on the phone: it does not move,
// it moves while plugged in, all 12 V is dead, it was flat after a week.
//
// A [Symptom] compares a cart with a fault to the same cart without, state by state, and
// yields the [Complaint]s. Package diagnosis does so for every fault of a cart and turns the
// answer round: for each complaint the causes, likeliest first.
//
// To add a symptom: one file with its function and one line in symptoms.go.
package symptom
