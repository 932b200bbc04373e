package symbol

import (
	"slices"
	"strings"
)

// Terminals are told apart by the names that the trade and DIN EN 50005 / DIN 72552 give
// them; where names say nothing, their order decides.

// plain returns a name in lower case without the marks that only separate.
func plain(name string) string {
	return strings.NewReplacer(" ", "", "_", "", ".", "").Replace(strings.ToLower(name))
}

// index returns which terminal has one of the names, or -1.
func index(ask Ask, names ...string) int {
	for i, t := range ask.Terminals {
		if slices.Contains(names, plain(t.Name)) {
			return i
		}
	}
	return -1
}

// isPositive reports whether a name is that of the positive side of a device.
func isPositive(name string) bool {
	n := plain(name)
	return strings.HasSuffix(n, "+") || n == "pos" || n == "positive"
}

// isNegative reports whether a name is that of the negative side of a device.
func isNegative(name string) bool {
	n := plain(name)
	return strings.HasSuffix(n, "-") || strings.HasSuffix(n, "−") || n == "neg" || n == "negative"
}

// reversed reports whether the second of two terminals is the positive one, or the anode.
func reversed(ask Ask) bool {
	first, second := ask.Terminals[0].Name, ask.Terminals[1].Name
	if isNegative(first) || isPositive(second) {
		return !isPositive(first)
	}
	k := []string{"k", "c", "cathode"}
	a := []string{"a", "anode"}
	return slices.Contains(k, plain(first)) && !slices.Contains(k, plain(second)) ||
		slices.Contains(a, plain(second)) && !slices.Contains(a, plain(first))
}
