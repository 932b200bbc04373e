package main

import "fmt"

func helpCommand() *command {
	return &command{
		name:     "help",
		operands: operands{name: "COMMAND", most: 1},
		short:    "say how a command is called",
		long: `Says what a command does, which flags it has and how it is called. Without a command:
lists all of them.`,
		examples: []string{"lugwright help draw"},
		run:      runHelp,
	}
}

func runHelp(c *call) exit {
	if len(c.args) == 0 {
		fmt.Fprint(c.stdout, overview())
		return clean
	}
	about := commandByName(c.args[0])
	if about == nil {
		return c.refuse("%s", noCommand(c.args[0]))
	}
	fmt.Fprint(c.stdout, about.help())
	return clean
}
