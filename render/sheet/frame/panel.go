package frame

import (
	"fmt"

	"github.com/lugwright/lugwright/render/ink"
)

// panelLines is how many lines stand beside the title block.
const panelLines = 3

// panel is the field left of the title block: revisions and a note.
type panel struct {
	at        ink.Rect
	revisions []Revision // newest first
	earlier   int        // revisions that found no place
	note      string
}

func newPanel(c Content, at ink.Rect) panel {
	p := panel{at: at, note: c.Note}
	room := panelLines
	if p.note != "" {
		room--
	}
	n := len(c.Revisions)
	if n > room {
		room-- // for the line that counts the others
		p.earlier = n - room
	}
	for i := n - 1; i >= p.earlier; i-- {
		p.revisions = append(p.revisions, c.Revisions[i])
	}
	return p
}

// free returns how many lines are left, from the top.
func (p panel) free() int {
	n := panelLines - len(p.revisions)
	if p.earlier > 0 {
		n--
	}
	if p.note != "" {
		n--
	}
	return n
}

// draw fills the panel from below: the note lowest, the revisions over it.
func (p panel) draw(page ink.Page) {
	page.Path(p.at.Path(), ink.Pen(ink.Wide))
	page.Open(ink.Group{Class: "revisions"})
	top := p.at.Max.Y - panelLines*lineHigh - (stripHigh-panelLines*lineHigh)/2
	x, line := p.at.Min.X+pad, p.free()
	for _, r := range p.revisions {
		p.drawRevision(page, x, baseline(top, line), r)
		line++
	}
	if p.earlier > 0 {
		write(page, x, baseline(top, line), fmt.Sprintf("and %d earlier revisions", p.earlier), ink.Regular, p.at.Width()-2*pad)
		line++
	}
	page.Close()
	write(page, x, baseline(top, line), p.note, ink.Regular, p.at.Width()-2*pad)
}

// drawRevision writes index, date, initials and what was changed, in columns.
func (p panel) drawRevision(page ink.Page, x, y float64, r Revision) {
	end := p.at.Max.X - pad
	for _, column := range []struct {
		words string
		face  ink.Face
		wide  float64
	}{{r.Index, ink.Bold, 6}, {r.Date, ink.Regular, 25}, {r.By, ink.Regular, 10}, {r.Note, ink.Regular, end}} {
		write(page, x, y, column.words, column.face, min(column.wide, end-x))
		x += column.wide
	}
}
