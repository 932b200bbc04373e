package report

import (
	"fmt"
	"strings"

	"github.com/lugwright/lugwright/wiring"
)

// Settings tells what a state sets, as a job file would say it: "S1 on, P4.switch on".
func Settings(h *wiring.Harness, s *wiring.State) string {
	var words []string
	for _, p := range h.Parts {
		for _, control := range p.Controls {
			if at, ok := s.Set[control]; ok && at != control.Positions[0] {
				words = append(words, controlName(p, control)+" "+at)
			}
		}
	}
	if s.SOC > 0 {
		words = append(words, fmt.Sprintf("charge %.0f %%", 100*float64(s.SOC)))
	}
	if s.After != "" {
		words = append(words, "after "+s.After)
	}
	if words == nil {
		return "all at rest"
	}
	return strings.Join(words, ", ")
}

// controlName leaves out the control of a part that has one.
func controlName(p *wiring.Part, control *wiring.Control) string {
	if len(p.Controls) == 1 {
		return p.Designation
	}
	return p.Designation + "." + control.Name
}
