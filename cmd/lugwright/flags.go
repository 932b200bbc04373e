package main

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/pflag"

	"github.com/lugwright/lugwright/wiring/diag"
)

// choice is the value of a flag that takes one of a few words.
type choice struct {
	to    *string
	words []string
}

var errNoChoice = errors.New("none of the words that the flag takes")

func (c choice) String() string { return *c.to }
func (c choice) Type() string   { return strings.Join(c.words, "|") }

// Set accepts one of the words.
func (c choice) Set(word string) error {
	if !slices.Contains(c.words, word) {
		return errNoChoice
	}
	*c.to = word
	return nil
}

// choices is the value of a flag that takes a list of a few words, with commas between
// them or the flag given again. The words keep the order of the list, and come once.
type choices struct {
	to    *[]string
	words []string
}

func (c choices) String() string { return strings.Join(*c.to, ",") }
func (c choices) Type() string   { return strings.Join(c.words, ",") }

// Set adds words.
func (c choices) Set(list string) error {
	for _, word := range strings.Split(list, ",") {
		word = strings.TrimSpace(word)
		if !slices.Contains(c.words, word) {
			return errNoChoice
		}
		if !slices.Contains(*c.to, word) {
			*c.to = append(*c.to, word)
		}
	}
	slices.SortFunc(*c.to, func(a, b string) int { return slices.Index(c.words, a) - slices.Index(c.words, b) })
	return nil
}

// valueHelp says what a flag takes: "error, warning or note".
func valueHelp(f *pflag.Flag) string {
	switch v := f.Value.(type) {
	case choice:
		return orList(v.words)
	case choices:
		return "a list of " + orList(v.words)
	case amountFlag:
		return fmt.Sprintf("a %v with its unit, such as %q", v.want, v.example)
	case sizeFlag:
		return "a conductor size, such as \"14 AWG\" or \"2.5 mm2\""
	}
	name, _ := pflag.UnquoteUsage(f)
	return "a " + name
}

// orList sets words as a sentence does: "a, b or c".
func orList(words []string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	last := len(words) - 1
	return strings.Join(words[:last], ", ") + " or " + words[last]
}

// flagChoice adds a flag that takes one of a few words; the first is the default.
func flagChoice(set *pflag.FlagSet, to *string, name, usage string, words ...string) {
	*to = words[0]
	set.Var(choice{to, words}, name, usage)
}

// flagChoices adds a flag that takes a list of a few words; the first is the default.
func flagChoices(set *pflag.FlagSet, to *[]string, name, usage string, words ...string) {
	*to = nil
	set.Var(choices{to, words}, name, usage)
}

// flagRoot adds the flag that every command has which reads a job.
func flagRoot(set *pflag.FlagSet, to *string) {
	set.StringVar(to, "root", "", "`folder` that layers come from and may not lie outside of; "+
		"else the nearest one upwards that holds shop.yaml")
}

// levelOf is the level that a word of --level means.
func levelOf(word string) diag.Level {
	for _, l := range []diag.Level{diag.Error, diag.Warning} {
		if l.String() == word {
			return l
		}
	}
	return diag.Note
}
