package sheet

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"sync"

	"github.com/lugwright/lugwright/render/ink"
	"github.com/lugwright/lugwright/render/sheet/frame"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// Options of a document. The zero Options want every sheet on A4, with units as written.
type Options struct {
	Paper  frame.Paper
	Units  quantity.System
	Wanted []string // ids, numbers or titles of sheets, without regard to case; empty: all
}

// Document is the sheets of one cart that somebody wants.
type Document struct {
	Book     *Book
	Paper    frame.Paper
	Units    quantity.System
	Contents []Entry  // every sheet that the cart has, by number
	Sheets   []*Sheet // those that are wanted, laid out

	places func() map[string]Target
}

// Entry is a sheet in the table of contents.
type Entry struct {
	Number int
	Kind   *Kind
	Title  string // supplementary title; may be empty
}

// Name is the sheet in words: "wire list", "schematic: 48 V".
func (e Entry) Name() string {
	if e.Title == "" {
		return e.Kind.Title
	}
	return e.Kind.Title + ": " + e.Title
}

// A WantedError says that a sheet was asked for which the job does not have.
type WantedError struct {
	Asked string
	Have  []string // "1 (cover)"
}

func (e *WantedError) Error() string {
	return fmt.Sprintf("no sheet %s: this job has %s", e.Asked, strings.Join(e.Have, ", "))
}

// planned is a page with all that is known before it is laid out.
type planned struct {
	Entry
	page    Page
	content frame.Content
}

// Compose plans the pages of every kind, in the order of the list, and lays out those that
// are wanted. The error is a *WantedError, that of a context that ends, or a fault of the
// drawing itself.
func Compose(b *Book, kinds []*Kind, o Options) (*Document, error) {
	if o.Paper == (frame.Paper{}) {
		o.Paper = frame.A4()
	}
	d := &Document{Book: b, Paper: o.Paper, Units: o.Units}
	all, err := d.plan(kinds)
	if err != nil {
		return nil, err
	}
	wanted, err := choose(all, o.Wanted)
	if err != nil {
		return nil, err
	}
	for _, p := range wanted {
		s, err := d.lay(p, len(all))
		if err != nil {
			return nil, fmt.Errorf("sheet %d, %s: %w", p.Number, p.Name(), err)
		}
		d.Sheets = append(d.Sheets, s)
	}
	d.places = sync.OnceValue(d.findPlaces)
	return d, nil
}

func (d *Document) plan(kinds []*Kind) ([]*planned, error) {
	var all []*planned
	for _, k := range kinds {
		content := d.Book.content(k)
		around := frame.Layout(d.Paper, content)
		corner := around.Area.Min
		pages, err := k.Plan(d.Book, Room{
			Width: around.Area.Width(), Height: around.Area.Height(), First: len(all) + 1,
			Zone:  func(at ink.Point) string { return around.Zone(ink.At(at.X+corner.X, at.Y+corner.Y)) },
			Paper: d.Paper, Units: d.Units,
		})
		if err != nil {
			return nil, fmt.Errorf("%s: %w", k.Title, err)
		}
		for _, page := range pages {
			e := Entry{Number: len(all) + 1, Kind: k, Title: page.Title}
			all = append(all, &planned{e, page, content})
			d.Contents = append(d.Contents, e)
		}
	}
	return all, nil
}

// incomplete stands at the foot of a sheet that lacks something.
const incomplete = "INCOMPLETE: do not build from this sheet"

func (d *Document) lay(p *planned, total int) (*Sheet, error) {
	laid, err := p.page.Lay(d)
	if err != nil {
		return nil, err
	}
	c := p.content
	c.Sheet, c.Sheets, c.Subtitle = p.Number, total, p.Title
	if !laid.Whole() {
		c.Note = incomplete
	}
	return &Sheet{Entry: p.Entry, Laid: laid, around: frame.Layout(d.Paper, c)}, nil
}

// choose picks the pages that are wanted, in their own order.
func choose(all []*planned, asked []string) ([]*planned, error) {
	if len(asked) == 0 {
		return all, nil
	}
	want := map[*planned]bool{}
	for _, word := range asked {
		found := slices.DeleteFunc(slices.Clone(all), func(p *planned) bool { return !p.called(word) })
		if len(found) == 0 {
			return nil, &WantedError{word, names(all)}
		}
		for _, p := range found {
			want[p] = true
		}
	}
	return slices.DeleteFunc(slices.Clone(all), func(p *planned) bool { return !want[p] }), nil
}

// called reports whether a word means the sheet: its number, the id or title of its kind, or
// its own title. Blanks and punctuation do not count.
func (e Entry) called(word string) bool {
	if word == strconv.Itoa(e.Number) {
		return true
	}
	return slices.ContainsFunc([]string{e.Kind.ID, e.Kind.Title, e.Title, e.Name()}, func(name string) bool {
		return name != "" && strings.EqualFold(PlainName(word), PlainName(name))
	})
}

func names(all []*planned) []string {
	var list []string
	for _, p := range all {
		list = append(list, fmt.Sprintf("%d (%s)", p.Number, p.Name()))
	}
	return list
}
