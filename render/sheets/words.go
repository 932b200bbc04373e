package sheets

import (
	"strings"

	"github.com/lugwright/lugwright/render/ink"
	"github.com/lugwright/lugwright/render/schematic"
	"github.com/lugwright/lugwright/render/sheet"
	"github.com/lugwright/lugwright/render/sheet/flow"
	"github.com/lugwright/lugwright/render/wirepen"
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/colour"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// paged breaks a flow into the pages of a sheet, with "1 of 3" for a title if there are
// several.
func paged(f *flow.Flow, r sheet.Room, columns int) []sheet.Page {
	return titled(f.Pages(r.Height, columns))
}

// measure stands where a length is not known.
const measure = "measure"

// lengthWords is a length in the units that are wanted.
func lengthWords(a quantity.Amount, u quantity.System) string {
	if !a.Known() {
		return measure
	}
	return a.In(u)
}

// Measures of a swatch in millimetres, and the conductor that it stands for.
const (
	swatchWide = 6.5
	swatchGap  = 1.0
	swatchMM2  = 2.0
)

// swatch shows a colour before its code.
func swatch(c colour.Colour) *flow.Icon {
	if !c.Known() {
		return nil
	}
	return &flow.Icon{Wide: swatchWide + swatchGap, Draw: func(page ink.Page, x, middle float64) {
		wirepen.New(c, swatchMM2, colour.Code.Print).Draw(page, ink.At(x, middle), ink.At(x+swatchWide, middle))
	}}
}

// colourWord is a colour with its swatch.
func colourWord(c colour.Colour) flow.Word {
	if !c.Known() {
		return flow.Word{Text: "unknown"}
	}
	return flow.Word{Text: c.String(), Icon: swatch(c)}
}

// endWords is where a wire ends.
func endWords(e *wiring.End) string {
	switch {
	case e.Terminal != nil:
		return schematic.Ref(e.Terminal)
	case e.Capped:
		return "capped"
	case e.Loose != "":
		return "loose (was on " + e.Loose + ")"
	}
	return "nowhere"
}

// endCell is where a wire ends, and what stands there.
func endCell(e *wiring.End) flow.Cell {
	if e.Terminal == nil {
		return flow.Text(endWords(e))
	}
	p := e.Terminal.Part
	return flow.Cell{Lines: []flow.Word{
		{Text: schematic.Ref(e.Terminal), Face: ink.Bold, Link: partLink(p)},
		{Text: p.Short()},
	}}
}

// wireLink and partLink name what a reader is led to: the place on the schematic.
func wireLink(w *wiring.Wire) string { return "wire " + w.Name() }
func partLink(p *wiring.Part) string { return "part " + p.Designation }

// sizeWords is a conductor size.
func sizeWords(s quantity.Size) string {
	if !s.Known() {
		return "unknown"
	}
	return s.String()
}

// designations lists parts: "E1, P3".
func designations(parts []*wiring.Part) string {
	var list []string
	for _, p := range parts {
		list = append(list, p.Designation)
	}
	return strings.Join(list, ", ")
}

// sumWords is a sum of lengths, in the units of most of them.
func sumWords(m quantity.Metre, about bool, u quantity.System, sample quantity.Amount) string {
	if u == quantity.AsWritten {
		u = sample.System()
	}
	s := m.In(u)
	if about {
		s = "about " + s
	}
	return s
}
