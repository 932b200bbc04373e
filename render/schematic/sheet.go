package schematic

import (
	"fmt"

	"github.com/lugwright/lugwright/render/ink"
	"github.com/lugwright/lugwright/render/symbol"
	"github.com/lugwright/lugwright/wiring"
)

// Options say on what the schematic is drawn.
type Options struct {
	Width, Height float64                   // of the drawing area, in millimetres
	First         int                       // number of the first sheet; 0: 1
	Zone          func(at ink.Point) string // name of the zone of the frame at a point of the area, in millimetres; nil: none
}

// Sheet is one sheet of a schematic, laid out and ready to be drawn.
type Sheet struct {
	Number int
	Title  string
	Zones  map[string]string // zone of each part and bar, by designation
	Stats  Stats

	unit float64
	g    *drafting
	c    *composed
}

// Stats is what can be counted on a sheet.
type Stats struct {
	Wires, Parts                      int
	Unrouted, Unlabelled              []string
	Crossings, Bends, Leaders, Turned int
}

// Sheets lays out the schematic of a harness, on as many sheets as it takes.
func Sheets(h *wiring.Harness, o Options) ([]*Sheet, error) {
	if o.First == 0 {
		o.First = 1
	}
	c := newCircuit(h)
	clusters := c.cluster()
	weight := func(k int) int {
		n := 0
		for _, d := range c.devices {
			if d.cluster == k {
				n += len(d.lines)
			}
		}
		return n
	}
	lines := func(k int) int { return (weight(k) + 1) / 2 }
	plan := plans(clusters, lines)[0]
	contents := c.split(plan, o.First)
	home := func(k int) int {
		for i, ks := range plan {
			for _, x := range ks {
				if x == k {
					return o.First + i
				}
			}
		}
		return o.First
	}
	var sheets []*Sheet
	for _, s := range contents {
		where := func(f *flag) string { return c.where(f, home) }
		g, err := draft(c, s, int(o.Width/symbol.Unit), int(o.Height/symbol.Unit), where, home)
		if err != nil {
			return nil, err
		}
		sheet := &Sheet{Number: s.number, unit: symbol.Unit, g: g, c: compose(&g.d)}
		sheet.count()
		sheets = append(sheets, sheet)
	}
	return sheets, nil
}

// where says where a flag leads.
func (c *circuit) where(f *flag, home func(int) int) string {
	e := f.there()
	switch {
	case e.terminal == nil && e.end.Loose != "":
		return "loose, was on " + minus(e.end.Loose)
	case e.terminal == nil:
		return "capped"
	}
	k := 0
	if e.device != nil {
		k = e.device.cluster
	} else {
		k = e.bar.cluster
	}
	return fmt.Sprintf("to %s, sheet %d", ref(e.terminal), home(k))
}

func (s *Sheet) count() {
	st := &s.Stats
	for i := range s.g.d.Wires {
		if s.g.wires[i].line.wire != nil {
			st.Wires++
		}
	}
	st.Parts = len(s.g.s.devices)
	for _, w := range s.c.routes.Failed {
		st.Unrouted = append(st.Unrouted, s.g.d.Wires[w].Name)
	}
	for _, m := range s.c.labels.Missing {
		st.Unlabelled = append(st.Unlabelled, m.Lines[0])
	}
	st.Crossings, st.Bends, st.Leaders = s.c.routes.Crossing, s.c.routes.Bends, s.c.labels.Leaders
	for _, l := range s.c.labels.Labels {
		if l.Turned {
			st.Turned++
		}
	}
}
