package main

import (
	"fmt"

	"github.com/lugwright/lugwright/wiring/source"
)

// version of the program, after Semantic Versioning.
const version = "0.1.0"

func versionCommand() *command {
	return &command{
		name:     "version",
		short:    "say which version this is",
		long:     `Says which version of the program this is, and which format of files it reads.`,
		examples: []string{"lugwright version"},
		run: func(c *call) exit {
			fmt.Fprintf(c.stdout, "lugwright %s\nreads format %d\n", version, source.Format)
			return clean
		},
	}
}
