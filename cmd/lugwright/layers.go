package main

import (
	"fmt"

	"github.com/spf13/pflag"

	"github.com/lugwright/lugwright/wiring/catalog"
	"github.com/lugwright/lugwright/wiring/source"
)

func layersCommand() *command {
	var template string
	return &command{
		name:     "layers",
		operands: operands{name: "LAYER", most: 1},
		short:    "list the platforms and kits that ship, or print one",
		long: `Lists the platforms (carts before the work) and kits that ship with the program. With the name
of one: prints its file. A shop saves it in platforms/ or kits/ beside shop.yaml under a name of
its own, or begins with a commented template. Every figure in them is invented.`,
		examples: []string{"lugwright layers", "lugwright layers 48v-ac", "lugwright layers --template kit"},
		flags: func(set *pflag.FlagSet) {
			flagChoice(set, &template, "template", "print a commented template instead", "none", "platform", "kit")
		},
		run: func(c *call) exit { return runLayers(c, template) },
	}
}

func runLayers(c *call, template string) exit {
	if text, ok := catalog.Template(template); ok {
		_, _ = c.stdout.Write(text) // a write error is remembered by the stream
		return clean
	}
	if len(c.args) == 0 {
		listLayers(c)
		return clean
	}
	l, ok := catalog.LayerNamed(c.args[0])
	if !ok {
		var names []string
		for _, l := range catalog.Layers("") {
			names = append(names, l.Name)
		}
		return c.refuse("no layer %s ships%s\nlugwright layers lists them", c.args[0], source.DidYouMean(c.args[0], names))
	}
	_, _ = c.stdout.Write(l.Text)
	return clean
}

func listLayers(c *call) {
	all := catalog.Layers("")
	long := 0
	for _, l := range all {
		long = max(long, len(l.Name))
	}
	sort := ""
	for _, l := range all {
		if l.Sort != sort {
			sort = l.Sort
			fmt.Fprintf(c.stdout, "%ss:\n", sort)
		}
		fmt.Fprintf(c.stdout, "  %-*s  %s\n", long, l.Name, l.Title)
	}
}
