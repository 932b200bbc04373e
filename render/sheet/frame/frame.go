package frame

import (
	"github.com/lugwright/lugwright/render/ink"
)

// Measures in millimetres.
const (
	// margin is from the edge of the paper to the frame. ISO 5457 has 10, and 20 on the
	// binding edge, which would cost a tenth of an A4; office printers leave 4 to 6 blank.
	margin = 8.0
	// clear is what the drawing keeps from the lines of the frame.
	clear = 1.5

	letter  = 2.5 // height of capitals of all that a reader needs (ISO 3098)
	caption = 1.8 // of the captions of fields
	pad     = 1.0 // from a line to the words beside it

	blockWide = 180.0 // of the title block (ISO 7200)
	titleHigh = 8.2   // of its row with the title, whose capitals may have 3.5 mm
	rowHigh   = 7.2   // of its other row: a caption over a word
	stripHigh = titleHigh + rowHigh
	lineHigh  = 1.8 * letter // of a line of the legend, of revisions and findings
)

// Frame is a frame that knows where everything on it stands.
type Frame struct {
	Paper Paper
	// Area is free for the drawing, in millimetres of the page.
	Area ink.Rect

	content Content
	inner   ink.Rect // inside of the frame line
	title   ink.Rect
	panel   panel
	legend  legend
	caution cautions
	banners banners
}

// Layout finds places for the content on a paper. Whatever the content, three fifths of the
// paper's height stay free for the drawing: what does not fit is counted instead.
func Layout(paper Paper, c Content) *Frame {
	f := &Frame{Paper: paper, content: cleaned(c)}
	f.inner = ink.Rect{Min: ink.At(margin, margin), Max: ink.At(paper.Width-margin, paper.Height-margin)}
	foot := f.inner
	foot.Min.Y = foot.Max.Y - stripHigh
	f.title = foot
	f.title.Min.X = foot.Max.X - blockWide
	beside := foot
	beside.Max.X = f.title.Min.X

	top := foot.Min.Y // of the strip, as it grows
	take := func(lines int) ink.Rect {
		r := ink.Rect{Min: ink.At(f.inner.Min.X, top-float64(lines)*lineHigh), Max: ink.At(f.inner.Max.X, top)}
		top = r.Min.Y
		return r
	}
	f.panel = newPanel(f.content, beside)
	f.legend = newLegend(f.content, beside, f.panel.free())
	if f.legend.rows() > 0 && !f.legend.inPanel {
		f.legend.at = take(f.legend.rows())
	}
	f.caution = newCautions(f.content.Cautions, f.inner.Width())
	if n := f.caution.rows(); n > 0 {
		f.caution.at = take(n)
	}
	f.banners = newBanners(f.content, f.inner)

	f.Area = ink.Rect{Min: ink.At(f.inner.Min.X, f.banners.bottom(f.inner.Min.Y)), Max: ink.At(f.inner.Max.X, top)}.Grow(-clear)
	return f
}

// Draw puts the frame on a page.
func (f *Frame) Draw(page ink.Page) {
	page.Open(ink.Group{Class: "frame"})
	page.Path(f.inner.Path(), ink.Pen(ink.Heavy))
	f.drawZones(page)
	if f.content.Centring {
		f.drawCentring(page)
	}
	f.drawTitle(page)
	f.panel.draw(page)
	f.legend.draw(page, f.content.palette())
	f.caution.draw(page)
	f.banners.draw(page)
	page.Close()
}

// drawCentring marks the middles of the four sides (ISO 5457). The marks end at the frame:
// the 5 mm that the standard draws inside would cross the drawing and the title block.
func (f *Frame) drawCentring(page ink.Page) {
	const from = 4.0
	w, h := f.Paper.Width, f.Paper.Height
	for _, p := range []ink.Path{
		ink.Lines(ink.At(w/2, from), ink.At(w/2, margin)),
		ink.Lines(ink.At(w/2, h-from), ink.At(w/2, h-margin)),
		ink.Lines(ink.At(from, h/2), ink.At(margin, h/2)),
		ink.Lines(ink.At(w-from, h/2), ink.At(w-margin, h/2)),
	} {
		page.Path(p, ink.Pen(ink.Heavy))
	}
}

// fits returns how long words may be that stand in a width of millimetres, with room for a
// replaced font.
func fits(width float64) float64 { return width / (1 + ink.Slack) }

// write puts a line of words on the page, cut to a width.
func write(page ink.Page, x, baseline float64, s string, face ink.Face, width float64) {
	if s = ink.Cut(s, face, letter, fits(width)); s != "" {
		page.Text(ink.Text{At: ink.At(x, baseline), String: s, Capital: letter, Face: face})
	}
}

// baseline is where the words of line i of lines one below the other stand.
func baseline(top float64, i int) float64 {
	return top + float64(i)*lineHigh + (lineHigh+letter)/2
}

// cleaned returns the content with printable words.
func cleaned(c Content) Content {
	for _, s := range []*string{&c.Owner, &c.Number, &c.Date, &c.Title, &c.Approver, &c.Creator, &c.DocumentType, &c.Subtitle, &c.Revision, &c.Note} {
		*s = ink.Clean(*s)
	}
	c.Findings, c.Waived = cleanAll(c.Findings), cleanAll(c.Waived)
	revisions := make([]Revision, len(c.Revisions))
	for i, r := range c.Revisions {
		revisions[i] = Revision{ink.Clean(r.Index), ink.Clean(r.Date), ink.Clean(r.By), ink.Clean(r.Note)}
	}
	cautions := make([]Caution, len(c.Cautions))
	for i, w := range c.Cautions {
		cautions[i] = Caution{w.Word, ink.Clean(w.Text)}
	}
	c.Revisions, c.Cautions = revisions, cautions
	return c
}

func cleanAll(list []string) []string {
	out := make([]string, len(list))
	for i, s := range list {
		out[i] = ink.Clean(s)
	}
	return out
}
