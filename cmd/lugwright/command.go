package main

import (
	"fmt"
	"strings"

	"github.com/spf13/pflag"
)

// command is one thing that the program can do.
type command struct {
	name     string
	operands operands
	short    string   // one line, for the list of commands
	long     string   // what it does, for its own help
	examples []string // calls that work from the top folder of the repository
	flags    func(*pflag.FlagSet)
	run      func(*call) exit
}

// operands says what stands behind a command besides flags.
type operands struct {
	name        string // "JOB"; empty: none
	least, most int    // how many; most < 0: any number
}

// String is how usage shows the operands: "JOB", "[RULE]", "JOB...".
func (o operands) String() string {
	word := o.name
	if o.most < 0 {
		word += "..."
	}
	if o.least == 0 && word != "" {
		word = "[" + word + "]"
	}
	return word
}

// fault says what is wrong with a number of operands, "" if nothing.
func (o operands) fault(given []string) string {
	switch {
	case len(given) < o.least:
		return "name a " + o.name
	case o.name == "" && len(given) > 0:
		return fmt.Sprintf("takes nothing but flags, not %q", given[0])
	case o.most >= 0 && len(given) > o.most:
		return fmt.Sprintf("takes one %s, not also %q", o.name, given[o.most])
	}
	return ""
}

// usage is the first line of a command's help.
func (c *command) usage() string {
	words := []string{"lugwright", c.name}
	if o := c.operands.String(); o != "" {
		words = append(words, o)
	}
	if c.flags != nil {
		words = append(words, "[flags]")
	}
	return strings.Join(words, " ")
}

// flagSet makes the flags of one call.
func (c *command) flagSet() *pflag.FlagSet {
	set := pflag.NewFlagSet(c.name, pflag.ContinueOnError)
	set.SortFlags = false
	set.Usage = func() {}
	if c.flags != nil {
		c.flags(set)
	}
	return set
}

// call is one call of a command.
type call struct {
	system
	command *command
	args    []string // operands
}

// refuse says on standard error why the call or its input cannot be used.
func (c *call) refuse(format string, args ...any) exit {
	c.complain(format, args...)
	return unusable
}

// complain writes one line to standard error, in the name of the command.
func (c *call) complain(format string, args ...any) {
	fmt.Fprintf(c.stderr, "lugwright %s: %s\n", c.command.name, fmt.Sprintf(format, args...))
}
