package main

import (
	"github.com/lugwright/lugwright/render/report"
	"github.com/lugwright/lugwright/wiring/rules"
	"github.com/lugwright/lugwright/wiring/source"
)

func explainCommand() *command {
	return &command{
		name:     "explain",
		operands: operands{name: "RULE", most: 1},
		short:    "say what a rule asks for, why, and what to do",
		long: `Says what must hold, what goes wrong on a cart where it does not, what to do about it, and
where the rule comes from. Without a rule: lists all of them with their levels.`,
		examples: []string{"lugwright explain", "lugwright explain off-means-off"},
		run:      runExplain,
	}
}

func runExplain(c *call) exit {
	set := c.textOptions(c.stdout)
	if len(c.args) == 0 {
		// A write error is remembered by the stream.
		_ = report.Rules(c.stdout, rules.All(), set)
		return clean
	}
	one := rules.Find(c.args[0])
	if one == nil {
		return c.refuse("no rule %s%s\nlugwright explain lists them", c.args[0], source.DidYouMean(c.args[0], rules.IDs()))
	}
	_ = report.Explain(c.stdout, one, set)
	return clean
}
