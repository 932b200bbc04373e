package kind

import "github.com/lugwright/lugwright/wiring"

var linkType = elementType{
	name: "link",
	doc:  "Joins its nodes into one; it is no branch and carries no number.",
	params: []param{
		{name: "join", shape: someNodes, need: true, doc: "the nodes; a range stands for all its terminals"},
	},
	build: func(a *args) wiring.Element {
		return &wiring.Link{ElementBase: a.base, Join: a.nodes("join")}
	},
}
