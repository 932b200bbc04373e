package symptom

import "github.com/lugwright/lugwright/wiring/fault"

func movesOnCharge() *Symptom {
	return &Symptom{
		ID: "moves-on-charge", Severity: Hazard, Says: "it moves while it is plugged in",
		Find: func(v *View) []Complaint {
			return v.whole(func(was, now *fault.Seen) bool {
				return now.Traction && !was.Traction && pluggedIn(now.State)
			})
		},
	}
}

func movesByItself() *Symptom {
	return &Symptom{
		ID: "moves-by-itself", Severity: Hazard, Says: "it moves when it should not",
		Find: func(v *View) []Complaint {
			return v.whole(func(was, now *fault.Seen) bool {
				return now.Traction && !was.Traction && !pluggedIn(now.State)
			})
		},
	}
}

// moving counts the states in which the cart should move, and those in which it does.
func (v *View) moving() (should, does int) {
	for i := range v.Now {
		if v.Healthy[i].Traction {
			should++
			if v.Now[i].Traction {
				does++
			}
		}
	}
	return should, does
}

func stopped(was, now *fault.Seen) bool { return was.Traction && !now.Traction }

func doesNotMove() *Symptom {
	return &Symptom{
		ID: "does-not-move", Severity: Stop, Says: "it does not move",
		Find: func(v *View) []Complaint {
			if should, does := v.moving(); should == 0 || does > 0 {
				return nil
			}
			return v.whole(stopped)
		},
	}
}

func movesOneWay() *Symptom {
	return &Symptom{
		ID: "moves-one-way", Severity: Stop, Says: "it moves one way only",
		Find: func(v *View) []Complaint {
			if _, does := v.moving(); does == 0 {
				return nil
			}
			return v.whole(stopped)
		},
	}
}
