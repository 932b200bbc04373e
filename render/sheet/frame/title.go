package frame

import (
	"strconv"

	"github.com/lugwright/lugwright/render/ink"
)

// titleField is a cell of the title block.
type titleField struct {
	caption string
	wide    float64 // millimetres
	value   string
	most    float64 // height of capitals, if there is room
	face    ink.Face
}

// titleRows are the two rows of the title block; each adds up to blockWide.
func titleRows(c Content, paper Paper) [2][]titleField {
	sheet := ""
	if c.Sheet > 0 {
		sheet = strconv.Itoa(c.Sheet)
		if c.Sheets > 0 {
			sheet += "/" + strconv.Itoa(c.Sheets)
		}
	}
	plain := func(caption string, wide float64, value string) titleField {
		return titleField{caption, wide, value, letter, ink.Regular}
	}
	return [2][]titleField{
		{
			plain("Legal owner", 39, c.Owner),
			{"Title", 78, c.Title, 3.5, ink.Bold},
			{"Identification number", 42, c.Number, letter, ink.Bold},
			{"Rev.", 8, c.Revision, letter, ink.Bold},
			plain("Sheet", 13, sheet),
		}, {
			plain("Document type", 30, c.DocumentType),
			plain("Supplementary title", 63, c.Subtitle),
			plain("Created by", 24, c.Creator),
			plain("Approved by", 22, c.Approver),
			plain("Date of issue", 25, c.Date),
			plain("Paper", 16, paper.Name),
		},
	}
}

// drawTitle draws the title block at the lower right.
func (f *Frame) drawTitle(page ink.Page) {
	page.Open(ink.Group{Class: "title-block"})
	page.Path(f.title.Path(), ink.Pen(ink.Wide))
	y := f.title.Min.Y
	for i, row := range titleRows(f.content, f.Paper) {
		high := [2]float64{titleHigh, rowHigh}[i]
		if i > 0 {
			page.Path(ink.Lines(ink.At(f.title.Min.X, y), ink.At(f.title.Max.X, y)), ink.Pen(ink.Thin))
		}
		x := f.title.Min.X
		for j, cell := range row {
			if j > 0 {
				page.Path(ink.Lines(ink.At(x, y), ink.At(x, y+high)), ink.Pen(ink.Thin))
			}
			cell.draw(page, x, y, high)
			x += cell.wide
		}
		y += high
	}
	page.Close()
}

func (t titleField) draw(page ink.Page, x, y, high float64) {
	page.Open(ink.Group{Class: "field", Name: t.caption})
	room := t.wide - 2*pad
	if s := ink.Cut(t.caption, ink.Regular, caption, room); s != "" {
		page.Text(ink.Text{At: ink.At(x+pad, y+0.7+caption), String: s, Capital: caption, Color: captionColour()})
	}
	capital, s := ink.Fit(t.value, t.face, t.most, letter, fits(room))
	if s != "" {
		page.Text(ink.Text{At: ink.At(x+pad, y+high-1), String: s, Capital: capital, Face: t.face})
	}
	page.Close()
}

// captionColour sets captions back behind what they name; it is dark enough for a bad
// printer.
func captionColour() ink.Color { return ink.Color{R: 0x44, G: 0x44, B: 0x44} }
