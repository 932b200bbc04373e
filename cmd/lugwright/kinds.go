package main

import (
	"fmt"

	"github.com/lugwright/lugwright/wiring/catalog"
	"github.com/lugwright/lugwright/wiring/source"
)

func kindsCommand() *command {
	return &command{
		name:     "kinds",
		operands: operands{name: "KIND", most: 1},
		short:    "list the kinds of device that ship, or print one",
		long: `Lists the kinds of device that ship with the program, one line each. With a kind: prints
its file. A shop saves it under a name of its own in the folder kinds beside shop.yaml, and
puts the figures of its device in: every figure in the shipped files is invented.`,
		examples: []string{"lugwright kinds", "lugwright kinds reducer"},
		run:      runKinds,
	}
}

func runKinds(c *call) exit {
	if len(c.args) == 0 {
		listKinds(c)
		return clean
	}
	name := c.args[0]
	_, text, ok := catalog.Text(name)
	if !ok {
		return c.refuse("no kind %s%s\nlugwright kinds lists them", name, source.DidYouMean(name, catalog.Names()))
	}
	// A write error is remembered by the stream.
	_, _ = c.stdout.Write(text)
	return clean
}

func listKinds(c *call) {
	long := 0
	for _, name := range catalog.Names() {
		long = max(long, len(name))
	}
	for _, k := range catalog.Kinds() {
		fmt.Fprintf(c.stdout, "%-*s  %s\n", long, k.Name, k.Title)
	}
}
