// Package inktest has a drawing with every kind of mark, for tests of formats, and compares
// the pictures that come of it.
package inktest

import (
	"image"

	"github.com/lugwright/lugwright/render/ink"
)

// Size of the paper of Sample, in millimetres.
const (
	Width  = 60
	Height = 40
)

// Words are the texts of Sample, in the order in which they are drawn.
func Words() []string {
	return []string{"K1", "W37 RD/WH 16 AWG", "0.21 mΩ ≤ 1", "<&> \"'", "0.5 Ω · 4 mm² → µ"}
}

// Sample draws every kind of mark once, on paper of Width by Height: each form of path, dash
// and corner, each face, anchor and direction of text, groups, and a link back to the first.
func Sample(p ink.Page) {
	words := Words()
	red := ink.Color{R: 0xd0, G: 2, B: 0x1b}
	p.Open(ink.Group{Class: "part", Name: "K1", Title: "Main solenoid, battery side W2"})
	p.Path(ink.Circle(ink.At(20, 20), 5), ink.Pen(ink.Thin).Filled(ink.White()))
	p.Text(ink.Text{At: ink.At(28, 21), String: words[0], Capital: 2.5, Face: ink.Bold})
	p.Close()
	p.Open(ink.Group{Class: "wire", Name: "W37", Data: map[string]string{"to": "K1.coil+", "from": `F"1" <in>`}})
	p.Path(ink.Lines(ink.At(5, 5), ink.At(55.25, 5), ink.At(55.25, 35)), ink.Pen(ink.Wide).In(red))
	p.Path(ink.Lines(ink.At(5, 5), ink.At(55.25, 5)), ink.Style{Stroke: ink.Solid(ink.White()), Width: 0.25, Dash: []float64{2, 1.5}, Offset: 0.5, Round: true})
	p.Open(ink.Group{Class: "label"})
	p.Text(ink.Text{At: ink.At(30, 4), String: words[1], Capital: 2.5, Anchor: ink.Middle, Halo: true})
	p.Text(ink.Text{At: ink.At(54, 30), String: words[2], Capital: 2.5, Face: ink.Mono, Turned: true, Color: ink.Color{R: 0x33, G: 0x44, B: 0x55}})
	p.Text(ink.Text{At: ink.At(50, 38), String: words[3], Capital: 2.5, Anchor: ink.End})
	p.Close()
	p.Close()
	p.Open(ink.Group{Class: "row", Name: "W37", Link: "wire W37"})
	p.Text(ink.Text{At: ink.At(3, 34), String: words[4], Capital: 2.5})
	p.Close()
	p.Path(ink.Lines(ink.At(6, 12), ink.At(10, 26), ink.At(13, 12), ink.At(14, 12), ink.At(14, 28)), ink.Pen(ink.Heavy))
	p.Path(ink.Lines(ink.At(30, 10), ink.At(38, 14), ink.At(32, 17)), ink.Pen(ink.Rail).Rounded())
	p.Path(ink.Lines(ink.At(28, 25), ink.At(46, 25)), ink.Pen(ink.Medium).DashDotted())
	p.Path(ink.Polygon(ink.At(40, 8), ink.At(50, 8), ink.At(50, 14)), ink.Area(ink.Color{R: 0, G: 0x66, B: 0xcc}))
	p.Path(ink.Path{}.Move(30, 29).Curve(ink.At(34, 33), ink.At(38, 25), 42, 30), ink.Pen(ink.Wide).Dashed())
	p.Path(ink.Path(nil).Move(48, 12).Line(48, 12), ink.Style{}) // a place without ink
}

// Differing returns the share of pixels, from 0 to 1, whose grey in two pictures of one size
// is more than tolerance apart, of 255. Pictures of two sizes differ altogether.
func Differing(a, b image.Image, tolerance int) float64 {
	if a.Bounds().Size() != b.Bounds().Size() {
		return 1
	}
	n := 0
	size := a.Bounds().Size()
	for y := range size.Y {
		for x := range size.X {
			d := grey(a, x, y) - grey(b, x, y)
			if max(d, -d) > tolerance {
				n++
			}
		}
	}
	return float64(n) / float64(size.X*size.Y)
}

// grey of a pixel, counted from the upper left corner, of 255.
func grey(img image.Image, x, y int) int {
	at := img.Bounds().Min
	r, g, b, _ := img.At(at.X+x, at.Y+y).RGBA()
	return int(ink.Color{R: uint8(r >> 8), G: uint8(g >> 8), B: uint8(b >> 8)}.Grey())
}
