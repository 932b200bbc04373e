package rules

import (
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/rule"
)

// waiverUnused stands in the list so that it can be explained. package rule judges waivers
// itself, once all rules have run.
func waiverUnused() *rule.Rule {
	return &rule.Rule{
		ID:    rule.WaiverUnused,
		Title: "every waiver of a job matches a finding",
		Level: diag.Warning,
		Why: "A waiver is a promise that somebody looked. When the wiring changes and the waiver stays, it waits to hide the next finding at that " +
			"place, 2 years later, for a reason that is long gone. One with a slip of the pen in it hides nothing and looks as if it did.",
		Do:     "Take the waiver out, or name the rule and the wire, part or terminal that are meant.",
		Source: "Common practice, no published source.",
		Wrong: `waivers:
  - {rule: colour-clear, at: W51, reason: "sleeved RD at both ends"}     # W51 is red
`,
		Right: `parts:
  E1: {kind: light-bar}
wires:
  W72: {from: A1.1, to: E1.+, colour: BK, size: 14 AWG, length: 4 ft}
  W73: {from: E1.-, to: A1.n, colour: BK, size: 14 AWG, length: 4 ft}
waivers:
  - {rule: colour-clear, at: W72, reason: "sleeved OG at both ends"}
`,
		Run: func(*rule.Pass) {},
	}
}
