package source

import (
	"fmt"
	"strings"

	"go.yaml.in/yaml/v3"

	"github.com/lugwright/lugwright/wiring/diag"
)

// mapping turns a map into ours.
func (c *converter) mapping(n *yaml.Node, depth int) *Node {
	m := &Node{Kind: Map, Span: c.collectionSpan(n)}
	if depth > MostNesting {
		c.tooDeep(m.Span)
		return m
	}
	m.Entries = make([]Entry, 0, len(n.Content)/2)
	seen := newKeys(len(n.Content) / 2)
	var before *Node
	for i := 0; i+1 < len(n.Content); i += 2 {
		key := c.key(n.Content[i])
		value := c.node(n.Content[i+1], depth+1)
		if key == nil || strings.HasPrefix(key.Text, "x-") {
			continue
		}
		if first := seen.add(key); first != nil {
			c.duplicate(key, first)
			continue
		}
		if value.Kind == Null && !c.entryFits(n.Content[i+1], key, value, depth, before) {
			continue
		}
		before = value
		m.Entries = append(m.Entries, Entry{Key: key, Value: value})
	}
	return m
}

// key reads a key; nil if it cannot be one.
func (c *converter) key(n *yaml.Node) *Node {
	if n.Kind != yaml.ScalarNode {
		c.features(n)
		c.fault(c.text.span(n.Line, n.Column, n.Column+1), "a key is a word or a number, not a map, a list or an alias")
		return nil
	}
	c.features(n)
	at := c.text.span(n.Line, n.Column, c.scalarEnd(n))
	if c.isBroken(at) {
		return nil
	}
	key := &Node{Kind: Scalar, Text: c.written(n, at), Quoted: n.Style&quotedStyle != 0, Span: at}
	l := c.text.line(at.Line)
	before := at.Col - 1
	for isBlank(l.at(before)) {
		before--
	}
	switch {
	case !key.Quoted && key.Text == "<<":
		c.fault(at, notUsed)
	case l.at(before) == '?':
		c.fault(c.text.span(at.Line, before, at.EndCol), "keys that begin with ? are not used here", "Write "+firstWords(key.Text)+": and its value")
	case len(key.Text) > MostText:
		c.fault(at, "this key is longer than 4 kB")
	case c.bracketInKey(key):
	default:
		c.typography(key)
		if key.Kind != Null {
			return key
		}
	}
	return nil
}

// bracketInKey reports a key such as `E1 {kind`, which lacks its colon.
func (c *converter) bracketInKey(key *Node) bool {
	word, _, found := strings.Cut(key.Text, "{")
	if word = strings.TrimSpace(word); key.Quoted || !found || word == "" {
		return false
	}
	c.fault(key.Span, "put a colon and a space in front of the {: "+firstWords(word)+": {…}")
	return true
}

func (c *converter) duplicate(key, first *Node) {
	f := Fault(key.Span, fmt.Sprintf("%s stands twice in this map, on lines %d and %d", key.Text, first.Span.Line, key.Span.Line))
	if key.Span.Line == first.Span.Line {
		f.Message = fmt.Sprintf("%s stands twice in this map, on line %d", key.Text, key.Span.Line)
	}
	f.Related = []diag.Place{{Span: first.Span, Label: "the first " + key.Text}}
	c.add(f)
}

// entryFits reports a key without a value, and says whether it stays in the tree as Null:
// a word that is no key at all does not.
func (c *converter) entryFits(n *yaml.Node, key, value *Node, depth int, before *Node) bool {
	l := c.text.line(key.Span.Line)
	behind := c.text.span(key.Span.Line, key.Span.EndCol, l.width()+1)
	if !isNull(n) || c.featured(n) || c.isBroken(value.Span) || value.Span.Line == behind.Line && c.isBroken(behind) {
		return true // reported where it stands
	}
	value.Span = key.Span
	if l.at(l.skipBlanks(key.Span.EndCol)) != ':' {
		c.noColon(key, before)
		return false
	}
	c.noValue(key, n, depth)
	return true
}

// keys finds a key that stands twice, in small maps without a table.
type keys struct {
	few  []*Node
	many map[string]*Node
}

const fewKeys = 12

func newKeys(n int) *keys {
	if n <= fewKeys {
		return &keys{few: make([]*Node, 0, n)}
	}
	return &keys{many: make(map[string]*Node, n)}
}

// add notes a key and returns the earlier one of the same text, nil if there is none.
func (k *keys) add(key *Node) *Node {
	if k.many != nil {
		first := k.many[key.Text]
		if first == nil {
			k.many[key.Text] = key
		}
		return first
	}
	for _, first := range k.few {
		if first.Text == key.Text {
			return first
		}
	}
	k.few = append(k.few, key)
	return nil
}
