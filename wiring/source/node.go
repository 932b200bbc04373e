// Package source reads YAML as people write it into a plain tree in which every scalar is
// the text as written and every node knows its place. It knows nothing of wiring.
//
// The YAML library is confined to this package. What it accepts is narrowed: no anchors,
// aliases, merges, tags or further documents, no key twice in one map. What it says of
// broken files is replaced by the cause that a person can mend, at the line and column
// where the mistake stands.
package source

import "github.com/lugwright/lugwright/wiring/diag"

// NodeKind says what a node is.
type NodeKind uint8

// The kinds of node. Null is a key without a value, or with a value that could not be read;
// [Parse] has reported it, so that readers of the tree pass over it in silence.
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
