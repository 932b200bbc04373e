package ink

import (
	"errors"
	"fmt"
	"math"
)

// Checked passes marks on to another page and withholds those that would spoil it: places
// that are not numbers, ink off the paper, negative widths, groups that do not match.
// Text is cleaned on the way. It remembers the first fault; the drawing goes on, so that
// one look shows what is missing.
type Checked struct {
	page  Page
	depth int
	err   error
}

// Check wraps a page.
func Check(p Page) *Checked { return &Checked{page: p} }

// Err returns the first fault, including groups that are still open.
func (c *Checked) Err() error {
	if c.err != nil {
		return c.err
	}
	if c.depth > 0 {
		return fmt.Errorf("%d groups are still open", c.depth)
	}
	return nil
}

// Size returns the width and height of the paper.
func (c *Checked) Size() (width, height float64) { return c.page.Size() }

// Path passes a path on if it is whole and on the paper.
func (c *Checked) Path(p Path, s Style) {
	if len(p) == 0 {
		return
	}
	if err := errors.Join(checkPath(p), checkStyle(s)); err != nil {
		c.refuse(err)
		return
	}
	if box, any := (Mark{Path: p, Style: s}).Box(); any && !c.onPaper(box) {
		c.refuse(fmt.Errorf("a path reaches off the paper, to (%.2f, %.2f)-(%.2f, %.2f) mm", box.Min.X, box.Min.Y, box.Max.X, box.Max.Y))
		return
	}
	c.page.Path(p, s)
}

// Text passes a text on, cleaned, if it is on the paper.
func (c *Checked) Text(t Text) {
	t.String = Clean(t.String)
	switch {
	case !finite(t.At.X, t.At.Y, t.Capital):
		c.refuse(fmt.Errorf("text %q stands at no number: %v, height %v", t.String, t.At, t.Capital))
	case t.Capital <= 0:
		c.refuse(fmt.Errorf("text %q has a height of %v mm", t.String, t.Capital))
	case int(t.Face) >= len(faces) || t.Anchor > End:
		c.refuse(fmt.Errorf("text %q asks for face %d and anchor %d, which do not exist", t.String, t.Face, t.Anchor))
	case t.String == "":
	case !c.onPaper(t.Box()):
		box := t.Box()
		c.refuse(fmt.Errorf("text %q reaches off the paper, to (%.2f, %.2f)-(%.2f, %.2f) mm", t.String, box.Min.X, box.Min.Y, box.Max.X, box.Max.Y))
	default:
		c.page.Text(t)
	}
}

// Open begins a group if its class and the keys of its data are plain words.
func (c *Checked) Open(g Group) {
	if err := g.Check(); err != nil {
		c.refuse(err)
		g = Group{Class: "refused"}
	}
	c.depth++
	c.page.Open(g)
}

// Close ends the group opened last.
func (c *Checked) Close() {
	if c.depth == 0 {
		c.refuse(errors.New("a group is closed that was never opened"))
		return
	}
	c.depth--
	c.page.Close()
}

// Check returns a fault in the words that a format may write into its markup.
func (g Group) Check() error {
	if !plainWord(g.Class) {
		return fmt.Errorf("group class %q is not a plain lower-case word", g.Class)
	}
	for key := range g.Data {
		if !plainWord(key) {
			return fmt.Errorf("group %q has data named %q, not a plain lower-case word", g.Class, key)
		}
	}
	return nil
}

// plainWord reports whether s has lower-case letters, figures and inner hyphens alone and
// begins with a letter.
func plainWord(s string) bool {
	for i, r := range s {
		letter := r >= 'a' && r <= 'z'
		inner := r >= '0' && r <= '9' || r == '-' && i < len(s)-1
		if !letter && (i == 0 || !inner) {
			return false
		}
	}
	return s != ""
}

func (c *Checked) refuse(err error) {
	if c.err == nil {
		c.err = err
	}
}

// onPaper reports whether a box lies on the paper, give or take rounding.
func (c *Checked) onPaper(box Rect) bool {
	w, h := c.page.Size()
	return Rect{Max: Point{w, h}}.Grow(0.01).Holds(box)
}

func checkPath(p Path) error {
	for i, s := range p {
		if i == 0 && s.Op != MoveTo {
			return fmt.Errorf("a path begins with operation %d instead of a move", s.Op)
		}
		switch s.Op {
		case MoveTo, LineTo, ClosePath:
		case CurveTo:
			if !finite(s.C.X, s.C.Y, s.D.X, s.D.Y) {
				return fmt.Errorf("a curve has control points %v and %v", s.C, s.D)
			}
		default:
			return fmt.Errorf("a path has an unknown operation %d", s.Op)
		}
		if !finite(s.P.X, s.P.Y) {
			return fmt.Errorf("a path goes to %v", s.P)
		}
	}
	return nil
}

func checkStyle(s Style) error {
	if !finite(s.Width, s.Offset) || s.Width < 0 || s.Stroke != nil && s.Width == 0 {
		return fmt.Errorf("a line has a width of %v mm and an offset of %v mm", s.Width, s.Offset)
	}
	sum := 0.0
	for _, d := range s.Dash {
		if !finite(d) || d < 0 {
			return fmt.Errorf("a dash pattern has a length of %v mm", d)
		}
		sum += d
	}
	if len(s.Dash) > 0 && sum <= 0 {
		return errors.New("a dash pattern has no length")
	}
	return nil
}

// finite also refuses numbers so large that no paper holds them.
func finite(values ...float64) bool {
	for _, v := range values {
		if math.IsNaN(v) || math.Abs(v) > 1e6 {
			return false
		}
	}
	return true
}
