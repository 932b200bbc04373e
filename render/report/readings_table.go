package report

import (
	"strings"

	"github.com/lugwright/lugwright/wiring/meter"
)

// Marks of the table, each with what the legend says of it.
const (
	markFloating = "fl"
	markNothing  = "?"
	markConsumer = "*"
	markMains    = "mains"
)

var legends = []struct{ mark, words string }{
	{markMains, "alternating current, not solved here: nothing to put a probe on"},
	{markFloating, "0.0 (floating): joined to nothing, which is no zero"},
	{markNothing, "proves nothing: it comes past an open contact through a resistor, or from a battery that is off"},
	{markConsumer, "comes through a consumer that is not switched on: proves that one whole, and no more"},
}

const columnGap = 2

// column is one state in the table.
type column struct {
	heads []string // lines of its heading
	cells [][]string
	width int
}

// table sets the readings, in blocks of as many states as the width holds.
func (p *readingsPrinter) table() {
	p.marks = map[string]bool{}
	groups := p.groups()
	names, stub := p.stub(groups)
	states := make([]column, len(p.Survey.Sheets))
	for i, s := range p.Survey.Sheets {
		states[i] = p.column(s, groups, len(p.Survey.Sheets) == 1)
	}
	for _, block := range blocks(states, p.width-stub) {
		p.line("")
		p.block(block, groups, names, stub)
	}
}

// stub is the first column: the places to probe, and its width.
func (p *readingsPrinter) stub(groups []spotGroup) (names [][]string, width int) {
	for _, g := range groups {
		var all []string
		for _, spot := range g.spots {
			name := oneLine(spot.Name)
			if black := p.Black(spot); black != p.Reference() {
				name += " to " + oneLine(p.Survey.Bench.Name(black))
			}
			all, width = append(all, name), max(width, columns(name))
		}
		names = append(names, all)
	}
	return names, width
}

func (p *readingsPrinter) column(s *meter.Sheet, groups []spotGroup, alone bool) column {
	c := column{heads: headLines(oneLine(s.State.Name))}
	for _, line := range c.heads {
		c.width = max(c.width, columns(line))
	}
	for _, g := range groups {
		var cells []string
		for _, spot := range g.spots {
			text := rightMost(p.cell(s.ReadAt(spot.Node), alone))
			cells, c.width = append(cells, text), max(c.width, columns(text))
		}
		c.cells = append(c.cells, cells)
	}
	return c
}

// cell is one reading, with room for a mark, so that decimal points stand below each other.
func (p *readingsPrinter) cell(r meter.Reading, alone bool) string {
	text, mark := Shown(r)
	switch {
	case r.Mains:
		p.marks[markMains] = true
		return markMains
	case r.Floating && alone:
		return text + " (floating)"
	}
	if mark != "" {
		p.marks[mark] = true
		text += " " + mark
	}
	return text
}

// headLines breaks the name of a state where it has blanks, if it is long.
func headLines(name string) []string {
	if columns(name) <= 7 {
		return []string{name}
	}
	return strings.Fields(name)
}

// blocks parts columns so that each block fits into the room, and all are about as long.
func blocks(all []column, room int) [][]column {
	fits := filling(all, room)
	if len(fits) < 2 {
		return fits
	}
	even := (len(all) + len(fits) - 1) / len(fits)
	var parts [][]column
	for begin := 0; begin < len(all); begin += even {
		part := all[begin:min(begin+even, len(all))]
		if len(filling(part, room)) > 1 {
			return fits
		}
		parts = append(parts, part)
	}
	return parts
}

// filling puts into each block as many columns as fit, one at least.
func filling(all []column, room int) [][]column {
	var parts [][]column
	used := 0
	for _, c := range all {
		need := c.width + columnGap
		if len(parts) == 0 || used+need > room {
			parts, used = append(parts, nil), 0
		}
		parts[len(parts)-1] = append(parts[len(parts)-1], c)
		used += need
	}
	return parts
}

func (p *readingsPrinter) block(block []column, groups []spotGroup, names [][]string, stub int) {
	p.heads(block, stub)
	for g, group := range groups {
		if len(groups) > 1 {
			p.line(p.bold(p.groupTitle(group)))
		}
		for row, name := range names[g] {
			line := pad(name, stub)
			for _, c := range block {
				line += strings.Repeat(" ", columnGap) + pad(c.cells[g][row], c.width)
			}
			p.line(strings.TrimRight(line, " "))
		}
	}
}

// groupTitle is the heading of a group: a part with its name.
func (p *readingsPrinter) groupTitle(g spotGroup) string {
	if part := p.Survey.Bench.Harness.Part(g.name); part != nil && g.name != testPointsGroup {
		return oneLine(g.name + " " + part.Name())
	}
	return strings.ToUpper(g.name[:1]) + g.name[1:]
}

// heads writes the lines of the headings, resting on the table.
func (p *readingsPrinter) heads(block []column, stub int) {
	tall := 0
	for _, c := range block {
		tall = max(tall, len(c.heads))
	}
	for i := range tall {
		line := strings.Repeat(" ", stub)
		for _, c := range block {
			word := ""
			if from := i - (tall - len(c.heads)); from >= 0 {
				word = c.heads[from]
			}
			line += strings.Repeat(" ", columnGap) + pad(word, c.width)
		}
		p.line(p.bold(strings.TrimRight(line, " ")))
	}
}

func (p *readingsPrinter) legend() {
	first := true
	for _, l := range legends {
		if !p.marks[l.mark] {
			continue
		}
		if first {
			p.line("")
			first = false
		}
		p.hanging("", pad(l.mark, 2)+"  "+l.words)
	}
}

// rightMost puts the decimal points of readings up to 999 V below each other.
func rightMost(cell string) string {
	whole, _, _ := strings.Cut(cell, ".")
	return strings.Repeat(" ", max(0, 2-len(whole))) + cell
}

// pad fills a text up to a width.
func pad(text string, width int) string {
	return text + strings.Repeat(" ", max(0, width-columns(text)))
}
