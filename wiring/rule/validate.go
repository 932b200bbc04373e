package rule

import (
	"errors"
	"fmt"
	"regexp"
	"strings"

	"github.com/lugwright/lugwright/wiring/diag"
)

// idForm is words of small letters, joined by hyphens.
var idForm = regexp.MustCompile(`^[a-z]+(-[a-z]+)*$`)

// Validate checks that every rule of a list says all that `explain` prints, and that no
// two have one id. It returns nil, or an error that names every fault.
func Validate(rules []*Rule) error {
	var faults []error
	seen := map[string]bool{}
	for i, r := range rules {
		for _, fault := range r.faults() {
			faults = append(faults, fmt.Errorf("rule %d, %q: %s", i+1, r.ID, fault))
		}
		if seen[r.ID] {
			faults = append(faults, fmt.Errorf("rule %d: a rule before it is called %q too", i+1, r.ID))
		}
		seen[r.ID] = true
	}
	return errors.Join(faults...)
}

func (r *Rule) faults() []string {
	var faults []string
	add := func(bad bool, text string) {
		if bad {
			faults = append(faults, text)
		}
	}
	add(!idForm.MatchString(r.ID), "the id is not words of small letters with hyphens")
	add(r.Level < diag.Note || r.Level > diag.Error, "it has no level")
	add(r.Run == nil, "it does nothing")
	add(strings.Contains(r.Title, "\n"), "the title has more than one line")
	for name, text := range map[string]string{
		"title": r.Title, "why": r.Why, "do": r.Do, "source": r.Source, "wrong": r.Wrong, "right": r.Right,
	} {
		add(strings.TrimSpace(text) == "", "it has no "+name)
	}
	add(r.Why != "" && !strings.ContainsAny(r.Why, "0123456789"), "the why has no number")
	add(r.Wrong != "" && r.Wrong == r.Right, "wrong and right are the same")
	return faults
}
