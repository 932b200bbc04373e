package job

import (
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/source"
)

// took keeps what a parser found. If it seems to have left out more than single values, it
// remembers that.
func (r *reading) took(root *source.Node, findings []diag.Finding) {
	r.findings = append(r.findings, findings...)
	errors := 0
	for _, f := range findings {
		if f.Level == diag.Error {
			errors++
		}
	}
	if errors > nulls(root, 0) || errors > 0 && sectionLost(root) {
		r.gaps = true
	}
}

// nulls counts the values that could not be read; each has had its fault reported.
func nulls(n *source.Node, depth int) int {
	if n == nil || depth > source.MostNesting {
		return 0
	}
	count := 0
	if n.Kind == source.Null {
		count++
	}
	for _, item := range n.Items {
		count += nulls(item, depth+1)
	}
	for _, e := range n.Entries {
		count += nulls(e.Value, depth+1)
	}
	return count
}

// sectionLost reports whether a whole section or a whole part of a layer is missing.
func sectionLost(root *source.Node) bool {
	for _, e := range root.Entries {
		if e.Value.Kind == source.Null {
			return true
		}
		for _, inner := range e.Value.Entries {
			if e.Key.Text == "parts" && inner.Value.Kind == source.Null {
				return true
			}
		}
	}
	return false
}
