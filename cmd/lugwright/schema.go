package main

import "github.com/lugwright/lugwright/wiring/job"

func schemaCommand() *command {
	return &command{
		name:  "schema",
		short: "print the JSON Schema of the file format",
		long: `Prints the JSON Schema (draft 2020-12) of jobs, platforms, kits, add-ons and shops, for editors
that complete and check YAML. It knows keys and forms of values; check knows the rest.`,
		examples: []string{"lugwright schema"},
		run: func(c *call) exit {
			_, _ = c.stdout.Write(job.Schema()) // a write error is remembered by the stream
			return clean
		},
	}
}
