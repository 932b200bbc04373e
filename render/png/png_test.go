package png

import (
	"bytes"
	"crypto/sha256"
	"encoding/binary"
	"errors"
	"fmt"
	"image"
	"image/png"
	"io"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"github.com/lugwright/lugwright/render/ink"
	"github.com/lugwright/lugwright/render/ink/inktest"
	"github.com/lugwright/lugwright/render/svg"
	"github.com/lugwright/lugwright/render/svg/svgtest"
)

func write(t testing.TB, opt Options, draw func(ink.Page)) []byte {
	t.Helper()
	var b bytes.Buffer
	p := New(&b, inktest.Width, inktest.Height, opt)
	draw(p)
	if err := p.Finish(); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func decode(t testing.TB, file []byte) image.Image {
	t.Helper()
	img, err := png.Decode(bytes.NewReader(file))
	if err != nil {
		t.Fatal(err)
	}
	return img
}

func TestSameInputSameBytes(t *testing.T) {
	if !bytes.Equal(write(t, Options{}, inktest.Sample), write(t, Options{}, inktest.Sample)) {
		t.Error("two runs differ")
	}
}

// The pixels of the sample, as first drawn on amd64. They were found the same with fused
// multiplication (GOAMD64=v3), which rounds chains of floating-point operations otherwise.
const samplePixels = "563fd009298aa65de63698d8467678ab0c5feecc30ba14313949840258585f8c"

func TestSamePictureOnEveryMachine(t *testing.T) {
	p := New(io.Discard, inktest.Width, inktest.Height, Options{})
	inktest.Sample(p)
	if got := fmt.Sprintf("%x", sha256.Sum256(p.Image().(*image.RGBA).Pix)); got != samplePixels {
		t.Errorf("the pixels give %s: look at the picture, and write that here if it is right", got)
	}
}

// asSVG is a drawing as librsvg paints it in our faces.
func asSVG(t *testing.T, dpi int, draw func(ink.Page)) image.Image {
	t.Helper()
	var b bytes.Buffer
	page := svg.New(&b, inktest.Width, inktest.Height, svg.Options{})
	draw(page)
	if err := page.Finish(); err != nil {
		t.Fatal(err)
	}
	return svgtest.Render(t, b.Bytes(), dpi, svgtest.FontsFrom(t, ink.Regular.TrueType(), ink.Bold.TrueType(), ink.Mono.TrueType()))
}

// librsvg must paint the same picture of the SVG that the same marks give, but for how the
// two round what covers a part of a pixel.
func TestAnotherRendererAgrees(t *testing.T) {
	for _, dpi := range []int{127, 254, 508} { // at which the paper has whole pixels
		got := decode(t, write(t, Options{DPI: dpi}, inktest.Sample))
		want := asSVG(t, dpi, inktest.Sample)
		if share := inktest.Differing(want, got, 24); share > 0.004 {
			t.Errorf("%d dpi: %.2f %% of the pixels differ", dpi, 100*share)
		}
		if share := inktest.Differing(want, got, 96); share > 0.0005 {
			t.Errorf("%d dpi: %.3f %% of the pixels differ much", dpi, 100*share)
		}
	}
}

// A line of whole pixels is exactly as dark as it should be.
func TestExactCover(t *testing.T) {
	img := decode(t, write(t, Options{DPI: 254}, func(p ink.Page) { // 10 pixels to the millimetre
		p.Path(ink.Lines(ink.At(10, 20), ink.At(50, 20)), ink.Pen(1))
		p.Path(ink.Rect{Min: ink.At(5, 30), Max: ink.At(15, 35)}.Path(), ink.Area(ink.Color{}))
		p.Path(ink.Rect{Min: ink.At(30.05, 30.05), Max: ink.At(30.15, 30.15)}.Path(), ink.Area(ink.Color{})) // a quarter of four pixels
	}))
	if size := img.Bounds().Size(); size != image.Pt(600, 400) {
		t.Fatalf("60 x 40 mm became %v pixels", size)
	}
	all, line, block := svgtest.Ink(img, img.Bounds()), svgtest.Ink(img, image.Rect(100, 195, 500, 205)), svgtest.Ink(img, image.Rect(50, 300, 150, 350))
	if line != 4000 || block != 5000 || all != line+block {
		t.Errorf("ink: line %d of 4000, block %d of 5000, all %d", line, block, all)
	}
	for _, at := range []image.Point{{300, 300}, {301, 300}, {300, 301}, {301, 301}} {
		if v := img.(*image.RGBA).RGBAAt(at.X, at.Y).R; v < 190 || v > 192 {
			t.Errorf("pixel %v covered by a quarter has grey %d", at, v)
		}
	}
}

// The sum of what a shape covers is its area, wherever it stands.
func TestCoverIsArea(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		length := rapid.Int64Range(0, 40*one)
		points := make([]place, 3)
		for i := range points {
			points[i] = place{length.Draw(t, "x"), length.Draw(t, "y")}
		}
		f := newFiller(40, 40)
		f.contour(points)
		sum := int64(0)
		f.each(func(_, _ int, cover int32) { sum += int64(cover) })
		twice := cross(points[1].minus(points[0]), points[2].minus(points[0]))
		want := float64(max(twice, -twice)) / 2 / one / one * full
		if math.Abs(float64(sum)-want) > 0.02*want+2*80 { // up to one 255th lost in each of the pixels along the edges
			t.Fatalf("covers %d of %.0f", sum, want)
		}
	})
}

func TestResolutionAndTitleAreInTheFile(t *testing.T) {
	file := write(t, Options{DPI: 200, Title: "TP-14 Ω"}, inktest.Sample)
	at := bytes.Index(file, []byte("pHYs"))
	if at < 0 || binary.BigEndian.Uint32(file[at+4:]) != 7874 || binary.BigEndian.Uint32(file[at+8:]) != 7874 || file[at+12] != 1 {
		t.Errorf("200 dpi are 7874 pixels to the metre, not % x", file[max(at, 0):][:13])
	}
	if !bytes.Contains(file, []byte("iTXtTitle\x00\x00\x00\x00\x00TP-14 Ω")) {
		t.Error("no title")
	}
	decode(t, file) // checks the sums of the chunks
}

func TestFinishReportsTheFirstFault(t *testing.T) {
	for _, c := range []struct {
		name string
		draw func(ink.Page)
		want string
	}{
		{"not a number", func(p ink.Page) { p.Path(ink.Lines(ink.At(math.NaN(), 0), ink.At(1, 1)), ink.Pen(1)) }, "NaN"},
		{"off the paper", func(p ink.Page) { p.Text(ink.Text{At: ink.At(59, 20), String: "long", Capital: 2.5}) }, "off the paper"},
		{"open group", func(p ink.Page) { p.Open(ink.Group{Class: "wire"}) }, "still open"},
	} {
		var b bytes.Buffer
		p := New(&b, inktest.Width, inktest.Height, Options{})
		c.draw(p)
		if err := p.Finish(); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v, want %q", c.name, err, c.want)
		}
		decode(t, b.Bytes()) // the file is whole all the same
	}
}

func TestSizesThatCannotBeDrawn(t *testing.T) {
	for _, c := range []struct {
		wide, high float64
		dpi        int
	}{{0, 10, 200}, {-1, 10, 200}, {math.NaN(), 10, 200}, {297, math.Inf(1), 200}, {297, 210, -1}, {297, 210, 5000}, {5000, 1, 200}} {
		p := New(io.Discard, c.wide, c.high, Options{DPI: c.dpi})
		if err := p.Finish(); err == nil || !strings.Contains(err.Error(), "cannot be drawn") {
			t.Errorf("%v x %v mm at %d dpi: %v", c.wide, c.high, c.dpi, err)
		}
	}
}

var errFull = errors.New("no space left")

// full disks.
type fullDisk struct{}

func (fullDisk) Write([]byte) (int, error) { return 0, errFull }

func TestWriteErrorsAreKept(t *testing.T) {
	p := New(fullDisk{}, inktest.Width, inktest.Height, Options{})
	inktest.Sample(p)
	if err := p.Finish(); !errors.Is(err, errFull) {
		t.Error(err)
	}
}

// FuzzPath draws lines of any shape, width and dash: never a panic or a hang, never ink
// outside of where the line can be.
func FuzzPath(f *testing.F) {
	f.Add(10.0, 10.0, 50.0, 12.0, 30.0, 35.0, 1.0, 2.0, 0.5, uint8(0))
	f.Add(10.0, 10.0, 10.0, 10.0, 10.0, 10.0, 1.0, 0.0, 0.0, uint8(1))
	f.Add(10.0, 10.0, 50.0, 10.0, 10.0, 10.0, 0.5, 0.001, -3.0, uint8(7))
	f.Add(5.0, 20.0, 55.0, 20.0, 5.0, 20.000001, 3.0, 1e-9, 1e5, uint8(2))
	f.Fuzz(func(t *testing.T, ax, ay, bx, by, cx, cy, width, dash, offset float64, form uint8) {
		path := ink.Path(nil).Move(ax, ay).Line(bx, by).Line(cx, cy)
		if form&1 != 0 {
			path = ink.Path(nil).Move(ax, ay).Curve(ink.At(bx, by), ink.At(cx, cy), ax, by)
		}
		if form&2 != 0 {
			path = path.Close()
		}
		style := ink.Style{Stroke: &ink.Color{}, Width: width, Round: form&4 != 0, Offset: offset}
		if dash != 0 {
			style.Dash = []float64{dash, dash / 2, dash}
		}
		p := New(io.Discard, inktest.Width, inktest.Height, Options{DPI: 50})
		p.Path(path, style)
		if p.Checked.Err() != nil {
			return
		}
		box, any := ink.Mark{Path: path, Style: style}.Box()
		if !any {
			return
		}
		const mitre = 4
		box = box.Grow(mitre*width + 25.4/50)
		img := p.Image().(*image.RGBA)
		for y := range img.Rect.Dy() {
			for x := range img.Rect.Dx() {
				at := ink.At((float64(x)+0.5)*25.4/50, (float64(y)+0.5)*25.4/50)
				if img.RGBAAt(x, y).R != 255 && !box.Holds(ink.Rect{Min: at, Max: at}) {
					t.Fatalf("ink at %v mm, outside of %v", at, box)
				}
			}
		}
	})
}

func BenchmarkA4(b *testing.B) {
	for b.Loop() {
		p := New(io.Discard, 297, 210, Options{})
		for y := range 5 {
			for x := range 4 {
				inktest.Sample(ink.Move(p, float64(x)*70, float64(y)*42))
			}
		}
		if err := p.Finish(); err != nil {
			b.Fatal(err)
		}
	}
}
