package sheets

import (
	"strings"

	"github.com/lugwright/lugwright/render/ink"
	"github.com/lugwright/lugwright/render/schematic"
	"github.com/lugwright/lugwright/render/sheet"
	"github.com/lugwright/lugwright/render/sheet/flow"
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/list"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// WireList is every wire of the cart, by number.
func WireList() *sheet.Kind {
	return &sheet.Kind{
		ID:       "wire-list",
		Title:    "wire list",
		About:    "every wire with both ends, its pieces and what is on its ends",
		Surround: sheet.Surround{Open: 1},
		Plan:     planWireList,
	}
}

func planWireList(b *sheet.Book, r sheet.Room) ([]sheet.Page, error) {
	t := flow.Table{Columns: []flow.Column{
		{Head: "Wire", Face: ink.Bold, Most: 26, Lines: 2, Whole: true},
		{Head: "From", Lines: 2, Least: 36},
		{Head: "Lug", Lines: 2, Most: 24, Whole: true},
		{Head: "Colour", Most: 32, Lines: 1, Whole: true},
		{Head: "Size", Most: 24, Lines: 1, Whole: true},
		{Head: "Length", Most: 28, Lines: 1, Whole: true},
		{Head: "Piece", Most: 24, Lines: 1},
		{Head: "To", Lines: 2, Least: 36},
		{Head: "Lug", Lines: 2, Most: 24, Whole: true},
		{Head: "For", Lines: 4},
		{Head: "Work", Most: 32, Lines: 3},
	}}
	for _, w := range b.Harness.Wires {
		t.Rows = append(t.Rows, wireRow(w, r.Units))
	}
	if len(t.Rows) == 0 {
		return nil, nil
	}
	f := flow.New(r.Width)
	f.Table(t)
	return paged(f, r, 1), nil
}

func wireRow(w *wiring.Wire, u quantity.System) flow.Row {
	var colours, sizes, lengths, sorts flow.Cell
	for _, p := range w.Pieces {
		colours.Lines = append(colours.Lines, colourWord(p.Colour))
		sizes.Lines = append(sizes.Lines, flow.Word{Text: sizeWords(p.Size)})
		lengths.Lines = append(lengths.Lines, flow.Word{Text: lengthWords(p.Length, u)})
		sorts.Lines = append(sorts.Lines, flow.Word{Text: pieceWords(p)})
	}
	return flow.Row{
		Group: ink.Group{Class: "entry", Name: w.Name()},
		Cells: []flow.Cell{
			flow.Linked(w.Name(), wireLink(w)), endCell(&w.From), flow.Text(w.From.Lug),
			colours, sizes, lengths, sorts,
			endCell(&w.To), flow.Text(w.To.Lug), flow.Text(forWords(w)), flow.Text(workWords(w)),
		},
	}
}

// pieceWords says what a piece is, and how it is joined to the one before it.
func pieceWords(p wiring.Piece) string {
	word := ""
	switch p.Kind {
	case wiring.LeadPiece:
		word = "lead"
	case wiring.ExtendPiece:
		word = "added"
	case wiring.CordPiece:
		word = "cord"
	case wiring.CutPiece:
		word = "wire"
	}
	if p.Joint != "" {
		return p.Joint + ", " + word
	}
	return word
}

// forWords is what a wire does, the loom that it runs in, and what is to be known of it.
func forWords(w *wiring.Wire) string {
	var words []string
	for _, s := range []string{w.For, w.Loom, w.Note} {
		if s != "" {
			words = append(words, s)
		}
	}
	return strings.Join(words, "; ")
}

// workWords says what the work does with a wire, and where an end was before.
func workWords(w *wiring.Wire) string {
	status := list.WireStatus(w)
	if status != list.Moved {
		return status.String()
	}
	return "moved from " + schematic.Minus(w.Moved[len(w.Moved)-1].Was)
}
