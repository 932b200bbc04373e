package pdf

import (
	"fmt"
	"strings"

	"github.com/lugwright/lugwright/render/ink"
)

// place is where on a page a group stands.
type place struct {
	page  *raw
	box   ink.Rect // in millimetres of the page
	group ink.Group
}

func (r *raw) Open(g ink.Group) {
	r.groups = append(r.groups, g)
	r.open = append(r.open, nil)
}

func (r *raw) Close() {
	last := len(r.groups) - 1
	g, box := r.groups[last], r.open[last]
	r.groups, r.open = r.groups[:last], r.open[:last]
	if box == nil {
		return
	}
	r.meet(*box, true)
	switch {
	case g.Link != "":
		r.links = append(r.links, place{r, *box, g})
	case g.Name != "":
		r.anchors = append(r.anchors, place{r, *box, g})
	}
}

// meet makes the innermost open group reach over a box.
func (r *raw) meet(box ink.Rect, any bool) {
	last := len(r.open) - 1
	if last < 0 || !any {
		return
	}
	if known := r.open[last]; known != nil {
		box = known.Union(box)
	}
	r.open[last] = &box
}

// anchors are the first places of the named groups of a document, by what links call them,
// and their names in the order of the document.
type anchors struct {
	of    map[string]place
	order []string
}

func (d *Document) anchors() anchors {
	a := anchors{of: map[string]place{}}
	for _, page := range d.pages {
		for _, here := range page.anchors {
			key := here.group.Key()
			first, known := a.of[key]
			switch {
			case !known:
				a.order = append(a.order, key)
				a.of[key] = here
			case first.page == page:
				first.box = first.box.Union(here.box)
				a.of[key] = first
			}
		}
	}
	return a
}

// annotations writes the links of a page (12.5.6.5). One that leads to what is not in the
// document is left out: its sheet may not be wanted.
func (r *raw) annotations(a anchors, pages []ref) string {
	var list []string
	for _, l := range r.links {
		if to, ok := a.of[l.group.Link]; ok {
			words := l.group.Title
			if words == "" {
				words = l.group.Link
			}
			list = append(list, fmt.Sprintf("<</Type/Annot/Subtype/Link/Rect%s/Border[0 0 0]/F 4/Contents %s/Dest%s>>",
				r.boxInPoints(l.box.Grow(linkMargin)), text(ink.Clean(words)), to.destination(pages)))
		}
	}
	if list == nil {
		return ""
	}
	return "/Annots[" + strings.Join(list, "\n") + "]"
}

// Millimetres around what is picked, and above what is led to.
const (
	linkMargin = 0.4
	headroom   = 10
)

// destination writes where a viewer goes (12.3.2): the place, with some room above, at the
// size at which the reader looks at the document anyhow.
func (p place) destination(pages []ref) string {
	top := (p.page.height - max(0, p.box.Min.Y-headroom)) * pointsPerMM
	left := max(0, p.box.Min.X-headroom) * pointsPerMM
	return fmt.Sprintf("[%s/XYZ %s %s null]", pages[p.page.number], ink.Decimal(left), ink.Decimal(top))
}
