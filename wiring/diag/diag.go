// Package diag holds what can be said about an input or about a cart's wiring: a finding
// with its level, its words and the places that it speaks of. A finding is data; printing
// it is someone else's work.
package diag

import "sort"

// Level ranks findings as SARIF 2.1.0 does.
type Level uint8

// Levels, lowest first.
const (
	Note    Level = iota + 1 // worth knowing
	Warning                  // mend before hand-over
	Error                    // do not energise
)

// String returns the SARIF word of the level.
func (l Level) String() string {
	switch l {
	case Note:
		return "note"
	case Warning:
		return "warning"
	case Error:
		return "error"
	}
	return "none"
}

// Span is a stretch of one line of a file. Lines and columns count from 1, columns in
// characters (not bytes); EndCol is the column behind the last character. The zero Span
// means "no place".
type Span struct {
	File   string // as the user would name it, with forward slashes
	Line   int
	Col    int
	EndCol int
}

// Known reports whether the span points anywhere.
func (s Span) Known() bool { return s.Line > 0 }

// Before orders spans by file, line and column.
func (s Span) Before(t Span) bool {
	if s.File != t.File {
		return s.File < t.File
	}
	if s.Line != t.Line {
		return s.Line < t.Line
	}
	return s.Col < t.Col
}

// Place is a span with a word on what stands there.
type Place struct {
	Span  Span
	Label string // "W37 is defined here"
}

// Finding is one thing that is wrong or worth knowing.
type Finding struct {
	Rule     string   // id of the rule, or "input" for a fault of the file itself
	Level    Level    //
	Message  string   // one sentence: what is wrong, with names
	Detail   string   // what was computed against what limit, with units; may be empty
	Advice   string   // what to do; may be empty
	At       Span     // the value at fault
	Related  []Place  // other places that the message speaks of
	Subjects []string // designations, wire numbers and terminals it is about, most important first: what a waiver may name
	States   []string // operating states in which it holds; empty: all, or no matter
	Waived   *Waiver  // set when the job waives it, with the reason
}

// Waiver is a job's written reason for living with a finding.
type Waiver struct {
	Rule, At, Reason, By string
	Span                 Span
}

// Sort orders findings by place, then level (worst first), rule and message, so that one
// input always gives one listing.
func Sort(fs []Finding) {
	sort.SliceStable(fs, func(i, j int) bool {
		a, b := fs[i], fs[j]
		if a.At != b.At {
			return a.At.Before(b.At) || (!b.At.Before(a.At) && a.At.EndCol < b.At.EndCol)
		}
		if a.Level != b.Level {
			return a.Level > b.Level
		}
		if a.Rule != b.Rule {
			return a.Rule < b.Rule
		}
		return a.Message < b.Message
	})
}

// Worst returns the highest level among findings that are not waived, 0 for none.
func Worst(fs []Finding) Level {
	var worst Level
	for _, f := range fs {
		if f.Waived == nil && f.Level > worst {
			worst = f.Level
		}
	}
	return worst
}
