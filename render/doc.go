// Package render is the one-call door to everything that is put on paper: a harness and
// what was found about it go in, files come out.
//
//	d, err := render.Packet(ctx, h, found, files, render.Options{})
//
// It only joins the packages below it: sheets says what sheets there are, sheet numbers them
// and puts them in their frames, format writes them, report lists what was found.
package render
