package frame

import (
	"fmt"

	"github.com/lugwright/lugwright/render/ink"
)

// mostFindings is how many lines all banners together have at most.
const mostFindings = 3

// banner says, over the drawing, what is still open, or what is lived with.
type banner struct {
	at    ink.Rect
	class string
	title string
	head  string
	lines []string
}

// banners stand one below the other, what is open first.
type banners []banner

// newBanners shows what is open on as many lines as there are, and what is waived on those
// that are left, one at least.
func newBanners(c Content, inner ink.Rect) banners {
	most := mostFindings
	if c.MostShown > 0 {
		most = min(c.MostShown, most)
	}
	if len(c.Findings) > 0 && len(c.Waived) > 0 {
		most = max(1, min(most, mostFindings-1))
	}
	var all banners
	top := inner
	add := func(b banner, lines []string, most int) int {
		if len(lines) == 0 {
			return 0
		}
		b.lines = shown(lines, most)
		b.at = top
		b.at.Max.Y = top.Min.Y + float64(len(b.lines))*lineHigh
		top.Min.Y = b.at.Max.Y
		all = append(all, b)
		return len(b.lines)
	}
	n := add(banner{class: "banner", title: "Open findings", head: "OPEN"}, c.Findings, most)
	add(banner{class: "waived", title: "Waived findings", head: "WAIVED"}, c.Waived, mostFindings-n)
	return all
}

// shown is as many lines as may be, the last of which counts those that are left out.
func shown(lines []string, most int) []string {
	n := len(lines)
	if n <= most {
		return lines
	}
	return append(append([]string(nil), lines[:most-1]...), countMore(n-most+1, most > 1))
}

// bottom returns where the banners end, or top if there are none.
func (b banners) bottom(top float64) float64 {
	if len(b) == 0 {
		return top
	}
	return b[len(b)-1].at.Max.Y
}

// countMore counts the findings that are not shown.
func countMore(n int, some bool) string {
	if !some {
		return fmt.Sprintf("%d findings: see the list of findings", n)
	}
	return fmt.Sprintf("and %d more", n)
}

// headWide is the width of a banner's head, in millimetres.
const headWide = 18.0

func (b banners) draw(page ink.Page) {
	for _, one := range b {
		one.draw(page)
	}
}

// draw sets the head of what is open in white on black; of what is lived with in black on
// white, so that nobody takes the one for the other.
func (b banner) draw(page ink.Page) {
	page.Open(ink.Group{Class: b.class, Title: b.title})
	page.Path(b.at.Path(), ink.Pen(ink.Heavy))
	head := b.at
	head.Max.X = head.Min.X + headWide
	ground, letters := ink.Area(ink.Color{}), ink.White()
	if b.class != "banner" {
		ground, letters = ink.Pen(ink.Thin), ink.Color{}
	}
	page.Path(head.Path(), ground)
	page.Text(ink.Text{At: ink.At(head.Min.X+headWide/2, (head.Min.Y+head.Max.Y+letter)/2), String: b.head,
		Capital: letter, Face: ink.Bold, Color: letters, Anchor: ink.Middle})
	for i, line := range b.lines {
		write(page, head.Max.X+pad, baseline(b.at.Min.Y, i), line, ink.Regular, b.at.Max.X-head.Max.X-2*pad)
	}
	page.Close()
}
