package job

import (
	"fmt"
	"strings"

	"github.com/lugwright/lugwright/wiring/colour"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/source"
)

// The readers of this file return zero after a fault, and for a key without a value, which
// the parser has reported.

// text reads a scalar as it is written.
func (r *reading) text(n *source.Node, key string) string {
	switch n.Kind {
	case source.Scalar:
		text := strings.TrimSpace(n.Text)
		if text == "" {
			r.fault(n.Span, key+" has no value: leave it out, or write unknown")
		}
		return text
	case source.List:
		r.fault(n.Span, key+" is one value, not a list")
	case source.Map:
		r.fault(n.Span, key+" is one value, not a map")
	}
	return ""
}

// items reads a list; a single value counts as a list of one.
func (r *reading) items(n *source.Node, key string) []*source.Node {
	switch n.Kind {
	case source.List:
		return n.Items
	case source.Map:
		if key == "extend" || key == "use" {
			return []*source.Node{n}
		}
		r.fault(n.Span, key+" is a list, not a map", "Write "+key+": [ … ]")
	case source.Scalar:
		return []*source.Node{n}
	}
	return nil
}

// entries reads a map of things by name.
func (r *reading) entries(n *source.Node, what string) []source.Entry {
	switch n.Kind {
	case source.Scalar, source.List:
		r.fault(n.Span, what+" is a map of names to values", "Write each name with a colon behind it")
		return nil
	}
	return n.Entries
}

// fields reads a map whose keys are known; phrase is "in wire W71".
func (r *reading) fields(n *source.Node, t table, phrase string) map[string]source.Entry {
	found, rest := r.split(n, t, phrase)
	for _, e := range rest {
		r.unknownKey(e.Key, t.names(""), phrase)
	}
	return found
}

// split parts the known keys of a map from the others.
func (r *reading) split(n *source.Node, t table, phrase string) (known map[string]source.Entry, rest []source.Entry) {
	known = make(map[string]source.Entry, len(n.Entries))
	if n.Kind == source.Scalar || n.Kind == source.List {
		r.fault(n.Span, fmt.Sprintf("a map of keys belongs here, %s", phrase), "Write {key: value}")
		return known, nil
	}
	for _, e := range n.Entries {
		name := spelling(e.Key.Text)
		if _, ok := t.find(name); !ok {
			rest = append(rest, e)
			continue
		}
		if first, twice := known[name]; twice {
			r.fault(e.Key.Span, fmt.Sprintf("%s and %s are the same key", first.Key.Text, e.Key.Text))
			continue
		}
		if e.Value.Kind != source.Null {
			known[name] = e
		}
	}
	return known, rest
}

// spelling brings the one key that has two into the one of our tables.
func spelling(key string) string {
	if key == "color" {
		return "colour"
	}
	return key
}

func (r *reading) unknownKey(key *source.Node, known []string, phrase string) {
	r.fault(key.Span, fmt.Sprintf("unknown key %s %s%s", key.Text, phrase, source.DidYouMean(key.Text, known)))
}

// amount reads a quantity of one dimension.
func (r *reading) amount(n *source.Node, key string, d quantity.Dimension) quantity.Amount {
	text := r.text(n, key)
	if text == "" {
		return quantity.Amount{}
	}
	a, err := quantity.Parse(text, d)
	if err != nil {
		r.fault(n.Span, key+" "+err.Error())
		return quantity.Amount{}
	}
	return a
}

// positive reads a quantity that must be more than nothing.
func (r *reading) positive(n *source.Node, key string, d quantity.Dimension) quantity.Amount {
	a := r.amount(n, key, d)
	if a.Known() && a.Value <= 0 {
		r.fault(n.Span, fmt.Sprintf("%s %s is nothing", key, a), "Leave it out if it is not known")
		return quantity.Amount{}
	}
	return a
}

// size reads a conductor size; auto means that the program computes it.
func (r *reading) size(n *source.Node, key string) (s quantity.Size, auto bool) {
	text := r.text(n, key)
	switch strings.ToLower(text) {
	case "", "unknown":
		return s, false
	case "auto":
		return s, true
	}
	s, err := quantity.ParseSize(text)
	if err != nil {
		r.fault(n.Span, key+" "+err.Error())
	}
	return s, false
}

// colour reads a colour.
func (r *reading) colour(n *source.Node, key string) colour.Colour {
	text := r.text(n, key)
	if text == "" || strings.EqualFold(text, "unknown") {
		return colour.Colour{}
	}
	c, err := colour.Parse(text)
	if err != nil {
		r.fault(n.Span, err.Error())
		return colour.Colour{}
	}
	return c
}

// word reads one of a few words.
func (r *reading) word(n *source.Node, key string, words ...string) string {
	text := r.text(n, key)
	if text == "" {
		return ""
	}
	for _, w := range words {
		if strings.EqualFold(w, text) {
			return w
		}
	}
	of := "one of "
	if len(words) == 2 {
		of = ""
	}
	r.fault(n.Span, fmt.Sprintf("%s %s is not %s%s%s", key, text, of, orList(words), source.DidYouMean(text, words)))
	return ""
}

// truth reads true, false, yes or no.
func (r *reading) truth(n *source.Node, key string) bool {
	switch r.word(n, key, "true", "false", "yes", "no") {
	case "true", "yes":
		return true
	}
	return false
}

// whole reads a plain whole number.
func (r *reading) whole(n *source.Node, key string) int {
	text := r.text(n, key)
	if text == "" {
		return 0
	}
	c, err := quantity.ParseCount(text)
	if err != nil {
		r.fault(n.Span, key+" "+err.Error())
	}
	return c
}

// isNone reports whether a value is the word that unsets something.
func isNone(text string) bool { return strings.EqualFold(text, "none") }
