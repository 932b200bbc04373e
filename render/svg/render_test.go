package svg

import (
	"bytes"
	"image"
	"image/png"
	"os/exec"
	"testing"

	"github.com/lugwright/lugwright/render/ink"
	"github.com/lugwright/lugwright/render/ink/subset"
	"github.com/lugwright/lugwright/render/svg/svgtest"
)

// At 254 dpi a millimetre is ten pixels.
const dpi = 254

// librsvg must put a line where the page has it.
func TestAnotherRendererAgrees(t *testing.T) {
	file := write(t, Options{}, func(p ink.Page) {
		p.Path(ink.Lines(ink.At(10, 20), ink.At(50, 20)), ink.Pen(1))
		p.Path(ink.Rect{Min: ink.At(5, 30), Max: ink.At(15, 35)}.Path(), ink.Area(ink.Color{}))
	})
	img := svgtest.Render(t, file, dpi)
	if size := img.Bounds().Size(); size != image.Pt(600, 400) {
		t.Fatalf("60 x 40 mm became %v pixels at %d dpi", size, dpi)
	}
	all := svgtest.Ink(img, img.Bounds())
	line := svgtest.Ink(img, image.Rect(100, 195, 500, 205))
	block := svgtest.Ink(img, image.Rect(50, 300, 150, 350))
	if line != 4000 || block != 5000 || all != line+block {
		t.Errorf("ink: line %d of 4000, block %d of 5000, all %d", line, block, all)
	}
}

// The font that stands in for the faces on a Linux machine keeps to the slack.
func TestFallbackFontKeepsToTheSlack(t *testing.T) {
	fonts, err := exec.Command(svgtest.Tool(t, "fc-list"), ":", "family").Output()
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Contains(fonts, []byte("DejaVu Sans Condensed")) {
		t.Skip("DejaVu Sans Condensed is not installed")
	}
	var texts []ink.Text
	for i, words := range []string{"W37 GNYE 16 AWG", "motor controller", "coil+ reverse display"} {
		for j, face := range ink.Faces() {
			texts = append(texts, ink.Text{At: ink.At(2, 4*float64(3*i+j+1)), String: words, Capital: 2.5, Face: face})
		}
	}
	img := svgtest.Render(t, write(t, Options{}, func(p ink.Page) {
		for _, text := range texts {
			p.Text(text)
		}
	}), dpi)
	inside := 0
	for _, text := range texts {
		box := text.Box()
		box.Max.X += ink.Slack * text.Width()
		box.Min.Y = text.At.Y - text.Capital - 0.3 // the boxes of neighbours would overlap
		in := svgtest.Ink(img, pixels(box))
		if in == 0 {
			t.Errorf("%q was not drawn", text.String)
		}
		inside += in
	}
	if all := svgtest.Ink(img, img.Bounds()); inside != all {
		t.Errorf("%d of %d dark pixels in the boxes of their texts", inside, all)
	}
}

func pixels(r ink.Rect) image.Rectangle {
	return image.Rect(int(r.Min.X*10), int(r.Min.Y*10), int(r.Max.X*10)+1, int(r.Max.Y*10)+1)
}

// FreeType, through librsvg, must draw the cut-down faces like the whole ones.
func TestCutDownFacesLookLikeWholeOnes(t *testing.T) {
	const words = "W37 GNYE 16 AWG é≤Ω"
	for _, face := range ink.Faces() {
		file := write(t, Options{}, func(p ink.Page) {
			p.Text(ink.Text{At: ink.At(3, 20), String: words, Capital: 2.5, Face: face})
		})
		small, err := subset.TrueType(face.TrueType(), []rune(words))
		if err != nil {
			t.Fatal(err)
		}
		whole := svgtest.Render(t, file, dpi, svgtest.FontsFrom(t, face.TrueType()))
		cut := svgtest.Render(t, file, dpi, svgtest.FontsFrom(t, small))
		if !bytes.Equal(pix(t, whole), pix(t, cut)) {
			t.Errorf("%v looks different", face)
		}
		text := ink.Text{At: ink.At(3, 20), String: words, Capital: 2.5, Face: face}
		if in, all := svgtest.Ink(cut, pixels(text.Box())), svgtest.Ink(cut, cut.Bounds()); in != all || all == 0 {
			t.Errorf("%v: %d of %d dark pixels in the box that was measured", face, in, all)
		}
	}
}

func pix(t *testing.T, img image.Image) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := png.Encode(&b, img); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}
