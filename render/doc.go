// Package render is the one-call door to everything that is put on paper: a harness and
// what was found about it go in, files come out.
//
//	files, err := render.Packet(h, found, render.Options{})
//
// It only joins the packages below it: sheet makes the pages, svg writes them.
package render
