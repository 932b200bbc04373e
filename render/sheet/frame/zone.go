package frame

import (
	"strconv"

	"github.com/lugwright/lugwright/render/ink"
)

// zoneLength is how long the fields of the reference grid are at most, in millimetres. ISO
// 5457 allows 25 to 75 and an even number of them along each side.
const zoneLength = 37.0

// columns and rows of the grid.
func (f *Frame) columns() int { return evenFields(f.inner.Width()) }
func (f *Frame) rows() int    { return evenFields(f.inner.Height()) }

// evenFields returns the smallest even number of fields that are short enough.
func evenFields(length float64) int {
	n := 2
	for length/float64(n) > zoneLength {
		n += 2
	}
	return n
}

// Zone returns the field of the reference grid in which a point of the page lies, "C4";
// points off the frame belong to the nearest field.
func (f *Frame) Zone(p ink.Point) string {
	column := field(p.X-f.inner.Min.X, f.inner.Width(), f.columns())
	row := field(p.Y-f.inner.Min.Y, f.inner.Height(), f.rows())
	return rowName(row) + strconv.Itoa(column+1)
}

func field(at, length float64, n int) int {
	i := int(at / length * float64(n))
	return max(0, min(n-1, i))
}

// rowName is the letter of a row; I and O are left out, since they look like figures.
func rowName(row int) string {
	const letters = "ABCDEFGHJKLMNPQRSTUVWXYZ"
	return letters[row : row+1]
}

// drawZones draws the names of the fields in the margin and strokes between them.
func (f *Frame) drawZones(page ink.Page) {
	const stroke = 3.0
	text := func(x, y float64, s string) {
		page.Text(ink.Text{At: ink.At(x, y+letter/2), String: s, Capital: letter, Anchor: ink.Middle})
	}
	line := func(x0, y0, x1, y1 float64) {
		page.Path(ink.Lines(ink.At(x0, y0), ink.At(x1, y1)), ink.Pen(ink.Medium))
	}
	const middle = margin - 0.5 - stroke/2 // of the names, from the edge of the paper
	w, h := f.Paper.Width, f.Paper.Height
	for i, n := 0, f.columns(); i < n; i++ {
		step := f.inner.Width() / float64(n)
		x := f.inner.Min.X + step*float64(i)
		text(x+step/2, middle, strconv.Itoa(i+1))
		text(x+step/2, h-middle, strconv.Itoa(i+1))
		if i > 0 {
			line(x, margin, x, margin-stroke)
			line(x, h-margin, x, h-margin+stroke)
		}
	}
	for i, n := 0, f.rows(); i < n; i++ {
		step := f.inner.Height() / float64(n)
		y := f.inner.Min.Y + step*float64(i)
		text(middle, y+step/2, rowName(i))
		text(w-middle, y+step/2, rowName(i))
		if i > 0 {
			line(margin, y, margin-stroke, y)
			line(w-margin, y, w-margin+stroke, y)
		}
	}
}
