package source

import (
	"strings"

	"github.com/lugwright/lugwright/wiring/diag"
)

// RuleInput is the rule of every finding about the files themselves. It cannot be waived
// or lowered.
const RuleInput = "input"

// Fault is an error in a file: what is wrong, and what to write instead. Several pieces of
// advice are joined by a blank.
func Fault(at diag.Span, message string, advice ...string) diag.Finding {
	return diag.Finding{
		Rule:    RuleInput,
		Level:   diag.Error,
		Message: message,
		Advice:  strings.Join(advice, " "),
		At:      at,
	}
}
