package symbol_test

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"github.com/lugwright/lugwright/render/ink"
	"github.com/lugwright/lugwright/render/svg"
	"github.com/lugwright/lugwright/render/svg/svgtest"
	"github.com/lugwright/lugwright/render/symbol"
)

var update = flag.Bool("update", false, "write the golden files")

func card(t *testing.T) []byte {
	t.Helper()
	var b bytes.Buffer
	page := svg.New(&b, 297, 210, svg.Options{Title: "Symbols"})
	if err := symbol.Card(page); err != nil {
		t.Fatal(err)
	}
	if err := page.Finish(); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// The golden file is there to be looked at when it changes.
func TestCardGolden(t *testing.T) {
	got := card(t)
	path := filepath.Join("testdata", "card.svg")
	if *update {
		if err := os.WriteFile(path, got, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(string(want), string(got)); diff != "" {
		t.Error(diff)
	}
}

func TestCardRendersElsewhere(t *testing.T) {
	img := svgtest.Render(t, card(t), 100)
	if n := svgtest.Ink(img, img.Bounds()); n < 5000 {
		t.Errorf("only %d dark pixels", n)
	}
}

func TestCardShowsEverySymbolApart(t *testing.T) {
	page := ink.NewRecorder(297, 210)
	if err := symbol.Card(page); err != nil {
		t.Fatal(err)
	}
	boxes := map[string]ink.Rect{} // by symbol and example
	var order []string
	for _, m := range page.Marks {
		if len(m.Groups) == 0 {
			continue
		}
		key := m.Groups[0].Name + "/" + m.Groups[0].Title
		box, some := m.Box()
		if !some {
			continue
		}
		if old, ok := boxes[key]; ok {
			box = box.Union(old)
		} else {
			order = append(order, key)
		}
		boxes[key] = box
	}
	shown := map[string]bool{}
	for i, a := range order {
		name, _, _ := strings.Cut(a, "/")
		shown[name] = true
		for _, b := range order[:i] {
			if boxes[a].Grow(-0.3).Meets(boxes[b].Grow(-0.3)) {
				t.Errorf("%s and %s overlap", a, b)
			}
		}
	}
	for _, name := range symbol.Names() {
		if !shown[name] {
			t.Errorf("%s is not on the card", name)
		}
	}
}

func TestCardRefusesSmallPaper(t *testing.T) {
	if err := symbol.Card(ink.NewRecorder(100, 100)); err == nil {
		t.Error("all symbols fit on 100 x 100 mm")
	}
}
