package main

import (
	"github.com/spf13/pflag"

	"github.com/lugwright/lugwright/wiring/quantity"
)

// amountFlag is the value of a flag that takes a quantity with its unit, as a job has it:
// "10 A", "4 ft 6 in".
type amountFlag struct {
	to      *quantity.Amount
	want    quantity.Dimension
	example string
}

func (f amountFlag) String() string {
	if f.to == nil || !f.to.Known() {
		return ""
	}
	return f.to.String()
}

// Type is what help shows behind the flag.
func (f amountFlag) Type() string { return f.want.String() }

// Set reads the quantity.
func (f amountFlag) Set(text string) error {
	a, err := quantity.Parse(text, f.want)
	if err == nil {
		*f.to = a
	}
	return err
}

// flagAmount adds a flag that takes a quantity. def is what it is unless said, "" for
// nothing.
func flagAmount(set *pflag.FlagSet, to *quantity.Amount, name, def, example, usage string, want quantity.Dimension) {
	f := amountFlag{to, want, example}
	if def != "" {
		if err := f.Set(def); err != nil {
			panic("flag " + name + ": " + err.Error()) // a default of our own
		}
	}
	set.Var(f, name, usage)
}

// sizeFlag is the value of a flag that takes a conductor size.
type sizeFlag struct{ to *quantity.Size }

func (f sizeFlag) String() string {
	if f.to == nil || !f.to.Known() {
		return ""
	}
	return f.to.String()
}

// Type is what help shows behind the flag.
func (f sizeFlag) Type() string { return "size" }

// Set reads the size.
func (f sizeFlag) Set(text string) error {
	s, err := quantity.ParseSize(text)
	if err == nil {
		*f.to = s
	}
	return err
}
