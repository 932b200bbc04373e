package job

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
)

// mostNumber is the longest number of a wire, in characters: what a sleeve holds.
const mostNumber = 12

var numberForm = regexp.MustCompile(`^[A-Za-z0-9-]*[0-9][A-Za-z0-9-]*$`)

func (r *reading) goodNumber(e entry) bool {
	switch {
	case len(e.name) > mostNumber:
		r.fault(e.key.Span, fmt.Sprintf("%s is longer than the %d characters of a wire number", e.name, mostNumber))
	case !numberForm.MatchString(e.name):
		r.fault(e.key.Span, fmt.Sprintf("%s is no wire number", e.name), "Write letters, digits and hyphens, at least one digit: W37, 12A")
	default:
		return true
	}
	return false
}

// findWire is the live wire of a number, nil if there is none.
func (r *reading) findWire(number string) *draftWire { return r.wires[wiring.Fold(number)] }

// isPart reports a number that is a part's designation.
func (r *reading) isPart(e *entry) bool {
	for _, d := range r.parts[wiring.Fold(e.name)] {
		if d.gone > e.index {
			f := r.fault(e.key.Span, fmt.Sprintf("%s is a part already (%s): parts and wires share their names", e.name, where(d.part.At)))
			f.Related = []diag.Place{{Span: d.part.At, Label: e.name + " is defined here"}}
			return true
		}
	}
	return false
}

// isGone reports a wire that one layer removes and defines.
func (r *reading) isGone(e *entry) bool {
	at, gone := e.goneNames[wiring.Fold(e.name)]
	if gone {
		f := r.fault(e.key.Span, fmt.Sprintf("%s is removed and defined in one layer", e.name),
			"Give the new wire another number, so that the work order can tell them apart")
		f.Related = []diag.Place{{Span: at, Label: "removed here"}}
	}
	return gone
}

func (r *reading) numberTaken(e *entry, w *draftWire) {
	if r.flooded() {
		r.unlisted++
		return
	}
	f := r.fault(e.key.Span, fmt.Sprintf("%s exists: %s (%s)", w.name(), w.route(), where(w.wire.At)),
		fmt.Sprintf("To move it give only the end that moves; a new wire takes a free number (next: %s)", r.nextWire(e)))
	f.Related = []diag.Place{{Span: w.wire.At, Label: w.name() + " is defined here"}}
}

// nextWire is the first free number after the highest that the layer gives.
func (r *reading) nextWire(e *entry) string {
	letters := lettersOf(e.name)
	own := r.ownWires(e.layer)
	highest := e.highest[letters]
	if wiring.Less(highest, e.name) {
		highest = e.name
	}
	return r.nextFree(letters, highest, func(candidate string) bool {
		return r.findWire(candidate) == nil && len(r.parts[wiring.Fold(candidate)]) == 0 && own[wiring.Fold(candidate)] == ""
	})
}

// lettersOf is what stands in front of the number of a designation or wire: "W" of W37B.
func lettersOf(name string) string {
	return strings.TrimRight(strings.TrimRight(name, "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz"), "0123456789")
}

// taken is a stretch of numbers none of which is free.
type taken struct{ first, last int }

// nextFree counts upwards from the number in name to the first that is free, past what it
// has found taken before.
func (r *reading) nextFree(letters, name string, free func(string) bool) string {
	start := 0
	for _, c := range strings.TrimPrefix(name, letters) {
		if c < '0' || c > '9' || start > 1_000_000 {
			break
		}
		start = start*10 + int(c-'0')
	}
	n := start + 1
	known := r.taken[letters]
	if known.first <= n && n <= known.last {
		start, n = known.first, known.last
	}
	for {
		if candidate := letters + strconv.Itoa(n); free(candidate) {
			r.taken[letters] = taken{start, n}
			return candidate
		}
		n++
	}
}

// definesWire reports whether a layer itself has a wire of that number.
func (r *reading) definesWire(l *layer, number string) bool {
	return r.ownWires(l)[wiring.Fold(number)] != ""
}

// ownWires are the wires that a layer speaks of, by folded number.
func (r *reading) ownWires(l *layer) map[string]string {
	if l.numbers != nil {
		return l.numbers
	}
	l.numbers, l.highest = map[string]string{}, map[string]string{}
	if n := l.get("wires"); n != nil {
		for _, e := range n.Entries {
			for _, name := range r.quietly(e.Key.Text) {
				name = l.name(name)
				l.numbers[wiring.Fold(name)] = name
				if letters := lettersOf(name); wiring.Less(l.highest[letters], name) {
					l.highest[letters] = name
				}
			}
		}
	}
	return l.numbers
}
