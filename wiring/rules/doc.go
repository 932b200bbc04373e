// Package rules holds the rules, one file each with its tests beside it. [All] is the one
// list; adding a rule is a file and a line there.
//
// What rules share lives in files that name what they hold: consumer.go (what uses
// current), landing.go (where a wire lands), ampacity.go (what a conductor may carry),
// words.go (how findings say things).
package rules
