// Lugwright checks, solves and draws the wiring of golf and utility carts that are
// converted to lithium.
//
// The program is thin: a command is a value that says how it is called and has one run
// function, one file each (check.go, draw.go, …), in the one list of commands.go. Nothing
// here knows anything about electricity or about paper; that is what packages wiring and
// render are for. Everything of the outside world comes in through a [system], so that a
// test can call [run] as a person would.
package main

import "os"

func main() { os.Exit(int(run(realSystem()))) }
