package format

import (
	"bytes"
	"image"
	"image/png"
	"maps"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
)

func TestPNG(t *testing.T) {
	files := memory{}
	if err := PNG().Write(small(t), files); err != nil {
		t.Fatal(err)
	}
	want := []string{"TP-1-1-drawing.png", "TP-1-2-list-1-of-2.png", "TP-1-3-list-2-of-2.png"}
	if diff := cmp.Diff(want, slices.Sorted(maps.Keys(files))); diff != "" {
		t.Fatal(diff)
	}
	for name, file := range files {
		img, err := png.Decode(bytes.NewReader(file))
		if err != nil {
			t.Fatal(err)
		}
		if size := img.Bounds().Size(); size != image.Pt(2339, 1654) { // A4 at 200 dpi
			t.Errorf("%s has %v pixels", name, size)
		}
		if !Stamped(file) {
			t.Errorf("%s is not known as our own", name)
		}
	}
}
