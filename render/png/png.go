// Package png draws a page as a picture of a chosen resolution, for where nothing better can
// be shown: a message on a phone, a preview.
//
// All of its arithmetic is in integers from the moment a coordinate has come in, so that the
// same marks give the same bytes on every machine: processors differ in the last bit of what
// they make of a chain of floating-point operations, and a rasteriser has long ones.
package png

import (
	"bufio"
	"errors"
	"fmt"
	"image"
	"image/color"
	"image/png"
	"io"

	"github.com/lugwright/lugwright/render/ink"
)

// Options of a picture.
type Options struct {
	DPI   int    // pixels to the inch; 0: 200, at which lettering of 2.5 mm has capitals of 20 pixels
	Title string // what the picture shows; may be empty
}

const usualDPI = 200

// Bounds of a picture, in pixels: an A3 sheet at 600 dpi is 9921 wide and has 70 million.
// More would only be a mistake, and a costly one; the arithmetic is made for this much.
const (
	mostWide   = 20_000
	mostPixels = 100_000_000
)

// Page is a sheet that becomes a picture.
type Page struct {
	*ink.Checked
	raw *raw
	w   io.Writer
	opt Options
	err error // the size cannot be drawn
}

// New begins a picture of paper of a size in millimetres. Nothing that goes wrong on the way
// stops the drawing: Finish reports the first fault.
func New(w io.Writer, widthMM, heightMM float64, opt Options) *Page {
	if opt.DPI == 0 {
		opt.DPI = usualDPI
	}
	scale := scale{dpi: int64(max(opt.DPI, 1))}
	p := &Page{w: w, opt: opt}
	wide, high := scale.pixels(widthMM), scale.pixels(heightMM)
	if opt.DPI < 0 || wide < 1 || high < 1 || max(wide, high) > mostWide || wide*high > mostPixels {
		p.err = fmt.Errorf("a picture of %v x %v mm at %d dpi cannot be drawn", widthMM, heightMM, opt.DPI)
		wide, high = 1, 1
	}
	p.raw = newRaw(widthMM, heightMM, wide, high, scale)
	p.Checked = ink.Check(p.raw)
	return p
}

// Image is the picture as it stands.
func (p *Page) Image() image.Image { return p.raw.picture }

// Finish writes the picture. It returns the first fault of the drawing (see ink.Checked) or
// of the writer; the file is whole either way, unless the writer failed or the size cannot be
// drawn. It must be called once, after the last group is closed.
func (p *Page) Finish() error {
	if p.err != nil {
		return fmt.Errorf("png: %w", p.err)
	}
	out := bufio.NewWriter(p.w)
	err := png.Encode(&labelled{w: out, chunks: p.chunks()}, p.raw.picture)
	if err := errors.Join(err, out.Flush()); err != nil {
		return fmt.Errorf("png: %w", err)
	}
	if err := p.Checked.Err(); err != nil {
		return fmt.Errorf("png: %w", err)
	}
	return nil
}

// raw paints marks that have passed the checks.
type raw struct {
	width, height float64
	scale         scale
	picture       *image.RGBA
	fill          *filler
}

func newRaw(width, height float64, wide, high int, s scale) *raw {
	r := &raw{width: width, height: height, scale: s, picture: image.NewRGBA(image.Rect(0, 0, wide, high))}
	for i := range r.picture.Pix {
		r.picture.Pix[i] = 0xff
	}
	r.fill = newFiller(wide, high)
	return r
}

func (r *raw) Size() (width, height float64) { return r.width, r.height }

func (r *raw) Open(ink.Group) {}

func (r *raw) Close() {}

func (r *raw) Path(p ink.Path, s ink.Style) {
	runs := r.scale.flatten(p)
	if s.Fill != nil {
		for _, run := range runs {
			r.fill.contour(run.points)
		}
		r.paint(*s.Fill)
	}
	if s.Stroke != nil {
		pen := pen{half: max(1, r.scale.length(s.Width)/2), round: s.Round}
		for _, run := range r.scale.dash(runs, s) {
			for _, outline := range pen.stroke(run) {
				r.fill.contour(outline)
			}
		}
		r.paint(*s.Stroke)
	}
}

func (r *raw) Text(t ink.Text) {
	t.String, _ = ink.Substitute(t.String, t.Face)
	outline, err := ink.Outline(t)
	if err != nil {
		return // cannot be: the faces are linked in and whole
	}
	if t.Halo {
		white := ink.White()
		r.Path(outline, ink.Style{Stroke: &white, Width: 0.4 * t.Capital, Round: true})
	}
	r.Path(outline, ink.Area(t.Color))
}

// paint lays a colour over the picture where the contours that were added cover it.
func (r *raw) paint(c ink.Color) {
	r.fill.each(func(x, y int, cover int32) {
		was := r.picture.RGBAAt(x, y)
		r.picture.SetRGBA(x, y, color.RGBA{
			R: blend(was.R, c.R, cover), G: blend(was.G, c.G, cover), B: blend(was.B, c.B, cover), A: 0xff,
		})
	})
}

// blend mixes a part of a colour over what was there, by how much of the pixel is covered,
// of full.
func blend(was, over uint8, cover int32) uint8 {
	return uint8((int32(was)*(full-cover) + int32(over)*cover + full/2) / full)
}
