package symptom

import (
	"strings"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/fault"
)

// Symptom is one thing that an owner may say.
type Symptom struct {
	ID   string // plain words with hyphens: "does-not-move"
	Says string // the owner's words, "%s" for the part it is about
	// Severity is how much what shows it matters.
	Severity Severity
	// Find lists the complaints of this symptom: at most one for each part.
	Find func(*View) []Complaint
}

// Complaint is a symptom of a cart.
type Complaint struct {
	Symptom *Symptom
	About   string        // what it is about: "Horn (P3)", "A1.2"; empty for the cart as a whole
	Ref     string        // the same in the words of a job file: "P3", "A1.2"
	State   *wiring.State // in which it shows first
}

// Text is the complaint in the owner's words: "does not move", "Horn (P3) is dead".
func (c Complaint) Text() string { return strings.ReplaceAll(c.Symptom.Says, "%s", c.About) }

// Key tells complaints of one cart apart: "does-not-move", "consumer-dead P3".
func (c Complaint) Key() string {
	if c.Ref == "" {
		return c.Symptom.ID
	}
	return c.Symptom.ID + " " + c.Ref
}

// plainName is a part as an owner knows it, with its designation for the shop.
func plainName(p *wiring.Part) string { return p.Short() + " (" + p.Designation + ")" }

// View is a cart with faults beside the same cart without, in the same states.
type View struct {
	Cart    *fault.Cart
	Healthy []fault.Seen
	Now     []fault.Seen
}

// Complaints lists what an owner has to say of a view, gravest first.
func Complaints(v *View) []Complaint {
	var all []Complaint
	for _, s := range Symptoms() {
		for _, c := range s.Find(v) {
			c.Symptom = s
			all = append(all, c)
		}
	}
	return all
}

// whole makes a complaint about the cart as a whole where a state shows it.
func (v *View) whole(shows func(was, now *fault.Seen) bool) []Complaint {
	for i := range v.Now {
		if shows(&v.Healthy[i], &v.Now[i]) {
			return []Complaint{{State: v.Now[i].State}}
		}
	}
	return nil
}

// parts makes a complaint about each part that a state shows.
func (v *View) parts(shows func(part int, was, now *fault.Seen) bool) []Complaint {
	var all []Complaint
	for k, p := range v.Cart.Harness.Parts {
		for i := range v.Now {
			if shows(k, &v.Healthy[i], &v.Now[i]) {
				all = append(all, Complaint{About: plainName(p), Ref: p.Designation, State: v.Now[i].State})
				break
			}
		}
	}
	return all
}

// pluggedIn reports whether a state has a plug in, whatever is behind it.
func pluggedIn(s *wiring.State) bool {
	for c, position := range s.Set {
		if c.Name == "plug" && position != c.Positions[0] {
			return true
		}
	}
	return false
}
