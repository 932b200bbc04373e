package sheets

import (
	"slices"
	"strings"
	"testing"

	"github.com/lugwright/lugwright/render/ink"
	"github.com/lugwright/lugwright/render/sheet"
	"github.com/lugwright/lugwright/render/sheet/frame"
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/job/jobtest"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/rules"
)

// quick is all kinds but the schematic, whose own tests read it back.
func quick() []*sheet.Kind {
	return slices.DeleteFunc(All(), func(k *sheet.Kind) bool { return k.ID == "schematic" })
}

func compose(t *testing.T, h *wiring.Harness, o sheet.Options) *sheet.Document {
	t.Helper()
	d, err := sheet.Compose(sheet.NewBook(t.Context(), h, sheet.Found{Rules: rules.All()}), quick(), o)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// record draws a sheet through the checks that every format makes.
func record(t *testing.T, d *sheet.Document, s *sheet.Sheet) *ink.Recorder {
	t.Helper()
	r := ink.NewRecorder(d.Paper.Width, d.Paper.Height)
	page := ink.Check(r)
	s.Draw(page)
	if err := page.Err(); err != nil {
		t.Errorf("%s: %v", s.Name(), err)
	}
	return r
}

// inspect holds a sheet to what a reader needs: nothing of its content off the room, no words
// on words, lettering of 2.5 mm.
func inspect(t *testing.T, d *sheet.Document, s *sheet.Sheet) {
	t.Helper()
	var texts []ink.Text
	area := s.Area().Grow(0.5)
	for _, m := range record(t, d, s).Marks {
		if slices.ContainsFunc(m.Groups, func(g ink.Group) bool { return g.Class == "frame" }) {
			continue
		}
		if box, any := m.Box(); any && !area.Holds(box) {
			t.Errorf("%s: %v reaches out of %v", s.Name(), box, area)
		}
		if m.Text != nil {
			texts = append(texts, *m.Text)
		}
	}
	if len(texts) == 0 {
		t.Errorf("%s says nothing", s.Name())
	}
	for i, a := range texts {
		if a.Capital < 2.5 {
			t.Errorf("%s: %q is %v mm high", s.Name(), a.String, a.Capital)
		}
		for _, b := range texts[:i] {
			if inked(a).Meets(inked(b)) {
				t.Errorf("%s: %q stands on %q", s.Name(), a.String, b.String)
			}
		}
	}
}

// inked is what capitals of a text cover: the box of the tallest characters of two lines may
// well share a hair.
func inked(t ink.Text) ink.Rect {
	box := t.Box()
	box.Min.Y, box.Max.Y = t.At.Y-t.Capital, t.At.Y
	return box
}

func TestSheetsOfTheExamples(t *testing.T) {
	for _, name := range jobtest.Examples() {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			h := jobtest.Example(t, name)
			for _, paper := range []frame.Paper{frame.A4(), frame.Letter()} {
				d := compose(t, h, sheet.Options{Paper: paper, Units: quantity.Metric})
				for i, s := range d.Sheets {
					if s.Number != i+1 {
						t.Errorf("sheet %d has the number %d", i+1, s.Number)
					}
					inspect(t, d, s)
				}
			}
		})
	}
}

// Words of other people's must not break a sheet, however long or strange they are.
func TestSheetsOfHostileWords(t *testing.T) {
	h := jobtest.Example(t, jobtest.Examples()[0])
	hostile := "<script>alert(1)</script> \u202eright to left \U0001f525 " + strings.Repeat("long", 50)
	h.Identity.Title, h.Identity.Cart, h.Identity.Customer, h.Shop.Name = hostile, hostile, hostile, hostile
	for _, p := range h.Parts {
		p.Title, p.Place, p.Serial = hostile, hostile, hostile
	}
	for _, w := range h.Wires {
		w.For, w.Note, w.Loom = hostile, hostile, hostile
	}
	d := compose(t, h, sheet.Options{})
	for _, s := range d.Sheets {
		inspect(t, d, s)
	}
}

func TestWireListHasEveryWire(t *testing.T) {
	h := jobtest.Example(t, jobtest.Examples()[0])
	d := compose(t, h, sheet.Options{Wanted: []string{"wire-list"}})
	var got []string
	for _, s := range d.Sheets {
		for _, m := range record(t, d, s).Marks {
			for _, g := range m.Groups {
				if g.Class == "entry" && !slices.Contains(got, g.Name) {
					got = append(got, g.Name)
				}
			}
		}
	}
	var want []string
	for _, w := range h.Wires {
		want = append(want, w.Name())
	}
	if !slices.Equal(got, want) {
		t.Errorf("the list has %v, the cart %v", got, want)
	}
}

// A colour code, a size or a number that is cut is a wrong one.
func TestCodesAreWhole(t *testing.T) {
	for _, name := range jobtest.Examples() {
		h := jobtest.Example(t, name)
		for _, paper := range []frame.Paper{frame.A4(), frame.Letter()} {
			for _, units := range []quantity.System{quantity.Metric, quantity.Inch} {
				d := compose(t, h, sheet.Options{Paper: paper, Units: units, Wanted: []string{"wire-list"}})
				said := map[string][]string{}
				for _, s := range d.Sheets {
					for _, m := range record(t, d, s).Marks {
						for _, g := range m.Groups {
							if g.Class == "entry" && m.Text != nil {
								said[g.Name] = append(said[g.Name], m.Text.String)
							}
						}
					}
				}
				for _, w := range h.Wires {
					want := []string{w.Name()}
					for _, p := range w.Pieces {
						want = append(want, colourWord(p.Colour).Text, sizeWords(p.Size), lengthWords(p.Length, units))
					}
					for _, one := range want {
						if one != "" && !slices.Contains(said[w.Name()], one) {
							t.Errorf("%s on %s: %q is not whole in %q", name, paper.Name, one, said[w.Name()])
						}
					}
				}
			}
		}
	}
}

func TestAllKindsSayWhatTheyAre(t *testing.T) {
	seen := map[string]bool{}
	for _, k := range All() {
		if k.ID == "" || k.Title == "" || k.About == "" || k.Plan == nil || seen[k.ID] {
			t.Errorf("%+v lacks something, or is there twice", k)
		}
		seen[k.ID] = true
		if Find(k.ID) == nil {
			t.Errorf("%s is not found", k.ID)
		}
	}
}
