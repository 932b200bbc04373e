package job

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/source"
)

// cappedWord is the end of a wire that lands nowhere, insulated and tied back.
const cappedWord = "capped"

var (
	pointForm    = regexp.MustCompile(`^[a-z][a-z0-9+-]*$`)
	likePartForm = regexp.MustCompile(`^[A-Za-z]{1,3}[0-9]+[A-Za-z]?$`)
)

// scope is where a reference stands: in which layer, and what speaks in messages.
type scope struct {
	*layer
	who string // "wire W71: "; may be empty
	at  diag.Span
}

// end reads a terminal, a point or the word capped.
func (r *reading) end(text string, s scope) draftEnd {
	e := draftEnd{state: unknown, at: s.at, layer: s.index}
	if strings.EqualFold(text, cappedWord) {
		e.state = capped
		return e
	}
	if !strings.Contains(text, ".") {
		if done := r.pointEnd(text, s, &e); done {
			return e
		}
	}
	if t := r.terminal(text, s); t != nil {
		e.state, e.terminal = landed, t
	}
	return e
}

// pointEnd lands an end on a named point; false if the text names none.
func (r *reading) pointEnd(text string, s scope, e *draftEnd) bool {
	e.point = text
	if given, ok := s.given[text]; ok {
		*e = r.givenPoint(given, s, *e)
		return true
	}
	p, ok := r.points[text]
	switch {
	case !ok && s.lacks(text):
		e.state = unmet
	case !ok:
		e.point = ""
		return false
	case p.broken:
	case p.terminal == nil:
		e.state = absent
	default:
		e.state, e.terminal = landed, p.terminal
	}
	return true
}

// lacks reports whether a layer needs a point and has not found it.
func (l *layer) lacks(point string) bool {
	for _, n := range l.Needs {
		if n.Point == point {
			return !n.Met
		}
	}
	return false
}

// givenPoint lands an end on a point that the user of its layer gave.
func (r *reading) givenPoint(given source.Entry, s scope, e draftEnd) draftEnd {
	text := r.text(given.Value, "point "+given.Key.Text)
	switch {
	case text == "":
	case isNone(text):
		e.state = absent
	default:
		in := r.end(text, scope{layer: s.user, who: "point " + given.Key.Text + ": ", at: given.Value.Span})
		e.state, e.terminal = in.state, in.terminal
	}
	return e
}

// terminal finds "G1.+", or the terminal of a one-terminal part by the part alone. It
// returns nil after a fault.
func (r *reading) terminal(text string, s scope) *wiring.Terminal {
	name, want, dotted := strings.Cut(s.name(text), ".")
	d := r.partFor(name, s.index)
	switch {
	case d == nil:
		r.noPart(text, name, dotted, s)
		return nil
	case !d.built:
		return nil
	case d.gone <= s.index && d.heir == nil:
		f := r.fault(s.at, fmt.Sprintf("%s%s was removed by %s", s.who, d.part.Designation, r.layers[d.gone]))
		f.Related = []diag.Place{{Span: d.goneAt, Label: "removed here"}}
		return nil
	case !dotted:
		return r.onlyTerminal(d.part, s)
	}
	if t := d.part.Terminal(want); t != nil {
		return t
	}
	r.noTerminal(d.part, want, s)
	return nil
}

// partFor is the part that a name means in a layer: the one that is there, else one that
// a higher layer brings, else the last that was removed.
func (r *reading) partFor(name string, layer int) *draftPart {
	list := r.parts[wiring.Fold(name)]
	for _, d := range list {
		if d.live(layer) || d.born > layer {
			return d
		}
	}
	if len(list) == 0 {
		return nil
	}
	return list[len(list)-1]
}

// onlyTerminal is the terminal of a part that has one. Of others the message offers those
// that take a wire.
func (r *reading) onlyTerminal(p *wiring.Part, s scope) *wiring.Terminal {
	if len(p.Terminals) == 1 {
		return p.Terminals[0]
	}
	var offers []string
	for _, t := range p.Terminals {
		if t.Form.Type != wiring.Port {
			offers = append(offers, p.Designation+"."+t.Name)
		}
	}
	switch {
	case len(p.Terminals) == 0:
		r.fault(s.at, fmt.Sprintf("%s%s (%s) has no terminals", s.who, p.Designation, p.Kind.Name))
	case len(offers) == 1 || len(offers) == 2:
		r.fault(s.at, fmt.Sprintf("%s%s has several terminals: write %s", s.who, p.Designation, orList(offers)))
	default:
		r.fault(s.at, fmt.Sprintf("%s%s has several terminals: write %[2]s.%s, or another of %s",
			s.who, p.Designation, p.Terminals[0].Name, terminalList(p)))
	}
	return nil
}

// noPart reports a reference to nothing.
func (r *reading) noPart(text, name string, dotted bool, s scope) {
	if !dotted && pointForm.MatchString(text) && !likePartForm.MatchString(text) {
		r.noPoint(text, s)
		return
	}
	if r.faulty[wiring.Fold(name)] {
		return
	}
	r.lost(s.at, fmt.Sprintf("%sno part %s%s", s.who, name, r.alike(name, r.partNames)))
}

func (r *reading) noPoint(text string, s scope) {
	if r.flooded() {
		r.unlisted++
		return
	}
	known := r.pointNames(s.layer)
	switch meant := r.meant(text, func() []string { return known }); {
	case len(known) == 0:
		r.lost(s.at, fmt.Sprintf("%sno point %s: no layer below defines points", s.who, text))
	case meant != "":
		r.lost(s.at, fmt.Sprintf("%sno point %s%s", s.who, text, meant), "Known here are "+strings.Join(known, " "))
	default:
		r.lost(s.at, fmt.Sprintf("%sno point %s: known here are %s", s.who, text, strings.Join(known, " ")))
	}
}

// alike is ": did you mean G9?" for G99; names that do not begin alike are other things,
// and not meant.
func (r *reading) alike(name string, candidates func() []string) string {
	return r.meant(name, func() []string {
		var alike []string
		for _, c := range candidates() {
			if len(name) > 1 && len(c) > 1 && wiring.Fold(c[:2]) == wiring.Fold(name[:2]) {
				alike = append(alike, c)
			}
		}
		return alike
	})
}

// partNames lists the parts of the finished harness.
func (r *reading) partNames() []string {
	names := make([]string, len(r.h.Parts))
	for i, p := range r.h.Parts {
		names[i] = p.Designation
	}
	return names
}

func (r *reading) noTerminal(p *wiring.Part, want string, s scope) {
	names := make([]string, 0, len(p.Terminals))
	for _, t := range p.Terminals {
		names = append(names, t.Name)
	}
	message := fmt.Sprintf("%s%s (%s) has no terminal %s", s.who, p.Designation, p.Kind.Name, want)
	if meant := source.Suggest(want, names); meant != "" && strings.Trim(want, "0123456789") != "" && len(want) > 1 {
		r.fault(s.at, message+": did you mean "+meant+"?", "It has "+terminalList(p))
		return
	}
	r.fault(s.at, message+": it has "+terminalList(p))
}

// terminalList names the terminals of a part, runs of numbers drawn together: "+ - 1..8 n".
func terminalList(p *wiring.Part) string {
	var words []string
	for i := 0; i < len(p.Terminals); i++ {
		name := p.Terminals[i].Name
		letters := strings.TrimRight(name, "0123456789")
		first, err := strconv.Atoi(name[len(letters):])
		last := first
		for err == nil && i+1 < len(p.Terminals) && p.Terminals[i+1].Name == letters+strconv.Itoa(last+1) {
			i++
			last++
		}
		if last > first+1 {
			name = fmt.Sprintf("%s%d..%d", letters, first, last)
		} else if last > first {
			words = append(words, name)
			name = letters + strconv.Itoa(last)
		}
		words = append(words, name)
	}
	return strings.Join(words, " ")
}
