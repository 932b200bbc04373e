package sizing

import (
	"fmt"

	"github.com/lugwright/lugwright/wiring/handbook"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// Choice is a conductor and a fuse for a run.
type Choice struct {
	Run     Run
	Size    quantity.Size
	Style   string // of the fuse
	Fuse    quantity.Ampere
	Carries Carries
	Most    quantity.Ampere // the largest fuse that may protect the conductor
	Loss    quantity.Volt   // on the loop; 0: its length is not known
	Share   quantity.Ratio  // of the circuit's voltage
	Needs   []Need
	Faults  []string // what a conductor or a fuse that was given does not meet
}

// Need is one requirement on the conductor.
type Need struct {
	What    string        // "fuse", "drop", "smallest"
	Size    quantity.Size // the thinnest that meets it; zero: it was not asked
	Text    string        // the row that decided, with figures
	Source  string
	Decides bool // it asks for what was chosen
}

// Choose finds the thinnest stocked conductor that meets every requirement of a run, and
// its fuse. With [Run.Size] given it judges that one instead. nil means the tables that
// the program brings with it. The error is an *[Error]: no fuse carries the current, no
// conductor is thick enough, or a figure makes no sense.
func Choose(t *handbook.Tables, r Run) (Choice, error) {
	if t == nil {
		t = handbook.Default()
	}
	if err := r.check(); err != nil {
		return Choice{}, err
	}
	c := Choice{Run: r}
	var err error
	if c.Style, c.Fuse, err = protector(t, r); err != nil {
		return Choice{}, err
	}
	for _, need := range []func(*handbook.Tables, Run, Choice) (Need, error){behindFuse, withinDrop, notTooThin} {
		n, err := need(t, r, c)
		if err != nil {
			return Choice{}, err
		}
		c.Needs = append(c.Needs, n)
	}
	c.Size = r.Size
	if !r.Size.Known() {
		c.Size = thickest(t, c.Needs)
	}
	return c, c.complete(t)
}

// complete works the figures of the conductor out and says what it does not meet.
func (c *Choice) complete(t *handbook.Tables) error {
	carries, err := Carry(t, c.Size, c.Run)
	if err != nil {
		return err
	}
	c.Carries, c.Most = carries, most(t, carries.Amps, c.Style)
	if c.Run.Loop > 0 {
		ohms, err := c.Run.Copper.ohms(t, c.Size, c.Run.Loop)
		if err != nil {
			return err
		}
		c.Loss = handbook.Drop(c.Run.Amps, ohms)
		if c.Run.Volts > 0 {
			c.Share = handbook.DropShare(c.Loss, c.Run.Volts)
		}
	}
	for i, n := range c.Needs {
		c.Needs[i].Decides = n.Size == c.Size && n.Size.Known() && !c.Run.Size.Known()
		if n.Size.Known() && area(t, n.Size) > area(t, c.Size) {
			c.Faults = append(c.Faults, fmt.Sprintf("%v is too thin: %s", c.Size, n.Text))
		}
	}
	return nil
}

func area(t *handbook.Tables, s quantity.Size) quantity.SquareMillimetre {
	a, _ := t.Area(s) // what was chosen is in the table
	return a
}

func thickest(t *handbook.Tables, needs []Need) quantity.Size {
	var found quantity.Size
	for _, n := range needs {
		if n.Size.Known() && (!found.Known() || area(t, n.Size) > area(t, found)) {
			found = n.Size
		}
	}
	return found
}

// protector is the fuse of a run; none where a supply's own limit stands in its place.
func protector(t *handbook.Tables, r Run) (string, quantity.Ampere, error) {
	switch {
	case r.Limit > 0 && r.Fuse == 0:
		return "", 0, nil
	case r.Limit > 0:
		return r.Style, r.Fuse, nil
	}
	return fuseFor(t, r)
}

// behindFuse asks for a conductor that the fuse protects, or that carries all that an
// unfused supply gives.
func behindFuse(t *handbook.Tables, r Run, c Choice) (Need, error) {
	n := Need{What: "fuse", Source: "33 CFR 183.425 Table 5 and notes; 183.455(c)(2) at every voltage"}
	if c.Fuse == 0 {
		return unfused(t, r)
	}
	for _, s := range handbook.StandardSizes() {
		carries, err := Carry(t, s, r)
		if err != nil {
			return n, failf("%v", err)
		}
		if most(t, carries.Amps, c.Style) < c.Fuse {
			continue
		}
		n.Size = s
		n.Text = fmt.Sprintf("%v carries %v (%s); a fuse of %v may protect it", s, carries.Amps, carries.Text, most(t, carries.Amps, c.Style))
		return n, nil
	}
	return n, failf("no conductor up to %v may stand behind a fuse of %v at %v", lastSize(), c.Fuse, r.ambient())
}

// unfused asks for a conductor that carries a supply's limit.
func unfused(t *handbook.Tables, r Run) (Need, error) {
	n := Need{What: "supply", Source: "33 CFR 183.425 Table 5 and notes"}
	for _, s := range handbook.StandardSizes() {
		carries, err := Carry(t, s, r)
		if err != nil {
			return n, failf("%v", err)
		}
		if carries.Amps >= r.Limit {
			n.Size = s
			n.Text = fmt.Sprintf("%v carries %v (%s), as much as it may be given", s, carries.Amps, carries.Text)
			return n, nil
		}
	}
	return n, failf("no conductor up to %v carries %v at %v", lastSize(), r.Limit, r.ambient())
}

func lastSize() quantity.Size {
	sizes := handbook.StandardSizes()
	return sizes[len(sizes)-1]
}

// withinDrop asks for a conductor that does not lose too much.
func withinDrop(t *handbook.Tables, r Run, c Choice) (Need, error) {
	n := Need{What: "drop", Source: r.Copper.String()}
	switch {
	case r.Loop == 0:
		n.Text = "the length is not known: the drop is not counted"
		return n, nil
	case r.Drop == 0:
		n.Text = "no limit is set on the drop"
		return n, nil
	}
	for _, s := range handbook.StandardSizes() {
		ohms, err := r.Copper.ohms(t, s, r.Loop)
		if err != nil {
			continue // the aircraft table has not every size
		}
		if loss := handbook.Drop(r.Amps, ohms); loss <= r.limit() {
			n.Size = s
			n.Text = fmt.Sprintf("%v loses %.2f V of %v on a loop of %v; %.2f V may be lost", s, float64(loss), r.Volts, length(r.Loop), float64(r.limit()))
			return n, nil
		}
	}
	return n, failf("no conductor up to %v loses as little as %v on a loop of %v at %v", lastSize(), r.limit(), length(r.Loop), r.Amps)
}

// length prints a length as it is measured in a shop.
func length(m quantity.Metre) string { return m.In(quantity.Inch) + " (" + m.In(quantity.Metric) + ")" }

// notTooThin asks for the smallest conductor that is run at all.
func notTooThin(t *handbook.Tables, r Run, _ Choice) (Need, error) {
	n := Need{What: "smallest", Size: handbook.StandardSizes()[0], Source: "33 CFR 183.425(d), (e), (g)"}
	if exempt, ok := t.Limit("exempt-current"); ok && r.Amps < exempt.Amount.Amperes() {
		n.Text = fmt.Sprintf("circuits under %v are exempt from the smallest size; the ampacity table begins at %v", exempt, n.Size)
		return n, nil
	}
	n.Size = t.SmallestConductor(r.Sheathed)
	where := "singly"
	if r.Sheathed {
		where = "in a sheath"
	}
	n.Text = fmt.Sprintf("%v is the smallest that is run %s", n.Size, where)
	return n, nil
}
