package handbook

import (
	"fmt"
	"strings"

	"github.com/lugwright/lugwright/wiring/quantity"
)

// Spanner is a size of spanner.
type Spanner struct {
	Name  string // "13 mm", "1/2 in"
	Width quantity.Metre
	Of    string // whose hardware: "ISO", "old DIN", "Japanese small hex", "inch"
}

// Stud is what a mechanic needs at a stud or bolt.
type Stud struct {
	Thread   quantity.Thread
	Metric   quantity.Thread // the row taken: the thread itself, or the nearest metric one of an inch stud
	Spanners []Spanner       // each width once, the commonest first
	Holes    Clearance       // of the metric row
	Steel    SteelTorque     // of the metric row, for steel bolts of property class 8.8
	Terminal TorqueBand      // of the metric row, for copper, brass and tinned terminal studs; follow the maker
}

// Clearance is the holes through which a thread passes (ISO 273). Read.
type Clearance struct{ Fine, Medium, Coarse quantity.Metre }

// SteelTorque is the tightening torque of steel bolts of class 8.8: two public tables, and
// the law 0.2 x 75 % of 580 MPa x stress area x diameter. A terminal stud takes far less.
type SteelTorque struct{ Oiled, Dry, Computed quantity.NewtonMetre }

// TorqueBand is a range of torque; the zero band means "not known". From memory.
type TorqueBand struct{ Low, High quantity.NewtonMetre }

// Known reports whether the band says anything.
func (b TorqueBand) Known() bool { return b.High > 0 }

type studRow struct {
	thread, near quantity.Thread
	spanners     []Spanner
	holes        Clearance
	steel        SteelTorque
	terminal     TorqueBand
}

var studsDefinition = table{
	name:  "studs",
	about: "spanner, clearance hole and torque by thread",
	columns: []string{"thread", "af_iso_mm", "af_old_din_mm", "af_jis_mm", "hole_fine_mm", "hole_medium_mm", "hole_coarse_mm",
		"near_inch_stud", "torque_88_mu014_Nm", "torque_88_dry_Nm", "torque_88_K020_Nm", "terminal_low_Nm", "terminal_high_Nm"},
	load: func(t *Tables, s *sheet) {
		t.studs = nil
		for _, r := range s.rows {
			t.studs = append(t.studs, newStudRow(r))
		}
	},
}

func newStudRow(r row) studRow {
	mm := func(column string) quantity.Metre { return quantity.Millimetres(r.positive(column)) }
	nm := func(column string) quantity.NewtonMetre { return quantity.NewtonMetre(r.optional(column)) }
	out := studRow{
		thread: r.thread("thread"), near: r.thread("near_inch_stud"),
		holes:    Clearance{mm("hole_fine_mm"), mm("hole_medium_mm"), mm("hole_coarse_mm")},
		steel:    SteelTorque{nm("torque_88_mu014_Nm"), nm("torque_88_dry_Nm"), nm("torque_88_K020_Nm")},
		terminal: TorqueBand{nm("terminal_low_Nm"), nm("terminal_high_Nm")},
	}
	if out.terminal.Low > out.terminal.High {
		r.fail("terminal_low_Nm", "is above terminal_high_Nm")
	}
	for _, of := range []struct{ column, name string }{
		{"af_iso_mm", "ISO"}, {"af_old_din_mm", "old DIN"}, {"af_jis_mm", "Japanese small hex"},
	} {
		out.addSpanner(quantity.Millimetres(r.optional(of.column)), of.name)
	}
	return out
}

func (s *studRow) addSpanner(width quantity.Metre, of string) {
	if width == 0 {
		return
	}
	for _, have := range s.spanners {
		if have.Width == width {
			return
		}
	}
	name := fmt.Sprintf("%g mm", width.Millimetres())
	s.spanners = append(s.spanners, Spanner{Name: name, Width: width, Of: of})
}

// thread reads M8, 5/16 or #10 as the tables write them.
func (r row) thread(column string) quantity.Thread {
	text := r.cells[column]
	thread, err := tableThread(text)
	if err != nil {
		r.fail(column, "%q is no thread such as M8, 5/16 or #10", text)
	}
	return thread
}

func tableThread(text string) (quantity.Thread, error) {
	if number, ok := strings.CutPrefix(text, "#"); ok {
		n, err := quantity.ParseCount(number)
		return quantity.Thread{System: quantity.NumberedThread, Size: float64(n)}, err
	}
	if !strings.HasPrefix(text, "M") {
		text += " in"
	}
	return quantity.ParseThread(text)
}

// inchHex is the width across flats of an inch fastener. Source: ASME B18.2; from memory.
type inchHex struct {
	thread quantity.Thread
	name   string
	width  quantity.Metre
}

var inchHexesDefinition = table{
	name:    "inch_hexes",
	about:   "spanners of inch studs",
	columns: []string{"thread", "af_in"},
	load: func(t *Tables, s *sheet) {
		t.inchHexes = nil
		for _, r := range s.rows {
			width, err := quantity.Parse(r.word("af_in")+" in", quantity.Length)
			if err != nil {
				r.fail("af_in", "%v", err)
				continue
			}
			t.inchHexes = append(t.inchHexes, inchHex{r.thread("thread"), width.String(), width.Metres()})
		}
	},
}

// Stud returns what the studs table has for a thread; an inch stud takes the holes and
// torques of the metric thread next to it and the spanner of its own. A thread that the
// table lacks is an error that says what it has.
//
// Source: ISO 4014, 4017, 272 and 273, public machine tables; read, but terminal torques
// and inch spanners: from memory.
func (t *Tables) Stud(thread quantity.Thread) (Stud, error) {
	for _, r := range t.studs {
		if r.thread != thread.Nominal() && r.near != thread.Nominal() {
			continue
		}
		s := Stud{Thread: thread, Metric: r.thread, Holes: r.holes, Steel: r.steel, Terminal: r.terminal}
		if thread.System == quantity.MetricThread {
			s.Spanners = append(s.Spanners, r.spanners...)
		} else {
			s.Spanners = t.inchSpanners(thread.Nominal())
		}
		return s, nil
	}
	return Stud{}, fmt.Errorf("the handbook has no stud %v: it has %s", thread, t.studNames())
}

func (t *Tables) inchSpanners(thread quantity.Thread) []Spanner {
	for _, h := range t.inchHexes {
		if h.thread == thread {
			return []Spanner{{Name: h.name, Width: h.width, Of: "inch"}}
		}
	}
	return nil
}

func (t *Tables) studNames() string {
	names := make([]string, len(t.studs))
	for i, r := range t.studs {
		names[i] = r.thread.String() + " (" + r.near.String() + ")"
	}
	return strings.Join(names, ", ")
}
