package difference

// Mark is how a drawing marks a part or wire.
type Mark string

// The marks, strongest first. What is in no list of marks has not changed.
const (
	IsNew     Mark = "new"
	IsGone    Mark = "gone" // is on the old drawing only
	IsMoved   Mark = "moved"
	IsChanged Mark = "changed"
)

// Marks says what to mark on a drawing, by designation and by number, under the names of
// the new drawing; what is gone under those of the old one.
type Marks struct{ Parts, Wires map[string]Mark }

// Marks lists what changed on the cart. A part or wire of which only the words changed is
// not among it, nor is a stack: its wires are.
func (d Difference) Marks() Marks {
	m := Marks{Parts: map[string]Mark{}, Wires: map[string]Mark{}}
	names := d.newNames()
	for _, c := range d.Changes {
		switch c.What {
		case APart:
			mark(m.Parts, c.Name, markOf(c.Class))
		case AWire:
			name := c.Name
			if now, ok := names[name]; ok && c.Class != Removed && c.Class != Added {
				name = now
			}
			mark(m.Wires, name, markOf(c.Class))
		}
	}
	return m
}

// newNames finds the new numbers of wires that have other ones.
func (d Difference) newNames() map[string]string {
	names := map[string]string{}
	for _, c := range d.Changes {
		if c.Class == Renumbered {
			names[c.Old] = c.New
		}
	}
	return names
}

// mark puts a mark unless a stronger one is there.
func mark(on map[string]Mark, name string, m Mark) {
	if m != "" && (on[name] == "" || strength(m) > strength(on[name])) {
		on[name] = m
	}
}

func strength(m Mark) int {
	return map[Mark]int{IsChanged: 1, IsMoved: 2, IsGone: 3, IsNew: 4}[m]
}

func markOf(c Class) Mark {
	switch c {
	case Added, Replaced:
		return IsNew
	case Removed:
		return IsGone
	case Moved, Landed, Loosened, Covered, Freed:
		return IsMoved
	case Retold:
		return ""
	}
	return IsChanged
}
