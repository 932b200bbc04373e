package colour

import (
	"embed"
	"encoding/csv"
	"fmt"
	"strings"
	"sync"
)

// The colour table of IEC 60757, and our own additions.
//
//go:embed colour_codes.csv own_colours.csv
var tables embed.FS

// ProtectiveEarth is the bicolour of the protective conductor. It is one colour, not a
// base and a tracer.
const ProtectiveEarth Code = "GNYE"

// Bare is a conductor without insulation.
const Bare Code = "bare"

// entry is one line of a table.
type entry struct {
	code          Code
	name          string
	screen, print RGB
	stripe        RGB
	striped       bool
	standard      bool // in IEC 60757
}

// book is both tables.
type book struct {
	order []Code // IEC order, then our own
	byKey map[Code]entry
}

// read loads the embedded tables once. They are part of the program: a fault in them is
// found by the tests and cannot depend on input.
var read = sync.OnceValue(func() *book {
	b := &book{byKey: map[Code]entry{}}
	for _, file := range []string{"colour_codes.csv", "own_colours.csv"} {
		if err := b.load(file); err != nil {
			panic(fmt.Sprintf("colour: %s: %v", file, err))
		}
	}
	return b
})

func (b *book) load(file string) error {
	text, err := tables.ReadFile(file)
	if err != nil {
		return err
	}
	r := csv.NewReader(strings.NewReader(string(text)))
	r.Comment = '#'
	rows, err := r.ReadAll()
	if err != nil {
		return err
	}
	column := map[string]int{}
	for i, name := range rows[0] {
		column[name] = i
	}
	for _, row := range rows[1:] {
		get := func(name string) string {
			if i, ok := column[name]; ok {
				return row[i]
			}
			return ""
		}
		e, err := newEntry(get)
		if err != nil {
			return err
		}
		b.order = append(b.order, e.code)
		b.byKey[e.code] = e
	}
	return nil
}

func newEntry(get func(string) string) (entry, error) {
	e := entry{code: Code(get("code")), name: get("colour"), standard: get("order") != ""}
	var err error
	if e.screen, err = ParseHex(get("srgb_screen")); err != nil {
		return e, err
	}
	if e.print, err = ParseHex(get("srgb_print")); err != nil {
		return e, err
	}
	if stripe := get("srgb_stripe"); stripe != "" {
		e.striped = true
		e.stripe, err = ParseHex(stripe)
	}
	return e, err
}

// Codes lists the codes of IEC 60757 in the standard's order, then our own TN, CL and
// bare. Shades (LBU, DGN) are not listed: any code that HasShades can have them.
func Codes() []Code { return append([]Code(nil), read().order...) }

// Source says where the codes and their sRGB values come from.
func Source() string {
	return "IEC 60757 letter codes in their order; TN, CL, bare and light and dark shades are our own additions; sRGB values our own choice"
}

// shade is the L or D before a code.
type shade byte

const (
	plain shade = 0
	light shade = 'L'
	dark  shade = 'D'
)

// How far a light shade lies towards white and a dark one towards black: our own choice,
// so that LBU, BU and DBU differ at arm's length.
const (
	lightShare = 0.5
	darkShare  = 0.4
)

// split takes the shade off a code.
func (c Code) split() (shade, Code) {
	if len(c) > 2 && (c[0] == byte(light) || c[0] == byte(dark)) {
		if base := c[1:]; base.HasShades() {
			return shade(c[0]), base
		}
	}
	return plain, c
}

// HasShades reports whether a code can be light or dark: not black and white, which are
// the ends of the scale, nor the bicolour, clear and bare.
func (c Code) HasShades() bool {
	switch c {
	case "BK", "WH", ProtectiveEarth, "CL", Bare:
		return false
	}
	_, ok := read().byKey[c]
	return ok
}

// Known reports whether c is a colour that this package has.
func (c Code) Known() bool {
	_, base := c.split()
	_, ok := read().byKey[base]
	return ok
}

// Standard reports whether c is a code of IEC 60757; legends mark the others as ours.
func (c Code) Standard() bool { return read().byKey[c].standard }

// Name returns the English name: "black", "light blue", "green-and-yellow", "bare"; "" for
// an unknown code.
func (c Code) Name() string {
	s, base := c.split()
	name := read().byKey[base].name
	switch s {
	case light:
		return "light " + name
	case dark:
		return "dark " + name
	}
	return name
}

// Screen returns the colour for a screen.
func (c Code) Screen() RGB { return c.shown(func(e entry) RGB { return e.screen }) }

// Print returns the colour for paper, darker so that thin lines stay visible.
func (c Code) Print() RGB { return c.shown(func(e entry) RGB { return e.print }) }

// Stripe returns the second colour of a bicolour (GNYE), and whether the code has one.
func (c Code) Stripe() (RGB, bool) {
	e := read().byKey[c]
	return e.stripe, e.striped
}

func (c Code) shown(of func(entry) RGB) RGB {
	s, base := c.split()
	rgb := of(read().byKey[base])
	switch s {
	case light:
		return rgb.mixed(white, lightShare)
	case dark:
		return rgb.mixed(RGB{}, darkShare)
	}
	return rgb
}

// leastContrast is the contrast that WCAG 2.1 (1.4.11) asks of graphics.
const leastContrast = 3.0

// NeedsOutline reports whether a line of this colour on white needs a dark outline: its
// screen colour, or its stripe, contrasts with white by less than 3 to 1.
func (c Code) NeedsOutline() bool {
	stripe, striped := c.Stripe()
	return Contrast(c.Screen(), white) < leastContrast || striped && Contrast(stripe, white) < leastContrast
}

// NeedsOutline reports whether base or tracer needs an outline on white.
func (c Colour) NeedsOutline() bool {
	return c.Known() && (c.Base.NeedsOutline() || c.Tracer != "" && c.Tracer.NeedsOutline())
}

// Name returns the English name: "black with yellow"; "" for the zero Colour.
func (c Colour) Name() string {
	if c.Tracer == "" {
		return c.Base.Name()
	}
	return c.Base.Name() + " with " + c.Tracer.Name()
}
