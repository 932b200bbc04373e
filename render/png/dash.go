package png

import "github.com/lugwright/lugwright/render/ink"

// dash cuts runs into the marks of a style's dash pattern; a continuous line stays as it is,
// and so does one whose pattern is finer than a quarter of a pixel, which nobody could see.
func (s scale) dash(runs []run, style ink.Style) []run {
	lengths, sum := s.pattern(style.Dash)
	if sum < one/4 {
		return runs
	}
	var marks []run
	for _, r := range runs {
		cut := newCutter(lengths, sum, s.length(style.Offset))
		marks = append(marks, cut.along(r)...)
	}
	return marks
}

// pattern is a dash pattern in 256ths of a pixel, with an even number of lengths, and their
// sum.
func (s scale) pattern(dash []float64) (lengths []int64, sum int64) {
	if len(dash)%2 == 1 {
		dash = append(append([]float64(nil), dash...), dash...)
	}
	for _, d := range dash {
		lengths = append(lengths, s.length(d))
		sum += lengths[len(lengths)-1]
	}
	return lengths, sum
}

// cutter walks along a run and knows where in the pattern it is.
type cutter struct {
	lengths []int64
	at      int   // which length of the pattern
	left    int64 // of it
	marks   []run
	now     []place // of the mark that is being drawn
}

func newCutter(lengths []int64, sum, offset int64) *cutter {
	c := &cutter{lengths: lengths}
	offset -= floorDiv(offset, sum) * sum
	for offset >= lengths[c.at] {
		offset -= lengths[c.at]
		c.at++
	}
	c.left = lengths[c.at] - offset
	return c
}

// on reports whether a mark is being drawn: even lengths are marks, odd ones gaps.
func (c *cutter) on() bool { return c.at%2 == 0 }

func (c *cutter) along(r run) []run {
	points := r.points
	if r.closed {
		points = append(append([]place(nil), points...), points[0])
	}
	if c.on() {
		c.now = []place{points[0]}
	}
	for i := 1; i < len(points); i++ {
		c.line(points[i-1], points[i])
	}
	c.end()
	return c.marks
}

// line walks along one straight line.
func (c *cutter) line(a, b place) {
	d := b.minus(a)
	long := isqrt(dot(d, d))
	walked := int64(0)
	for long-walked > c.left {
		walked += c.left
		here := place{a.x + round(d.x*walked, long), a.y + round(d.y*walked, long)}
		if c.on() {
			c.now = append(c.now, here)
			c.end()
		} else {
			c.now = []place{here}
		}
		c.at = (c.at + 1) % len(c.lengths)
		c.left = c.lengths[c.at]
	}
	c.left -= long - walked
	if c.on() {
		c.now = append(c.now, b)
	}
}

// end keeps the mark that was drawn.
func (c *cutter) end() {
	if len(c.now) > 1 {
		c.marks = append(c.marks, run{points: c.now})
	}
	c.now = nil
}
