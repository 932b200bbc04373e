package ink

import (
	"maps"
	"slices"
)

// Mark is one path or one text that was put on a Recorder, with the groups around it from
// the outside in.
type Mark struct {
	Groups []Group
	Path   Path
	Style  Style // of the path
	Text   *Text // nil if the mark is a path
}

// Recorder is a page that keeps what is drawn on it, for tests and for measuring.
type Recorder struct {
	Wide, High float64 // size of the paper in millimetres
	Marks      []Mark
	open       []Group
}

// NewRecorder returns an empty page of a size in millimetres.
func NewRecorder(width, height float64) *Recorder { return &Recorder{Wide: width, High: height} }

// Size returns the width and height of the paper.
func (r *Recorder) Size() (width, height float64) { return r.Wide, r.High }

// Path keeps a copy of the path.
func (r *Recorder) Path(p Path, s Style) {
	s.Dash = slices.Clone(s.Dash)
	r.Marks = append(r.Marks, Mark{Groups: slices.Clone(r.open), Path: slices.Clone(p), Style: s})
}

// Text keeps the text.
func (r *Recorder) Text(t Text) {
	r.Marks = append(r.Marks, Mark{Groups: slices.Clone(r.open), Text: &t})
}

// Open begins a group.
func (r *Recorder) Open(g Group) { g.Data = maps.Clone(g.Data); r.open = append(r.open, g) }

// Close ends the group opened last, if there is one.
func (r *Recorder) Close() {
	if len(r.open) > 0 {
		r.open = r.open[:len(r.open)-1]
	}
}

// Depth returns how many groups are open.
func (r *Recorder) Depth() int { return len(r.open) }

// Box returns the rectangle that the mark inks: a path with half its line's width round it
// (a mitre may reach further), or the box of a text. It reports false for a mark that inks
// nothing.
func (m Mark) Box() (Rect, bool) {
	if m.Text != nil {
		return m.Text.Box(), m.Text.String != ""
	}
	box, any := m.Path.Bounds()
	if m.Style.Stroke == nil && m.Style.Fill == nil {
		return Rect{}, false
	}
	if m.Style.Stroke != nil {
		box = box.Grow(m.Style.Width / 2)
	}
	return box, any
}

// Box returns the rectangle around all ink on the page, and false if there is none.
func (r *Recorder) Box() (Rect, bool) {
	var box Rect
	any := false
	for _, m := range r.Marks {
		b, ok := m.Box()
		if !ok {
			continue
		}
		if any {
			b = b.Union(box)
		}
		box, any = b, true
	}
	return box, any
}

// Replay draws everything again, on another page.
func (r *Recorder) Replay(p Page) {
	var open []Group
	for _, m := range r.Marks {
		same := 0
		for same < len(open) && same < len(m.Groups) && equalGroup(open[same], m.Groups[same]) {
			same++
		}
		for range open[same:] {
			p.Close()
		}
		for _, g := range m.Groups[same:] {
			p.Open(g)
		}
		open = m.Groups
		if m.Text != nil {
			p.Text(*m.Text)
		} else {
			p.Path(m.Path, m.Style)
		}
	}
	for range open {
		p.Close()
	}
}

func equalGroup(a, b Group) bool {
	return a.Class == b.Class && a.Name == b.Name && a.Title == b.Title && a.Link == b.Link && maps.Equal(a.Data, b.Data)
}
