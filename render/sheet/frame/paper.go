// Package frame draws what surrounds the drawing on a sheet: the frame with its zones (ISO
// 5457), the title block (ISO 7200), the legend of wire colours, revisions, cautions with
// the signal words of ANSI Z535, and a banner that says what is still open. It keeps to a
// strip at the foot of the sheet so that the drawing has the rest.
//
// All lettering has capitals of 2.5 mm or more but for the captions of fields, which have
// 1.8 mm. Words that are too long for their place are cut with an ellipsis; none overflows,
// even where a viewer replaces the font by a wider one.
package frame

import (
	"fmt"
	"strings"
)

// Paper is a sheet of paper, lying on its long side. Lengths are in millimetres.
type Paper struct {
	Name          string
	Width, Height float64
}

// A4 is ISO 216 A4, landscape.
func A4() Paper { return Paper{"A4", 297, 210} }

// A3 is ISO 216 A3, landscape.
func A3() Paper { return Paper{"A3", 420, 297} }

// Letter is ANSI A (ASME Y14.1, 8.5 x 11 in), landscape.
func Letter() Paper { return Paper{"Letter", 279.4, 215.9} }

// Tabloid is ANSI B (ASME Y14.1, 11 x 17 in), landscape.
func Tabloid() Paper { return Paper{"Tabloid", 431.8, 279.4} }

// Papers lists the papers that sheets are made for.
func Papers() []Paper { return []Paper{A4(), A3(), Letter(), Tabloid()} }

// PaperNamed finds a paper by its name, without regard to case.
func PaperNamed(name string) (Paper, error) {
	var names []string
	for _, p := range Papers() {
		if strings.EqualFold(p.Name, name) {
			return p, nil
		}
		names = append(names, p.Name)
	}
	return Paper{}, fmt.Errorf("there is no paper %q; there are %s", name, strings.Join(names, ", "))
}
