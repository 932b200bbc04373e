// Package qr makes QR codes (ISO/IEC 18004) as squares to be drawn on a page. It is the only
// package that knows the encoder.
package qr

import (
	"fmt"

	encoder "rsc.io/qr"

	"github.com/lugwright/lugwright/render/ink"
)

// quiet is how many modules around a code must stay white (ISO/IEC 18004, 4 of them).
const quiet = 4

// Draw puts a code for a text into a square with its upper left corner at a point and sides
// of a length in millimetres, the white margin included. It withstands the loss of 15 % of
// its words (level M). The error is that of a text that is too long.
func Draw(page ink.Page, text string, at ink.Point, side float64) error {
	code, err := encoder.Encode(text, encoder.M)
	if err != nil {
		return fmt.Errorf("qr: %w", err)
	}
	module := side / float64(code.Size+2*quiet)
	page.Open(ink.Group{Class: "qr", Title: text})
	defer page.Close()
	page.Path(ink.Rect{Min: at, Max: ink.At(at.X+side, at.Y+side)}.Path(), ink.Area(ink.White()))
	if path := modules(code, at, module); len(path) > 0 {
		page.Path(path, ink.Area(ink.Color{}))
	}
	return nil
}

// modules is all black squares as one path, each run of a row as one rectangle, so that no
// hair of white shows between neighbours.
func modules(code *encoder.Code, at ink.Point, module float64) ink.Path {
	var path ink.Path
	for y := range code.Size {
		for x := 0; x < code.Size; x++ {
			if !code.Black(x, y) {
				continue
			}
			from := x
			for x < code.Size && code.Black(x, y) {
				x++
			}
			corner := func(cx, cy int) ink.Point {
				return ink.At(at.X+float64(cx+quiet)*module, at.Y+float64(cy+quiet)*module)
			}
			path = append(path, ink.Rect{Min: corner(from, y), Max: corner(x, y+1)}.Path()...)
		}
	}
	return path
}
