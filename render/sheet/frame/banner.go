package frame

import (
	"fmt"

	"github.com/lugwright/lugwright/render/ink"
)

// mostFindings is how many lines a banner has at most.
const mostFindings = 3

// banner says, over the drawing, what is still open.
type banner struct {
	at    ink.Rect
	head  string
	lines []string
}

func newBanner(c Content, inner ink.Rect) banner {
	findings, most := c.Findings, mostFindings
	if c.MostShown > 0 {
		most = min(c.MostShown, most)
	}
	n := len(findings)
	if n == 0 {
		return banner{}
	}
	b := banner{head: "OPEN"}
	if n > most {
		b.lines = append(b.lines, findings[:most-1]...)
		b.lines = append(b.lines, countMore(n-most+1, most > 1))
	} else {
		b.lines = findings
	}
	b.at = inner
	b.at.Max.Y = inner.Min.Y + float64(len(b.lines))*lineHigh
	return b
}

// bottom returns where the banner ends, or top if there is none.
func (b banner) bottom(top float64) float64 {
	if len(b.lines) == 0 {
		return top
	}
	return b.at.Max.Y
}

// countMore counts the findings that are not shown.
func countMore(n int, some bool) string {
	if !some {
		return fmt.Sprintf("%d findings: see the list of findings", n)
	}
	return fmt.Sprintf("and %d more", n)
}

// headWide is the width of the banner's head, in millimetres.
const headWide = 15.0

func (b banner) draw(page ink.Page) {
	if len(b.lines) == 0 {
		return
	}
	page.Open(ink.Group{Class: "banner", Title: "Open findings"})
	page.Path(b.at.Path(), ink.Pen(ink.Heavy))
	head := b.at
	head.Max.X = head.Min.X + headWide
	page.Path(head.Path(), ink.Area(ink.Color{}))
	page.Text(ink.Text{At: ink.At(head.Min.X+headWide/2, (head.Min.Y+head.Max.Y+letter)/2), String: b.head,
		Capital: letter, Face: ink.Bold, Color: ink.White(), Anchor: ink.Middle})
	for i, line := range b.lines {
		write(page, head.Max.X+pad, baseline(b.at.Min.Y, i), line, ink.Regular, b.at.Max.X-head.Max.X-2*pad)
	}
	page.Close()
}
