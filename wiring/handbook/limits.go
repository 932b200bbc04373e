package handbook

import (
	"fmt"

	"github.com/lugwright/lugwright/wiring/quantity"
)

// Limit is one figure that rules compare against.
type Limit struct {
	ID      string // "fuse-distance"
	Amount  quantity.Amount
	Size    quantity.Size // of limits that are conductor sizes
	Count   int           // of limits that are counts
	Section string        // "33 CFR 183.455(b)(1)"
	Subject string        // what is limited
	Status  Status
}

// String prints the figure: "7 in", "16 AWG", "4".
func (l Limit) String() string {
	switch {
	case l.Amount.Known():
		return l.Amount.String()
	case l.Size.Known():
		return l.Size.String()
	}
	return fmt.Sprint(l.Count)
}

// limitsNeeded are the limits that this package's methods use, each with what it must be.
// A shop's own table may have more, and must have these.
var limitsNeeded = []struct {
	id        string
	dimension quantity.Dimension // NoDimension: a size or a count
	size      bool
}{
	{"fuse-distance", quantity.Length, false},
	{"fuse-distance-sheathed", quantity.Length, false},
	{"fuse-line", quantity.Voltage, false},
	{"fuse-share-low", quantity.Share, false},
	{"fuse-share-high", quantity.Share, false},
	{"fuse-share-most", quantity.Share, false},
	{"fuse-load", quantity.Share, false},
	{"fuse-load-hot", quantity.Share, false},
	{"fuse-hot-line", quantity.Temperature, false},
	{"main-fuse-line", quantity.Current, false},
	{"main-fuse-breaks", quantity.Current, false},
	{"drop-critical", quantity.Share, false},
	{"drop-other", quantity.Share, false},
	{"drop-feeder", quantity.Share, false},
	{"lugs-per-stud", quantity.NoDimension, false},
	{"smallest-single", quantity.NoDimension, true},
	{"smallest-sheathed", quantity.NoDimension, true},
	{"sheath-exit", quantity.Length, false},
	{"exempt-current", quantity.Current, false},
	{"exempt-pigtail", quantity.Length, false},
	{"bundle-from", quantity.NoDimension, false},
	{"bundle-loaded", quantity.Share, false},
	{"support-distance", quantity.Length, false},
	{"guard-line", quantity.Voltage, false},
	{"touch-line", quantity.Voltage, false},
}

var limitsDefinition = table{
	name:    "limits",
	about:   "figures that rules compare against",
	columns: []string{"id", "value", "unit", "section", "subject"},
	load: func(t *Tables, s *sheet) {
		t.limits = nil
		for _, r := range s.rows {
			l := newLimit(r)
			if _, taken := t.Limit(l.ID); taken {
				r.fail("id", "%s stands twice", l.ID)
			}
			t.limits = append(t.limits, l)
		}
		t.checkLimits(s)
	},
}

func newLimit(r row) Limit {
	l := Limit{ID: r.word("id"), Section: r.text("section"), Subject: r.text("subject"), Status: r.status()}
	value, unit := r.word("value"), r.word("unit")
	text := value + " " + unit
	if size, err := quantity.ParseSize(text); err == nil {
		l.Size = size
		return l
	}
	if a, err := quantity.ParseAny(text); err == nil {
		l.Amount = a
		return l
	}
	n, err := quantity.ParseCount(value)
	if err != nil {
		r.fail("value", "%v", err)
	} else if n == 0 {
		r.fail("value", "must be above 0")
	}
	l.Count = n
	return l
}

// checkLimits notes limits that are missing or of the wrong sort.
func (t *Tables) checkLimits(s *sheet) {
	for _, need := range limitsNeeded {
		l, ok := t.Limit(need.id)
		switch {
		case !ok:
			s.fail("the limit %s is missing", need.id)
		case l.Amount.Dimension != need.dimension || l.Size.Known() != need.size:
			s.fail("the limit %s is %v, which is not what it limits", need.id, l)
		}
	}
}

// Limit returns a limit by its id, and whether there is one.
func (t *Tables) Limit(id string) (Limit, bool) {
	for _, l := range t.limits {
		if l.ID == id {
			return l, true
		}
	}
	return Limit{}, false
}

// limit returns one of limitsNeeded, which every table has.
func (t *Tables) limit(id string) Limit {
	l, ok := t.Limit(id)
	if !ok {
		panic("handbook: no limit " + id)
	}
	return l
}

// Limits lists all limits as the table has them.
func (t *Tables) Limits() []Limit { return append([]Limit(nil), t.limits...) }

// FuseDistance returns how far along the conductor a fuse may be from its source: 7 in, or
// 40 in where the conductor is sheathed or enclosed for its whole length. Source: 33 CFR
// 183.455(b); read.
func (t *Tables) FuseDistance(sheathed bool) quantity.Metre {
	if sheathed {
		return t.limit("fuse-distance-sheathed").Amount.Metres()
	}
	return t.limit("fuse-distance").Amount.Metres()
}

// FuseLine returns the nominal voltage, 50 V, from which the stricter fuse limit holds.
// Source: 33 CFR 183.455(c); read.
func (t *Tables) FuseLine() quantity.Volt { return t.limit("fuse-line").Amount.Volts() }

// LugsPerStud returns the most lugs on one stud, four. Source: AC 43.13-1B para 11-174,
// boat surveys; read.
func (t *Tables) LugsPerStud() int { return t.limit("lugs-per-stud").Count }

// SmallestConductor returns the smallest conductor: 16 AWG run singly, 18 AWG inside a
// sheath. Source: 33 CFR 183.425(d), (e); read.
func (t *Tables) SmallestConductor(sheathed bool) quantity.Size {
	if sheathed {
		return t.limit("smallest-sheathed").Size
	}
	return t.limit("smallest-single").Size
}

// DropLimit returns the share of voltage that may be lost on the way to a load and back:
// 3 % for critical ones, 10 % for others. Source: ABYC E-11; from memory.
func (t *Tables) DropLimit(critical bool) quantity.Ratio {
	if critical {
		return t.limit("drop-critical").Amount.Ratio()
	}
	return t.limit("drop-other").Amount.Ratio()
}

// FeederDrop returns the share of voltage that may be lost in main power wires, 2 %.
// Source: AC 43.13-1B para 11-66; read.
func (t *Tables) FeederDrop() quantity.Ratio { return t.limit("drop-feeder").Amount.Ratio() }

// MainFuseBreaks returns the least breaking capacity of a main fuse by the short-circuit
// current of its battery: 20 kA above 10 kA, else that current itself. Source: ABYC E-11 as
// quoted in a public forum; read.
func (t *Tables) MainFuseBreaks(fault quantity.Ampere) quantity.Ampere {
	if fault > t.limit("main-fuse-line").Amount.Amperes() {
		return max(fault, t.limit("main-fuse-breaks").Amount.Amperes())
	}
	return fault
}
