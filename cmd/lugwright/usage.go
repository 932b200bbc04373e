package main

import (
	"fmt"
	"strings"
)

// helpWidth is where lines of help break; text within a command's help is set by hand.
const helpWidth = 90

// overview is the help of the program as a whole.
func overview() string {
	var b strings.Builder
	b.WriteString("Lugwright checks, solves and draws the wiring of golf and utility carts.\n\n" +
		"usage: lugwright COMMAND ...\n\ncommands:\n")
	all := commands()
	long := 0
	for _, c := range all {
		long = max(long, len(c.name))
	}
	for _, c := range all {
		fmt.Fprintf(&b, "  %-*s  %s\n", long, c.name, c.short)
	}
	b.WriteString("\nexit codes:\n" + exitHelp + "\nlugwright help COMMAND says more about one.\n")
	return b.String()
}

// help is everything about one command.
func (c *command) help() string {
	var b strings.Builder
	fmt.Fprintf(&b, "usage: %s\n\n%s\n", c.usage(), strings.TrimSpace(c.long))
	if c.flags != nil {
		b.WriteString("\nflags:\n" + c.flagSet().FlagUsagesWrapped(helpWidth))
	}
	b.WriteString("\nexample:\n")
	for _, e := range c.examples {
		b.WriteString("  " + e + "\n")
	}
	return b.String()
}
