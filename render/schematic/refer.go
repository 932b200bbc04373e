package schematic

import (
	"fmt"
	"strings"

	"github.com/lugwright/lugwright/render/ink"
	"github.com/lugwright/lugwright/render/label"
)

// zoneToCome stands for the name of a zone until all sheets are laid out. It is as wide as
// the widest name of a zone.
const zoneToCome = "D88"

// address is where something stands: a sheet and a zone of it.
func (s *set) address(k spot) string {
	text := fmt.Sprintf("sheet %d", s.sheetOf(k.cluster()))
	if z := s.zones[k]; z != "" {
		text += " " + z
	} else if s.zone != nil {
		text += " " + zoneToCome
	}
	return text
}

// where says where a flag leads.
func (s *set) where(f *flag) string {
	e := f.there()
	switch {
	case e.terminal == nil && e.end.Loose != "":
		return "LOOSE, was on " + minus(e.end.Loose)
	case e.terminal == nil:
		return "capped"
	}
	return "to " + ref(e.terminal) + ", " + s.address(e.spot())
}

// barName is how a rail or splice is called on a sheet: with its home where it is drawn
// again, and with the other sheets where it is at home.
func (s *set) barName(c *content, b *bar) string {
	if c.repeats[b] {
		return b.name + " (" + s.address(spot{bar: b}) + ")"
	}
	var also []string
	for _, o := range s.contents {
		if o.repeats[b] {
			also = append(also, fmt.Sprint(o.number))
		}
	}
	if len(also) == 0 {
		return b.name
	}
	return b.name + " (also sheet " + strings.Join(also, ", ") + ")"
}

// finalText replaces the zone that was to come in a line beside a flag.
func (s *Sheet) finalText(it *part, line string) string {
	if it.flag == nil || !strings.Contains(line, zoneToCome) {
		return line
	}
	return s.set.where(it.flag)
}

// finalLabel does the same for the name of a bar.
func (s *Sheet) finalLabel(l *label.Label, line string) string {
	if l.Kind != label.OfBar || !strings.Contains(line, zoneToCome) {
		return line
	}
	return s.set.barName(s.g.s, s.g.s.bars[l.Index])
}

// note files where the devices and bars of a sheet stand.
func (s *Sheet) note(o Options) {
	if o.Zone == nil {
		return
	}
	for d, i := range s.g.itemOf {
		h := s.c.layout.Reach(&s.g.d, i)
		s.set.zones[spot{device: d}] = o.Zone(ink.Point{X: (h.X0 + h.X1) / 2 * s.unit, Y: (h.Y0 + h.Y1) / 2 * s.unit})
	}
	for b, i := range s.g.barOf {
		if s.g.s.repeats[b] {
			continue
		}
		h := s.c.layout.Bars[i].Box()
		s.set.zones[spot{bar: b}] = o.Zone(ink.Point{X: (h.X0 + h.X1) / 2 * s.unit, Y: (h.Y0 + h.Y1) / 2 * s.unit})
	}
}
