package symptom

import (
	"slices"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/fault"
	"github.com/lugwright/lugwright/wiring/settle"
)

func solenoidSilent() *Symptom {
	return &Symptom{
		ID: "solenoid-silent", Severity: Stop, Says: "the solenoid does not click",
		Find: func(v *View) []Complaint {
			return v.whole(func(was, now *fault.Seen) bool {
				for k := range was.Mains {
					if was.Mains[k] && !now.Mains[k] && now.Outcome == settle.Settled {
						return true
					}
				}
				return false
			})
		},
	}
}

func solenoidChatters() *Symptom {
	return &Symptom{
		ID: "solenoid-chatters", Severity: Damage, Says: "something clicks on and off without end",
		Find: func(v *View) []Complaint {
			return v.whole(func(was, now *fault.Seen) bool {
				return now.Outcome == settle.Chatters && was.Outcome != settle.Chatters &&
					slices.ContainsFunc(now.Cycle, clicks)
			})
		},
	}
}

func clicks(e wiring.Element) bool {
	switch e.(type) {
	case *wiring.Coil, *wiring.Contact:
		return true
	}
	return false
}
