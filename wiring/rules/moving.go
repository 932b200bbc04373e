package rules

import (
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/rule"
	"github.com/lugwright/lugwright/wiring/settle"
)

// moving is a state in which the cart should move, and how everything stands in it.
type moving struct {
	name   string
	closed path.Setting
	at     *settle.Point // nil where everything is taken as closed
}

// movingStates lists the states in which the cart should move and for which ok does not
// hold. A harness without such a state is asked once, with everything closed.
func movingStates(p *rule.Pass, ok func(path.Setting) bool) []moving {
	var failed []moving
	asked := false
	for _, s := range p.Harness.States {
		if s.Moves() <= 0 {
			continue
		}
		asked = true
		if at := p.Point(s, rule.Middle); at != nil {
			if closed := path.InState(s, at.Holds); !ok(closed) {
				failed = append(failed, moving{s.Name, closed, at})
			}
		}
	}
	if !asked && !ok(nil) {
		failed = append(failed, moving{name: "with everything closed"})
	}
	return failed
}

func stateNames(states []moving) []string {
	names := make([]string, len(states))
	for i, s := range states {
		names[i] = s.name
	}
	return names
}
