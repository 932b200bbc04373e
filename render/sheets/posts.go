package sheets

import (
	"fmt"
	"strings"

	"github.com/lugwright/lugwright/render/ink"
	"github.com/lugwright/lugwright/render/schematic"
	"github.com/lugwright/lugwright/render/sheet"
	"github.com/lugwright/lugwright/render/sheet/flow"
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/list"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/stack"
)

// Posts shows how the lugs sit on each stud: those with several as exploded views, the others
// in a table.
func Posts() *sheet.Kind {
	return &sheet.Kind{
		ID:       "posts",
		Title:    "post stacks",
		About:    "the order of the lugs on each stud, with nut, washers, spanner and torque",
		Surround: sheet.Surround{Open: 1},
		Plan:     planPosts,
	}
}

// Columns of exploded views, and of the table of single lugs.
const (
	stackColumns  = 3
	singleColumns = 1
)

func planPosts(b *sheet.Book, r sheet.Room) ([]sheet.Page, error) {
	posts, err := b.Posts()
	if err != nil || len(posts) == 0 {
		return nil, err
	}
	stacks, singles := flow.New(flow.ColumnWidth(r.Width, stackColumns)), flow.New(r.Width)
	several, alone := 0, flow.Table{Columns: singleHeads()}
	for _, p := range posts {
		if len(p.Lugs) > 1 {
			drawing := stackDrawing{b, p, r.Units, stacks.Width()}
			stacks.Figure(drawing.height(), drawing.draw)
			several++
		} else {
			alone.Rows = append(alone.Rows, singleRow(b, p, r.Units))
		}
	}
	var draws []func(ink.Page)
	if several > 0 {
		draws = append(draws, stacks.Pages(r.Height, stackColumns)...)
	}
	if len(alone.Rows) > 0 {
		singles.Heading("Studs with one lug")
		singles.Table(alone)
		draws = append(draws, singles.Pages(r.Height, singleColumns)...)
	}
	return titled(draws), nil
}

func singleHeads() []flow.Column {
	return []flow.Column{
		{Head: "Stud", Face: ink.Bold, Most: 30, Whole: true},
		{Head: "Part"},
		{Head: "Thread", Most: 24},
		{Head: "Wire", Most: 26, Whole: true},
		{Head: "Colour", Most: 32, Whole: true},
		{Head: "Size", Most: 24, Whole: true},
		{Head: "Lug", Most: 28},
		{Head: "Hole", Most: 24},
		{Head: "Goes to"},
		{Head: "Spanner", Most: 24},
		{Head: "Torque"},
		{Head: "Done", Least: 15, Most: 15},
	}
}

func singleRow(b *sheet.Book, p list.Post, u quantity.System) flow.Row {
	l := p.Lugs[0]
	return flow.Row{
		Group: ink.Group{Class: "stud", Name: p.Terminal.Ref()},
		Cells: []flow.Cell{
			flow.Text(schematic.Ref(p.Terminal)), flow.Text(p.Terminal.Part.Short()), flow.Text(p.Terminal.Form.Size),
			flow.Linked(l.Wire.Name(), wireLink(l.Wire)), {Lines: []flow.Word{colourWord(pieceAt(l).Colour)}}, flow.Text(sizeWords(l.Size)),
			flow.Text(lugWords(l)), flow.Text(holeWords(b, l, u)), flow.Text(farEnd(l)),
			flow.Text(spannerWords(p)), flow.Text(torqueWords(p, u)), tick(),
		},
	}
}

// pieceAt is the piece of wire that a lug is crimped to.
func pieceAt(l stack.Lug) wiring.Piece {
	ps := l.Wire.Pieces
	switch {
	case len(ps) == 0:
		return wiring.Piece{}
	case l.End == &l.Wire.From:
		return ps[0]
	}
	return ps[len(ps)-1]
}

func lugWords(l stack.Lug) string {
	if l.End == nil || l.End.Lug == "" {
		return "no lug stated"
	}
	return l.End.Lug
}

// holeWords is the hole of a lug, as its words name it.
func holeWords(b *sheet.Book, l stack.Lug, u quantity.System) string {
	if l.End == nil {
		return ""
	}
	hole, ok := list.Hole(b.Handbook, l.End.Lug)
	if !ok {
		return ""
	}
	return hole.In(u)
}

// farEnd is where the other end of a lug's wire goes.
func farEnd(l stack.Lug) string {
	other := &l.Wire.To
	if l.End == other {
		other = &l.Wire.From
	}
	words := endWords(other)
	if other.Terminal != nil {
		words += " " + other.Terminal.Part.Short()
	}
	return words
}

// spannerWords is the spanner for the nut: of a stud whose hardware may differ, each.
func spannerWords(p list.Post) string {
	if !p.Known || len(p.Stud.Spanners) == 0 {
		return "unknown"
	}
	return p.Stud.Spanners[0].Name
}

// torqueWords is the torque that the maker states.
func torqueWords(p list.Post, u quantity.System) string {
	if p.Torque == 0 {
		return "unknown: ask the maker"
	}
	return p.Torque.In(u)
}

// nutWords is what is said of the nut.
func nutWords(p list.Post) string {
	var words []string
	if size := p.Terminal.Form.Size; size != "" {
		words = append(words, "nut "+size)
	} else {
		words = append(words, "nut, thread unknown")
	}
	if p.Known && len(p.Stud.Spanners) > 0 {
		words = append(words, "spanner "+p.Stud.Spanners[0].Name)
	}
	return strings.Join(words, ", ")
}

// footLines are what is said below an exploded view.
func footLines(p list.Post, u quantity.System) []string {
	lines := []string{"Torque " + torqueWords(p, u)}
	if p.Stated {
		lines = append(lines, "Order as the job states it")
	}
	if p.Cover {
		lines = append(lines, "Cover the post before the next tool comes near")
	}
	return lines
}

// titled makes pages of drawings, with "1 of 3" for a title if there are several.
func titled(draws []func(ink.Page)) []sheet.Page {
	var pages []sheet.Page
	for i, draw := range draws {
		title := ""
		if len(draws) > 1 {
			title = fmt.Sprintf("%d of %d", i+1, len(draws))
		}
		pages = append(pages, sheet.Ready(title, draw))
	}
	return pages
}
