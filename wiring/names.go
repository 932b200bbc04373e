package wiring

import (
	"sort"
	"strings"
)

// Fold brings a name into the form in which names are compared: without regard to case.
func Fold(name string) string { return strings.ToLower(name) }

// Less is the natural order of designations and wire numbers: letters first, then numbers
// by value, so that W9 stands before W10.
func Less(a, b string) bool {
	i, j := 0, 0
	for i < len(a) && j < len(b) {
		if isDigit(a[i]) && isDigit(b[j]) {
			na, ni := number(a, i)
			nb, nj := number(b, j)
			if na != nb {
				return len(na) < len(nb) || len(na) == len(nb) && na < nb
			}
			i, j = ni, nj
			continue
		}
		if a[i] != b[j] {
			return a[i] < b[j]
		}
		i++
		j++
	}
	if rest := (len(a) - i) - (len(b) - j); rest != 0 {
		return rest < 0
	}
	return a < b
}

func isDigit(c byte) bool { return '0' <= c && c <= '9' }

// number returns the digits at s[i:] without leading zeros, and where they end.
func number(s string, i int) (digits string, end int) {
	end = i
	for end < len(s) && isDigit(s[end]) {
		end++
	}
	digits = strings.TrimLeft(s[i:end], "0")
	return digits, end
}

func cutRef(ref string) (part, terminal string, dotted bool) { return strings.Cut(ref, ".") }

func sortParts(ps []*Part) {
	sort.SliceStable(ps, func(i, j int) bool { return Less(ps[i].Designation, ps[j].Designation) })
}

// sortWires puts numbered wires first, then the leads by their terminals.
func sortWires(ws []*Wire) {
	sort.SliceStable(ws, func(i, j int) bool { return wireLess(ws[i], ws[j]) })
}

func wireLess(a, b *Wire) bool {
	if (a.Number == "") != (b.Number == "") {
		return a.Number != ""
	}
	return Less(a.Name(), b.Name())
}

// SortRemoved puts removed wires in the order of wires.
func SortRemoved(rs []RemovedWire) {
	sort.SliceStable(rs, func(i, j int) bool { return wireLess(rs[i].Wire, rs[j].Wire) })
}
