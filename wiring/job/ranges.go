package job

import (
	"fmt"

	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/source"
)

// expand writes out the range in a key or reference, or reports why it cannot.
func (r *reading) expand(n *source.Node) []string { return r.expandAs(n, "this name") }

// expandAs is expand where a key has a name of its own.
func (r *reading) expandAs(n *source.Node, key string) []string {
	text := r.text(n, key)
	if text == "" {
		return nil
	}
	if source.IsRange(text) && r.ranged > MostRanged {
		return nil
	}
	names, ok := source.Expand(text)
	if !r.withinRanges(len(names), n.Span) {
		return nil
	}
	if !ok {
		r.fault(n.Span, fmt.Sprintf("%s is no range", text), fmt.Sprintf("A range counts upwards and has at most %d members: G11..G16", source.MostInRange))
		return nil
	}
	return names
}

// withinRanges counts the names that ranges stand for, and reports when they are too many.
func (r *reading) withinRanges(n int, at diag.Span) bool {
	if n > 1 {
		r.ranged += n
	}
	if r.ranged > MostRanged {
		r.once("ranges", at, fmt.Sprintf("the ranges stand for more than %d names", MostRanged))
		return false
	}
	return true
}

// quietly writes out a range whose faults are reported elsewhere.
func (r *reading) quietly(text string) []string {
	if source.IsRange(text) && r.ranged > MostRanged {
		return nil
	}
	names, _ := source.Expand(text)
	if len(names) > 1 {
		r.ranged += len(names)
	}
	return names
}
