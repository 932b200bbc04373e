package sheets

import (
	"fmt"
	"math"
	"strings"

	"github.com/lugwright/lugwright/render/ink"
	"github.com/lugwright/lugwright/render/qr"
	"github.com/lugwright/lugwright/render/sheet"
	"github.com/lugwright/lugwright/render/sheet/flow"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/headroom"
	"github.com/lugwright/lugwright/wiring/list"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// Cover is the job on one page, which can stand alone on an invoice.
func Cover() *sheet.Kind {
	return &sheet.Kind{
		ID:       "cover",
		Title:    "summary",
		About:    "the cart, what was fitted, what feeds what, checks, headroom and cautions on one page",
		Surround: sheet.Surround{Cautions: true, Open: 2, Waived: true},
		Plan:     planCover,
	}
}

// qrSide is the length of the sides of the code, in millimetres.
const qrSide = 26.0

func planCover(b *sheet.Book, r sheet.Room) ([]sheet.Page, error) {
	room, err := headroom.Of(b.Context(), b.Harness)
	if err != nil {
		return nil, err
	}
	var pages []sheet.Page
	for lines := 2; lines > 0; lines-- {
		f := flow.New(flow.ColumnWidth(r.Width, 2))
		owner(b, f)
		fitted(b, f, lines)
		f.Break()
		checks(b, f)
		left(room, f)
		feeds(b, f, lines)
		if pages = paged(f, r, 2); len(pages) == 1 {
			break
		}
	}
	return pages[:1], nil
}

// identity is what the code says: job, revision, shop.
func identity(b *sheet.Book) string {
	id := b.Harness.Identity
	words := []string{id.Number}
	if n := len(id.History); n > 0 {
		words = append(words, "revision "+id.History[n-1].Index, id.History[n-1].Date)
	}
	if b.Harness.Shop.Name != "" {
		words = append(words, b.Harness.Shop.Name)
	}
	const most = 200 // letters: a code of a size that a telephone still reads
	text := []rune(strings.Join(words, ", "))
	return string(text[:min(len(text), most)])
}

// owner says whose cart it is, with the code beside it.
func owner(b *sheet.Book, f *flow.Flow) {
	id, shop := b.Harness.Identity, b.Harness.Shop
	var lines []string
	for _, one := range [][2]string{{"Cart", id.Cart}, {"Customer", id.Customer}, {"Work", id.About}, {"Shop", shop.Name}, {"", shop.Address}, {"Telephone", shop.Phone}} {
		if one[1] != "" {
			lines = append(lines, strings.TrimPrefix(one[0]+": "+one[1], ": "))
		}
	}
	var set []string
	for _, s := range lines {
		set = append(set, flow.Wrap(s, ink.Regular, f.Width()-qrSide-3, 2)...)
	}
	set = set[:min(len(set), 7)]
	f.Figure(qrSide+1, func(page ink.Page, x, y float64) {
		for i, s := range set {
			page.Text(ink.Text{At: ink.At(x, y+flow.Letter+1+float64(i)*flow.Line), String: s, Capital: flow.Letter})
		}
		// A text of this length always fits.
		_ = qr.Draw(page, identity(b), ink.At(x+f.Width()-qrSide, y), qrSide)
	})
}

// mostFitted bounds the lines about what was fitted; the parts list has all.
const mostFitted = 22

func fitted(b *sheet.Book, f *flow.Flow, lines int) {
	buy := list.Buy(b.Harness)
	if len(buy) == 0 {
		return
	}
	f.Heading("Fitted")
	for i, x := range buy {
		if i == mostFitted-1 && len(buy) > mostFitted {
			f.Paragraph(fmt.Sprintf("and %d more: see the parts list", len(buy)-i), ink.Regular)
			break
		}
		words := x.Parts[0].Short()
		if x.Title != "" {
			words += ", " + x.Title
		}
		line := flow.Wrap(fmt.Sprintf("%s  %s", designations(x.Parts), words), ink.Regular, f.Width(), lines)
		f.Paragraph(strings.Join(line, " "), ink.Regular)
	}
	f.Space(2)
}

func checks(b *sheet.Book, f *flow.Flow) {
	f.Heading("Checked")
	errors, all := len(b.Open(diag.Error)), len(b.Open(diag.Warning))
	f.Paragraph(fmt.Sprintf("%d rules ran over the plan in every state of the cart: %d errors, %d warnings and %d waived findings, %d lines not checked.",
		len(b.Rules), errors, all-errors, len(b.Waived()), len(b.NotChecked)), ink.Regular)
	if errors > 0 {
		f.Paragraph("Do not energise the cart before the errors are mended.", ink.Bold)
	}
	f.Space(2)
}

// left says what may be added later.
func left(r *headroom.Room, f *flow.Flow) {
	f.Heading("Left for later, with everything switched on")
	for _, x := range r.Reducers {
		if amps, ok := x.Left(); ok {
			f.Paragraph(fmt.Sprintf("%s %s: %v of %v left", x.Converter.Ref(), x.Converter.Part.Short(), rounded(amps), x.Limit), ink.Regular)
		}
	}
	for _, x := range r.Blocks {
		f.Paragraph(fmt.Sprintf("%s %s: %d of %d channels free", x.Part.Designation, x.Part.Short(), len(x.Free()), len(x.Channels)), ink.Regular)
	}
	if r.Parked != nil && !math.IsInf(float64(r.Parked.Lasts), 0) {
		f.Paragraph(fmt.Sprintf("Parked with the key off: %.0f days from %v to empty", math.Floor(r.Parked.Days()), r.Parked.From), ink.Regular)
	}
	f.Space(2)
}

// rounded is a current to a tenth of an ampere, downwards, so that nobody is promised more
// than there is.
func rounded(a quantity.Ampere) quantity.Ampere {
	return quantity.Ampere(math.Floor(float64(a)*10) / 10)
}

// mostFeeds bounds the rows about what feeds what; the fuse schedule has all.
const mostFeeds = 14

func feeds(b *sheet.Book, f *flow.Flow, lines int) {
	t := flow.Table{Columns: []flow.Column{{Head: "Fuse", Face: ink.Bold, Most: 22}, {Head: "Rating", Most: 22}, {Head: "Feeds", Lines: lines}}}
	more := 0
	for _, e := range b.Fuses() {
		if e.Free() {
			continue
		}
		if len(t.Rows) == mostFeeds {
			more++
			continue
		}
		t.Rows = append(t.Rows, flow.Row{Cells: []flow.Cell{flow.Linked(e.Name, partLink(e.Fuse.Part)), flow.Text(fuseRating(e)), flow.Text(coverFeeds(e))}})
	}
	if len(t.Rows) > 0 {
		f.Heading("What feeds what")
		f.Table(t)
	}
	if more > 0 {
		f.Paragraph(fmt.Sprintf("and %d more: see the fuse schedule", more), ink.Regular)
	}
}

// coverFeeds is what a fuse feeds, or the fuses behind it.
func coverFeeds(e list.FuseEntry) string {
	if len(e.Feeds) == 0 {
		return "fuses " + strings.Join(e.Next, ", ")
	}
	return partWords(e.Feeds)
}
