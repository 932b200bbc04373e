package sheets

import (
	"strconv"

	"github.com/lugwright/lugwright/render/ink"
	"github.com/lugwright/lugwright/render/sheet"
	"github.com/lugwright/lugwright/render/sheet/flow"
	"github.com/lugwright/lugwright/wiring/list"
)

// Parts is what to buy, and every part of the cart with where it comes from.
func Parts() *sheet.Kind {
	return &sheet.Kind{
		ID:       "parts",
		Title:    "parts list",
		About:    "devices to buy, and every part with its ratings, place, and what the work does with it",
		Surround: sheet.Surround{Open: 1},
		Plan:     planParts,
	}
}

func planParts(b *sheet.Book, r sheet.Room) ([]sheet.Page, error) {
	f := flow.New(r.Width)
	if buy := list.Buy(b.Harness); len(buy) > 0 {
		f.Heading("Devices to buy")
		f.Table(buyTable(buy))
		f.Space(4)
	}
	if items := list.Parts(b.Harness); len(items) > 0 {
		f.Heading("Parts of the cart")
		f.Table(partTable(items))
	}
	return paged(f, r, 1), nil
}

func buyTable(buy []list.ToBuy) flow.Table {
	t := flow.Table{Natural: true, Columns: []flow.Column{
		{Head: "No.", Right: true, Most: 12},
		{Head: "Device", Lines: 2},
		{Head: "Ratings", Lines: 3},
		{Head: "As", Lines: 2, Face: ink.Bold},
	}}
	for _, b := range buy {
		t.Rows = append(t.Rows, flow.Row{Cells: []flow.Cell{
			flow.Text(strconv.Itoa(len(b.Parts))), flow.Text(b.Kind.Title), flow.Text(b.Title), flow.Text(designations(b.Parts)),
		}})
	}
	return t
}

func partTable(items []list.Item) flow.Table {
	t := flow.Table{Columns: []flow.Column{
		{Head: "Part", Face: ink.Bold, Most: 20},
		{Head: "What it is here", Lines: 2},
		{Head: "Device", Lines: 3},
		{Head: "Ratings", Lines: 3},
		{Head: "Place", Most: 30, Lines: 2},
		{Head: "Serial number", Most: 34, Lines: 2},
		{Head: "Work", Most: 24},
		{Head: "By", Most: 56, Lines: 3},
	}}
	for _, x := range items {
		p := x.Part
		by := ""
		if x.Layer != nil {
			by = x.Layer.Title
		}
		t.Rows = append(t.Rows, flow.Row{
			Group: ink.Group{Class: "item", Name: p.Designation},
			Cells: []flow.Cell{
				flow.Linked(p.Designation, partLink(p)), flow.Text(p.Title), flow.Text(p.Kind.Title), flow.Text(list.Ratings(p)),
				flow.Text(p.Place), flow.Text(p.Serial), flow.Text(x.Status.String()), flow.Text(by),
			},
		})
	}
	return t
}
