package job

import (
	"fmt"
	"unicode/utf8"

	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/source"
)

// eachNamed reads the entries of a map of things by name.
func (r *reading) eachNamed(l *layer, section string, read func(*layer, source.Entry)) {
	n := l.get(section)
	if n == nil {
		return
	}
	seen := map[string]diag.Span{}
	for _, e := range r.entries(n, section) {
		switch {
		case utf8.RuneCountInString(e.Key.Text) > longestName:
			r.fault(e.Key.Span, fmt.Sprintf("this name is longer than %d characters", longestName))
		case r.room(section, e.Key.Span) && !r.twice(seen, e.Key.Text, e.Key.Span):
			read(l, e)
		}
	}
}

// mostNamed bounds the things of a section, in all layers together.
var mostNamed = map[string]int{"states": MostStates, "places": MostPlaces, "runs": MostRuns}

// room counts the entries of a section, and reports when they are too many.
func (r *reading) room(section string, at diag.Span) bool {
	r.named[section]++
	most, bounded := mostNamed[section]
	if !bounded || r.named[section] <= most {
		return true
	}
	r.once(section, at, fmt.Sprintf("more than %d %s", most, section))
	return false
}
