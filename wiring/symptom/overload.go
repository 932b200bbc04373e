package symptom

import (
	"slices"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/fault"
	"github.com/lugwright/lugwright/wiring/quantity"
)

func fuseOpens() *Symptom {
	return &Symptom{
		ID: "fuse-opens", Severity: Loss, Says: "fuse %s opens at once",
		Find: func(v *View) []Complaint {
			return v.opens(func(e wiring.Element) (about, ref string, ok bool) {
				f, ok := e.(*wiring.Fuse)
				if !ok {
					return "", "", false
				}
				ref = fault.FuseName(f)
				if f.Channel == 0 && f.Part.Title != "" {
					return ref + " (" + f.Part.Title + ")", ref, true
				}
				return ref, ref, true
			})
		},
	}
}

func packTrips() *Symptom {
	return &Symptom{
		ID: "pack-trips", Severity: Stop, Says: "%s switches itself off",
		Find: func(v *View) []Complaint {
			return v.opens(func(e wiring.Element) (about, ref string, ok bool) {
				_, ok = e.(*wiring.Source)
				return plainName(e.Base().Part), e.Base().Part.Designation, ok
			})
		},
	}
}

// opens makes a complaint about each element that opens and did not before, each once.
func (v *View) opens(name func(wiring.Element) (about, ref string, ok bool)) []Complaint {
	var all []Complaint
	told := map[wiring.Element]bool{}
	for i := range v.Now {
		for _, e := range v.Now[i].Opened {
			about, ref, ok := name(e)
			if !ok || told[e] || slices.Contains(v.Healthy[i].Opened, e) {
				continue
			}
			told[e] = true
			all = append(all, Complaint{About: about, Ref: ref, State: v.Now[i].State})
		}
	}
	return all
}

func harm() *Symptom {
	return &Symptom{
		ID: "over-voltage", Severity: Damage, Says: "%s gets more voltage than it stands and smokes",
		Find: func(v *View) []Complaint {
			return v.parts(func(part int, was, now *fault.Seen) bool {
				p := v.Cart.Harness.Parts[part]
				return slices.Contains(now.Harmed, p) && !slices.Contains(was.Harmed, p)
			})
		},
	}
}

// hot is the heat in one joint that is smelt or felt before anything fails: common
// practice, no published source.
const hot quantity.Watt = 5

func heat() *Symptom {
	return &Symptom{
		ID: "joint-hot", Severity: Damage, Says: "a lug or cable gets hot",
		Find: func(v *View) []Complaint {
			return v.whole(func(was, now *fault.Seen) bool {
				for i := range now.Wires {
					if now.Wires[i].Heat > was.Wires[i].Heat+hot {
						return true
					}
				}
				return false
			})
		},
	}
}
