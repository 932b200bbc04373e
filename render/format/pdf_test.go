package format

import (
	"bytes"
	"strings"
	"testing"

	"github.com/lugwright/lugwright/render/ink"
	"github.com/lugwright/lugwright/render/sheet"
	"github.com/lugwright/lugwright/wiring"
)

// memory is a folder in memory.
type memory map[string][]byte

func (m memory) Put(name string, content []byte) error {
	m[name] = content
	return nil
}

// small is a document of three pages: a drawing of one wire, and a list on two pages whose
// rows lead to it.
func small(t testing.TB) *sheet.Document {
	t.Helper()
	h := &wiring.Harness{
		Identity: wiring.Identity{Number: "TP-1", Title: "One wire", History: []wiring.Revision{{Index: "B", Date: "2026-03-02"}}},
		Shop:     wiring.Shop{Name: "Quay Lane Carts"},
	}
	drawing := &sheet.Kind{ID: "drawing", Title: "drawing", Plan: func(*sheet.Book, sheet.Room) ([]sheet.Page, error) {
		return []sheet.Page{sheet.Ready("", func(p ink.Page) {
			p.Open(ink.Group{Class: "wire", Name: "W1"})
			p.Path(ink.Lines(ink.At(10, 40), ink.At(90, 40)), ink.Pen(ink.Wide))
			p.Text(ink.Text{At: ink.At(40, 38), String: "W1 RD", Capital: 2.5})
			p.Close()
		})}, nil
	}}
	list := &sheet.Kind{ID: "list", Title: "wire list", Plan: func(*sheet.Book, sheet.Room) ([]sheet.Page, error) {
		row := func(p ink.Page) {
			p.Open(ink.Group{Class: "row", Name: "W1", Title: "wire W1", Link: "wire W1"})
			p.Text(ink.Text{At: ink.At(10, 20), String: "W1 red", Capital: 2.5})
			p.Close()
			p.Open(ink.Group{Class: "row", Name: "W2", Link: "wire W2"}) // which no sheet has
			p.Text(ink.Text{At: ink.At(10, 30), String: "W2 blue", Capital: 2.5})
			p.Close()
		}
		return []sheet.Page{sheet.Ready("1 of 2", row), sheet.Ready("2 of 2", row)}, nil
	}}
	d, err := sheet.Compose(sheet.NewBook(t.Context(), h, sheet.Found{}), []*sheet.Kind{drawing, list}, sheet.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return d
}

func TestPDF(t *testing.T) {
	files := memory{}
	if err := PDF().Write(small(t), files); err != nil {
		t.Fatal(err)
	}
	file := files["TP-1.pdf"]
	if len(files) != 1 || !Stamped(file) {
		t.Fatalf("%d files, of which TP-1.pdf has %d bytes", len(files), len(file))
	}
	for words, want := range map[string]int{
		"/Type/Page/":                   3,
		"/Title (TP-1 One wire)":        1,
		"/Job (TP-1)":                   1,
		"/Revision (B)":                 1,
		"(D:20260302000000Z)":           2, // made and changed
		"/Author (Quay Lane Carts)":     1,
		"/Title (1 drawing)":            1,
		"/Title (2 wire list: 1 of 2)":  1,
		"/Title (wires)":                1,
		"/Subtype/Link":                 2,
		"/Contents (wire W1)":           2,
		"/MediaBox[0 0 841.89 595.276]": 3,
	} {
		if got := bytes.Count(file, []byte(words)); got != want {
			t.Errorf("%s occurs %d times, want %d", words, got, want)
		}
	}
	again := memory{}
	if err := PDF().Write(small(t), again); err != nil || !bytes.Equal(file, again["TP-1.pdf"]) {
		t.Errorf("the same document gives other bytes (%v)", err)
	}
}

func TestWordsOfForms(t *testing.T) {
	seen := map[string]bool{}
	for _, f := range All() {
		if f.ID != strings.ToLower(f.ID) || f.About == "" || seen[f.ID] || Named(strings.ToUpper(f.ID)).ID != f.ID {
			t.Errorf("form %q: %q", f.ID, f.About)
		}
		seen[f.ID] = true
	}
	if Named("docx") != nil {
		t.Error("a form that there is not is found")
	}
}
