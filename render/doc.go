// Package render is the one-call door to everything that is put on paper: a harness and
// what was found about it go in, files come out.
//
//	drawn, err := render.Packet(h, found, files, render.Options{})
//
// It only joins the packages below it: schematic lays out the drawing, frame surrounds it,
// svg writes it, report lists what was found.
package render
