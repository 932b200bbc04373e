// Package source reads YAML as people write it into a plain tree in which every scalar is
// the text as written and every node knows its place. It knows nothing of wiring.
package source

import "github.com/lugwright/lugwright/wiring/diag"

// NodeKind says what a node is.
type NodeKind uint8

// The kinds of node. Null is a key without a value.
const (
	Null NodeKind = iota
	Scalar
	List
	Map
)

// Node is one value of a file.
type Node struct {
	Kind    NodeKind
	Text    string  // Scalar: the text as written ("on", "012", "1.10"), quotes removed
	Quoted  bool    // Scalar: it stood in quotes
	Items   []*Node // List
	Entries []Entry // Map, in the order of the file
	Span    diag.Span
}

// Entry is one key of a map with its value.
type Entry struct {
	Key   *Node // always a Scalar
	Value *Node // never nil; Null if nothing was written
}

// Get returns the value under key, or nil.
func (n *Node) Get(key string) *Node {
	if n == nil {
		return nil
	}
	for _, e := range n.Entries {
		if e.Key.Text == key {
			return e.Value
		}
	}
	return nil
}
