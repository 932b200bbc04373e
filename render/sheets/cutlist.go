package sheets

import (
	"fmt"
	"strings"

	"github.com/lugwright/lugwright/render/ink"
	"github.com/lugwright/lugwright/render/sheet"
	"github.com/lugwright/lugwright/render/sheet/flow"
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/list"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// CutList is what is cut from each reel, what goes on the ends, and what all of it adds up to.
func CutList() *sheet.Kind {
	return &sheet.Kind{
		ID:       "cut-list",
		Title:    "cut list",
		About:    "every length to cut by size and colour, lugs, joints, heat-shrink, and totals to buy",
		Surround: sheet.Surround{Open: 1},
		Plan:     planCutList,
	}
}

func planCutList(b *sheet.Book, r sheet.Room) ([]sheet.Page, error) {
	reels := b.Reels()
	if len(reels) == 0 && len(b.Fittings()) == 0 {
		return nil, nil
	}
	f := flow.New(flow.ColumnWidth(r.Width, 2))
	f.Heading("To cut")
	f.Table(cutTable(reels, r.Units))
	f.Space(3)
	f.Heading("Wire to buy")
	f.Table(reelTable(reels, r.Units))
	f.Paragraph("Lengths as planned, without waste. Measure what is not known before you buy.", ink.Regular)
	f.Space(3)
	f.Heading("Lugs, joints and heat-shrink to buy")
	f.Table(fittingTable(b.Fittings()))
	return paged(f, r, 2), nil
}

func cutTable(reels []list.Reel, u quantity.System) flow.Table {
	t := flow.Table{Columns: []flow.Column{
		{Head: "Wire", Face: ink.Bold, Most: 36, Whole: true},
		{Head: "Length", Most: 28, Whole: true},
		{Head: "First end", Lines: 2},
		{Head: "Other end", Lines: 2},
		{Head: "Cut", Least: 9, Most: 9},
	}}
	for _, reel := range reels {
		t.Rows = append(t.Rows, flow.Row{Span: reelWords(reel)})
		for _, c := range reel.Cuts {
			t.Rows = append(t.Rows, flow.Row{
				Cells: []flow.Cell{
					flow.Linked(cutName(c), wireLink(c.Wire)), flow.Text(lengthWords(c.Piece.Length, u)),
					flow.Text(cutEndWords(c, 0)), flow.Text(cutEndWords(c, 1)), tick(),
				},
			})
		}
	}
	return t
}

// reelWords is the size and colour of a reel: "2 AWG RD, red".
func reelWords(r list.Reel) string {
	if !r.Colour.Known() {
		return sizeWords(r.Size) + ", colour unknown"
	}
	return sizeWords(r.Size) + "  " + r.Colour.String() + "  " + r.Colour.Name()
}

// cutName tells the piece of a wire that has several: "W37 (2 of 3)".
func cutName(c list.Cut) string {
	if c.Of == 1 {
		return c.Wire.Name()
	}
	return fmt.Sprintf("%s (%d of %d)", c.Wire.Name(), c.Number, c.Of)
}

// cutEndWords is what one end of a cut gets, and where it goes.
func cutEndWords(c list.Cut, i int) string {
	e := c.Ends[i]
	if e.End == nil {
		return e.Joint + " to piece " + fmt.Sprint(c.Number-1+2*i)
	}
	words := endWords(e.End)
	if e.Lug != "" {
		words += ", " + e.Lug
	}
	return words
}

func reelTable(reels []list.Reel, u quantity.System) flow.Table {
	t := flow.Table{Columns: []flow.Column{
		{Head: "Size", Face: ink.Bold},
		{Head: "Colour"},
		{Head: "Pieces", Right: true, Most: 18},
		{Head: "Total"},
	}}
	for _, r := range reels {
		t.Rows = append(t.Rows, flow.Row{Cells: []flow.Cell{
			flow.Text(sizeWords(r.Size)), {Lines: []flow.Word{colourWord(r.Colour)}},
			flow.Text(fmt.Sprint(len(r.Cuts))), flow.Text(totalWords(r, u)),
		}})
	}
	return t
}

// totalWords adds up a reel, and says what is missing in it.
func totalWords(r list.Reel, u quantity.System) string {
	var words []string
	if r.Known > 0 {
		words = append(words, sumWords(r.Known, r.About, u, sampleLength(r)))
	}
	if r.Unknown > 0 {
		words = append(words, fmt.Sprintf("%d to measure", r.Unknown))
	}
	return strings.Join(words, " + ")
}

func sampleLength(r list.Reel) quantity.Amount {
	for _, c := range r.Cuts {
		if c.Piece.Length.Known() {
			return c.Piece.Length
		}
	}
	return quantity.Amount{}
}

func fittingTable(fittings []list.Fitting) flow.Table {
	t := flow.Table{Columns: []flow.Column{
		{Head: "Fitting", Face: ink.Bold},
		{Head: "For wire"},
		{Head: "Number", Right: true, Most: 20},
		{Head: "On", Lines: 3},
	}}
	for _, x := range fittings {
		t.Rows = append(t.Rows, flow.Row{Cells: []flow.Cell{
			flow.Text(fittingWords(x)), flow.Text(sizeWords(x.Size)), flow.Text(fmt.Sprint(x.Count)), flow.Text(fittingPlaces(x)),
		}})
	}
	return t
}

// fittingWords names a fitting: "lug, ring M8".
func fittingWords(x list.Fitting) string {
	switch x.Sort {
	case list.LugFitting:
		return x.What
	case list.JointFitting:
		return x.What + " joint"
	case list.CapFitting:
		return "cap for an unused end"
	}
	return string(x.Sort)
}

// fittingPlaces lists the wires that get one. Heat-shrink goes on all of them.
func fittingPlaces(x list.Fitting) string {
	if x.Sort == list.SleeveFitting {
		return "each lug, joint and cap"
	}
	return wireNames(x.On)
}

// wireNames lists wires, each once: "W7, W9".
func wireNames(wires []*wiring.Wire) string {
	var names []string
	seen := map[*wiring.Wire]bool{}
	for _, w := range wires {
		if !seen[w] {
			names = append(names, w.Name())
		}
		seen[w] = true
	}
	return strings.Join(names, ", ")
}

// tick is a square to put a tick in.
func tick() flow.Cell {
	return flow.Cell{Lines: []flow.Word{{Icon: &flow.Icon{Wide: 4, Draw: func(page ink.Page, x, middle float64) {
		page.Path(ink.Rect{Min: ink.At(x+1.2, middle-1.4), Max: ink.At(x+4, middle+1.4)}.Path(), ink.Pen(ink.Thin))
	}}}}}
}
