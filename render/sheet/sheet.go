package sheet

import (
	"github.com/lugwright/lugwright/render/ink"
	"github.com/lugwright/lugwright/render/sheet/frame"
)

// Sheet is one page in its frame, with its number.
type Sheet struct {
	Entry
	Laid
	around *frame.Frame
}

// Draw puts the whole sheet on a page of the size of its paper. All of it is in a group of
// the class "sheet" with the id of the kind as its name, so that "sheet wire-list" links to
// the first page of the wire list.
func (s *Sheet) Draw(page ink.Page) {
	page.Open(ink.Group{Class: "sheet", Name: s.Kind.ID, Title: s.Name()})
	s.around.Draw(page)
	s.Laid.Draw(ink.Move(page, s.around.Area.Min.X, s.around.Area.Min.Y))
	page.Close()
}

// Area is where the content stands, in millimetres of the page.
func (s *Sheet) Area() ink.Rect { return s.around.Area }

// Target is where a link leads: a place on a sheet.
type Target struct {
	Sheet *Sheet
	Box   ink.Rect // in millimetres of the page
}

// Find looks for the place that a link names, "wire W37": the first group with this class
// and name on the sheets of the document, and all marks of it there. It reports false for
// one that is not there, because no sheet has it or because its sheet is not wanted.
func (d *Document) Find(link string) (Target, bool) {
	t, ok := d.places()[link]
	return t, ok
}

// findPlaces draws every sheet, in order to see what stands where.
func (d *Document) findPlaces() map[string]Target {
	places := map[string]Target{}
	for _, s := range d.Sheets {
		record := ink.NewRecorder(d.Paper.Width, d.Paper.Height)
		s.Draw(record)
		for _, m := range record.Marks {
			if box, any := m.Box(); any {
				for _, g := range m.Groups {
					meet(places, s, g, box)
				}
			}
		}
	}
	return places
}

// meet makes the place of a group reach over one of its marks.
func meet(places map[string]Target, s *Sheet, g ink.Group, box ink.Rect) {
	if g.Name == "" || g.Link != "" {
		return
	}
	known, ok := places[g.Key()]
	switch {
	case !ok:
		places[g.Key()] = Target{s, box}
	case known.Sheet == s:
		places[g.Key()] = Target{s, known.Box.Union(box)}
	}
}
