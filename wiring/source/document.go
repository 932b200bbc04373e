package source

import (
	"fmt"
	"strings"

	"go.yaml.in/yaml/v3"

	"github.com/lugwright/lugwright/wiring/diag"
)

const notUsed = "anchors, aliases, merges, tags and further documents are not used here"

// document turns the library's tree into ours.
func (p *parsing) document(root *yaml.Node) *Node {
	if root.Kind != yaml.MappingNode {
		p.notAMap(root)
		return nil
	}
	c := &converter{parsing: p, text: p.text, broken: map[int][]cause{}}
	for _, cause := range p.causes {
		c.broken[cause.line] = append(c.broken[cause.line], cause)
	}
	tree := c.node(root, 1)
	if p.nested {
		return nil
	}
	return tree
}

func (p *parsing) notAMap(root *yaml.Node) {
	at := p.text.whole(root.Line)
	text := p.text.line(root.Line).cut(at.Col, at.EndCol)
	if word, _, found := strings.Cut(text, ":"); found && root.Kind == yaml.ScalarNode && !strings.Contains(word, " ") {
		p.fault(at, "put a space after the colon: "+spaced(text))
		return
	}
	p.fault(at, "a file is a map: it begins with a key, a colon and a value, such as job: TP-14")
}

func (p *parsing) furtherDocument(v verdict) {
	if v.extra == nil {
		return
	}
	line := v.extra.Line
	for line > 1 && !strings.HasPrefix(p.text.line(line).text, "---") {
		line--
	}
	p.fault(p.text.whole(line), notUsed, "Put the second document into a file of its own")
}

// converter turns nodes of the library into ours.
type converter struct {
	*parsing
	text   *text
	broken map[int][]cause // by line: what has been reported there
}

func (c *converter) node(n *yaml.Node, depth int) *Node {
	c.features(n)
	switch n.Kind {
	case yaml.MappingNode:
		return c.mapping(n, depth)
	case yaml.SequenceNode:
		return c.list(n, depth)
	case yaml.ScalarNode:
		return c.scalar(n)
	}
	return &Node{Span: c.text.span(n.Line, n.Column, n.Column+1+len(n.Value))} // an alias
}

// features refuses what YAML offers and nobody needs here.
func (c *converter) features(n *yaml.Node) {
	if !c.featured(n) {
		return
	}
	l := c.text.line(n.Line)
	end := n.Column
	for r := l.at(end); r != 0 && !isBlank(r) && !strings.ContainsRune(",]}", r); r = l.at(end) {
		end++
	}
	at := c.text.span(n.Line, n.Column, end)
	c.fault(at, notUsed, fmt.Sprintf("Text that begins with %c goes in quotes", l.at(n.Column)))
}

// featured reports whether an anchor, an alias or a tag is written at a node. The tag "!"
// alone is no tag to the library.
func (c *converter) featured(n *yaml.Node) bool {
	return n.Kind == yaml.AliasNode || n.Anchor != "" || n.Style&yaml.TaggedStyle != 0 ||
		n.Kind == yaml.ScalarNode && n.Style == 0 && c.text.line(n.Line).at(n.Column) == '!'
}

func (c *converter) list(n *yaml.Node, depth int) *Node {
	list := &Node{Kind: List, Span: c.collectionSpan(n)}
	if depth > MostNesting {
		c.tooDeep(list.Span)
		return list
	}
	list.Items = make([]*Node, 0, len(n.Content))
	for _, child := range n.Content {
		item := c.node(child, depth+1)
		if item.Kind == Null {
			c.emptyItem(child)
			continue
		}
		list.Items = append(list.Items, item)
	}
	return list
}

func (c *converter) emptyItem(n *yaml.Node) {
	at := c.text.span(n.Line, n.Column-1, n.Column+len(n.Value))
	if n.Kind == yaml.ScalarNode && !c.isBroken(at) {
		c.fault(at, "this item of the list is empty", "Delete it")
	}
}

// collectionSpan reaches from the beginning of a map or list to its end, or to the end of
// its first line.
func (c *converter) collectionSpan(n *yaml.Node) diag.Span {
	l := c.text.line(n.Line)
	end := l.end
	if n.Style&yaml.FlowStyle != 0 {
		if closed := c.flowEnd(n); closed > 0 {
			end = closed
		}
	}
	return c.text.span(n.Line, n.Column, end)
}

// flowEnd returns the column behind the closing bracket of a map or list between brackets,
// 0 if it ends on another line.
func (c *converter) flowEnd(n *yaml.Node) int {
	l := c.text.line(n.Line)
	col := n.Column + 1
	if len(n.Content) > 0 {
		last := n.Content[len(n.Content)-1]
		if last.Line != n.Line {
			return 0
		}
		switch {
		case last.Kind == yaml.ScalarNode:
			col = c.scalarEnd(last)
		case last.Style&yaml.FlowStyle != 0 && last.Kind != yaml.AliasNode:
			col = c.flowEnd(last)
		default:
			return 0
		}
	}
	for col > 0 && (isBlank(l.at(col)) || isOddBlank(l.at(col)) || l.at(col) == ',' || l.at(col) == ':') {
		col++
	}
	if r := l.at(col); r == '}' || r == ']' {
		return col + 1
	}
	return 0
}
