package sheets

import (
	"strings"

	"github.com/lugwright/lugwright/render/ink"
	"github.com/lugwright/lugwright/render/sheet"
	"github.com/lugwright/lugwright/render/sheet/flow"
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/handbook"
	"github.com/lugwright/lugwright/wiring/list"
)

// Fuses is every fuse with what it protects, the free channels, and the spares to carry.
func Fuses() *sheet.Kind {
	return &sheet.Kind{
		ID:       "fuses",
		Title:    "fuse schedule",
		About:    "rating, style, voltage and colour of each fuse, what it protects, free channels and spares",
		Surround: sheet.Surround{Open: 1},
		Plan:     planFuses,
	}
}

func planFuses(b *sheet.Book, r sheet.Room) ([]sheet.Page, error) {
	entries := b.Fuses()
	if len(entries) == 0 {
		return nil, nil
	}
	f := flow.New(r.Width)
	f.Table(fuseTable(b, entries))
	if spares := list.Spares(entries); len(spares) > 0 {
		f.Space(4)
		f.Heading("Spares to carry in the cart")
		f.Table(spareTable(b, spares))
	}
	f.Space(2)
	f.Paragraph("Never fit a larger fuse, and never one of a lower voltage: a fuse for 32 V does not open a circuit of the pack.", ink.Bold)
	return paged(f, r, 1), nil
}

func fuseTable(b *sheet.Book, entries []list.FuseEntry) flow.Table {
	t := flow.Table{Columns: []flow.Column{
		{Head: "Fuse", Face: ink.Bold, Most: 24},
		{Head: "Rating", Most: 22, Face: ink.Bold},
		{Head: "Style", Most: 28},
		{Head: "Rated", Most: 24},
		{Head: "Body", Most: 30},
		{Head: "Where"},
		{Head: "Feeds", Lines: 3},
		{Head: "Then fuses", Lines: 2, Most: 34},
		{Head: "Thinnest wire behind it", Lines: 2, Most: 36},
	}}
	for _, e := range entries {
		t.Rows = append(t.Rows, fuseRow(b, e))
	}
	return t
}

func fuseRow(b *sheet.Book, e list.FuseEntry) flow.Row {
	f := e.Fuse
	cells := []flow.Cell{
		flow.Linked(e.Name, partLink(f.Part)), flow.Text(fuseRating(e)), flow.Text(f.Style), flow.Text(voltWords(f)),
		{Lines: []flow.Word{bodyWord(b.Handbook, f, e.Colour)}}, flow.Text(placeWords(f.Part)),
		flow.Text(feedWords(e)), flow.Text(strings.Join(e.Next, ", ")), flow.Text(thinnestWords(e)),
	}
	return flow.Row{Group: ink.Group{Class: "fuse", Name: e.Name}, Cells: cells}
}

func fuseRating(e list.FuseEntry) string {
	switch {
	case !e.Fuse.Fitted:
		return "none"
	case e.Fuse.Rating == 0:
		return "unknown"
	}
	return e.Fuse.Rating.String()
}

func voltWords(f *wiring.Fuse) string {
	if f.Volts == 0 {
		return "not marked"
	}
	return f.Volts.String()
}

// placeWords is where a part sits, and what it is here.
func placeWords(p *wiring.Part) string {
	words := p.Short()
	if p.Place != "" {
		words += ", " + p.Place
	}
	return words
}

// feedWords says what is behind a fuse.
func feedWords(e list.FuseEntry) string {
	if !e.Free() {
		return partWords(e.Feeds)
	}
	if e.Fuse.Fitted {
		return "nothing: free, take the fuse out"
	}
	return "free"
}

// partWords lists parts with what they are: "E1 Light bar, P3 Horn".
func partWords(parts []*wiring.Part) string {
	var words []string
	for _, p := range parts {
		words = append(words, p.Designation+" "+p.Short())
	}
	return strings.Join(words, ", ")
}

func thinnestWords(e list.FuseEntry) string {
	if e.Thinnest == nil {
		return ""
	}
	return sizeWords(e.Size) + " (" + e.Thinnest.Name() + ")"
}

// bodyWord is the colour of a fuse's body, as its form codes it.
func bodyWord(t *handbook.Tables, f *wiring.Fuse, name string) flow.Word {
	c, ok := t.FuseColour(f.Style, f.Rating)
	if !ok || name == "" {
		return flow.Word{}
	}
	return flow.Word{Text: name, Icon: &flow.Icon{Wide: 6, Draw: func(page ink.Page, x, middle float64) {
		box := ink.Rect{Min: ink.At(x, middle-1.3), Max: ink.At(x+4.8, middle+1.3)}
		page.Path(box.Path(), ink.Pen(ink.Thin).Filled(ink.Color{R: c.RGB.R, G: c.RGB.G, B: c.RGB.B}))
	}}}
}

func spareTable(b *sheet.Book, spares []list.Spare) flow.Table {
	t := flow.Table{Natural: true, Columns: []flow.Column{
		{Head: "Style", Face: ink.Bold}, {Head: "Rating"}, {Head: "Rated at least"}, {Head: "Body"}, {Head: "Fits"},
		{Head: "In the cart", Least: 24},
	}}
	for _, s := range spares {
		f := &wiring.Fuse{Style: s.Style, Rating: s.Rating, Volts: s.Volts}
		t.Rows = append(t.Rows, flow.Row{Cells: []flow.Cell{
			flow.Text(s.Style), flow.Text(s.Rating.String()), flow.Text(voltWords(f)),
			{Lines: []flow.Word{bodyWord(b.Handbook, f, s.Colour)}}, flow.Text(strings.Join(s.Fits, ", ")), tick(),
		}})
	}
	return t
}
