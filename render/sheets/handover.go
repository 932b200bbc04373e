package sheets

import (
	"fmt"
	"slices"

	"github.com/lugwright/lugwright/render/ink"
	"github.com/lugwright/lugwright/render/sheet"
	"github.com/lugwright/lugwright/render/sheet/flow"
	"github.com/lugwright/lugwright/render/sheet/frame"
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/list"
)

// HandOver is the checklist that is gone through with the customer, and the cautions that
// this cart calls for.
func HandOver() *sheet.Kind {
	return &sheet.Kind{
		ID:       "hand-over",
		Title:    "hand-over",
		About:    "checklist for the hand-over, and every caution that the cart calls for",
		Surround: sheet.Surround{Open: 3, Waived: true},
		Plan:     planHandOver,
	}
}

func planHandOver(b *sheet.Book, r sheet.Room) ([]sheet.Page, error) {
	f := flow.New(flow.ColumnWidth(r.Width, 2))
	f.Heading("Cautions")
	for _, c := range b.Cautions() {
		addCaution(f, c)
	}
	f.Paragraph("Follow the makers, local code, and where they ask for one a licensed person.", ink.Regular)
	f.Break()
	f.Heading("Before the cart is handed over")
	t := flow.Table{Columns: []flow.Column{
		{Head: "Done", Least: 14, Most: 14},
		{Head: "What", Lines: 4},
		{Head: "By", Least: 18, Most: 18},
	}}
	for _, item := range checklist(b) {
		t.Rows = append(t.Rows, flow.Row{Cells: []flow.Cell{tick(), flow.Text(item), flow.Text()}, Tall: 6.5})
	}
	f.Table(t)
	f.Space(4)
	f.Figure(16, func(page ink.Page, x, y float64) { signatures(page, x, y, f.Width()) })
	return paged(f, r, 2), nil
}

// addCaution sets one caution beside its signal word.
func addCaution(f *flow.Flow, c frame.Caution) {
	const gap = 2.0
	words := flow.Wrap(c.Text, ink.Regular, f.Width()-frame.SignalWide-gap, 0)
	high := max(frame.SignalHigh, float64(len(words))*flow.Line) + 1.6
	f.Figure(high, func(page ink.Page, x, y float64) {
		page.Open(ink.Group{Class: "caution"})
		frame.DrawSignal(page, x, y, c.Word)
		for i, s := range words {
			page.Text(ink.Text{At: ink.At(x+frame.SignalWide+gap, y+1+flow.Letter+float64(i)*flow.Line), String: s, Capital: flow.Letter})
		}
		page.Close()
	})
}

// checklist is what is to be done on this cart: common practice, no published source.
func checklist(b *sheet.Book) []string {
	items := []string{
		fmt.Sprintf("No error is open, and every warning is understood (today: %d errors, %d warnings)", len(b.Open(diag.Error)), len(b.Open(diag.Warning))-len(b.Open(diag.Error))),
	}
	if n := len(b.NotChecked); n > 0 {
		items = append(items, fmt.Sprintf("What was not checked has been looked at by hand (%d lines)", n))
	}
	items = append(items, "Lugs stand in the order of the post stacks; each nut is tightened and marked")
	if slices.ContainsFunc(b.Harness.Parts, func(p *wiring.Part) bool { return hasElement[*wiring.Source](p) }) {
		items = append(items, "Covers are on both posts of the pack")
	}
	if slices.ContainsFunc(b.Harness.Wires, func(w *wiring.Wire) bool { return w.From.Capped || w.To.Capped }) {
		items = append(items, "Leads that are not used are capped and tied back")
	}
	items = append(items, "All readings of the meter sheet were taken and agree")
	if b.Harness.State("drive-away") != nil {
		items = append(items, "With the cord in, the cart does not drive")
	}
	if slices.ContainsFunc(b.Harness.Parts, func(p *wiring.Part) bool { return hasElement[*wiring.Charger](p) }) {
		items = append(items, "One full charge was made and ended by itself")
	}
	if len(list.Spares(b.Fuses())) > 0 {
		items = append(items, "Spare fuses are in the cart")
	}
	return append(items,
		"First run with the driven wheels off the ground, then forward and reverse at a walking pace",
		"The customer was shown the main switch, the tow position and what the cautions say",
		"These sheets are in the cart and with the invoice")
}

func hasElement[E wiring.Element](p *wiring.Part) bool {
	return slices.ContainsFunc(p.Elements, func(e wiring.Element) bool { _, ok := e.(E); return ok })
}

// signatures are two lines to sign on.
func signatures(page ink.Page, x, y, width float64) {
	half := (width - 6) / 2
	for i, who := range []string{"Handed over by, date", "Received by, date"} {
		left := x + float64(i)*(half+6)
		page.Path(ink.Lines(ink.At(left, y+10), ink.At(left+half, y+10)), ink.Pen(ink.Thin))
		page.Text(ink.Text{At: ink.At(left, y+14), String: who, Capital: flow.Letter})
	}
}
