package main

import (
	"errors"
	"fmt"
	"strings"

	"github.com/spf13/pflag"

	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/source"
)

// run is the whole program: from arguments to an exit code. Whatever a command decides,
// output that was lost is told and counts.
func run(s system) exit {
	out := &stickyWriter{to: s.stdout.Writer}
	s.stdout.Writer = out
	code := dispatch(s)
	if out.err != nil {
		fmt.Fprintf(s.stderr, "lugwright: standard output: %v\n", out.err)
		return unwritten
	}
	return code
}

// dispatch finds the command that is called and runs it.
func dispatch(s system) exit {
	if len(s.args) == 0 {
		fmt.Fprint(s.stderr, overview())
		return unusable
	}
	name, rest := s.args[0], s.args[1:]
	switch name {
	case "-h", "--help":
		name = "help"
	case "--version":
		name = "version"
	}
	c := commandByName(name)
	if c == nil {
		fmt.Fprintf(s.stderr, "lugwright: %s\n", noCommand(name))
		return unusable
	}
	return start(&call{system: s, command: c}, rest)
}

// noCommand says that there is no command of a name, and where to look.
func noCommand(name string) string {
	if strings.HasPrefix(name, "-") {
		return fmt.Sprintf("%s stands before the command: write lugwright COMMAND [flags]", name)
	}
	return fmt.Sprintf("no command %s%s", name, source.DidYouMean(name, commandNames())) +
		"\nlugwright help lists the commands"
}

// start reads the flags of a call and runs it.
func start(c *call, args []string) exit {
	set := c.command.flagSet()
	if err := set.Parse(args); errors.Is(err, pflag.ErrHelp) {
		fmt.Fprint(c.stdout, c.command.help())
		return clean
	} else if err != nil {
		return badCall(c, flagFault(set, err))
	}
	c.args = set.Args()
	if fault := c.command.operands.fault(c.args); fault != "" {
		return badCall(c, fault)
	}
	return c.command.run(c)
}

// badCall says what is wrong with a call, and how it is called.
func badCall(c *call, fault string) exit {
	c.complain("%s", fault)
	fmt.Fprintf(c.stderr, "usage: %s\n", c.command.usage())
	return unusable
}

// flagFault puts the error of the flag parser into words of ours.
func flagFault(set *pflag.FlagSet, err error) string {
	var (
		unknown *pflag.NotExistError
		missing *pflag.ValueRequiredError
		invalid *pflag.InvalidValueError
		unclear *quantity.Error
	)
	switch {
	case errors.As(err, &invalid) && errors.As(err, &unclear):
		return fmt.Sprintf("--%s: %v", invalid.GetFlag().Name, unclear)
	case errors.As(err, &unknown) && unknown.GetSpecifiedShortnames() != "":
		return fmt.Sprintf("no flag -%s", unknown.GetSpecifiedName())
	case errors.As(err, &unknown):
		return fmt.Sprintf("no flag --%s", unknown.GetSpecifiedName()) +
			didYouMeanFlag(set, unknown.GetSpecifiedName())
	case errors.As(err, &missing):
		return fmt.Sprintf("--%s needs a value: %s", missing.GetFlag().Name, valueHelp(missing.GetFlag()))
	case errors.As(err, &invalid):
		return fmt.Sprintf("--%s takes %s, not %q", invalid.GetFlag().Name, valueHelp(invalid.GetFlag()), invalid.GetValue())
	}
	return err.Error()
}

func didYouMeanFlag(set *pflag.FlagSet, name string) string {
	var names []string
	set.VisitAll(func(f *pflag.Flag) { names = append(names, "--"+f.Name) })
	return source.DidYouMean("--"+name, names)
}
