package ink

import (
	"fmt"
	"slices"
	"sync"

	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/gomono"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// Faces lists the faces in the order of their constants.
func Faces() []Face { return []Face{Regular, Bold, Mono} }

// String names the face as its font file does: "Go Bold". A face that does not exist is
// called by its number.
func (f Face) String() string {
	switch f {
	case Regular:
		return "Go Regular"
	case Bold:
		return "Go Bold"
	case Mono:
		return "Go Mono"
	}
	return fmt.Sprintf("Face(%d)", uint8(f))
}

// TrueType returns the font file of a face. The bytes are the caller's own: some formats
// write into what they are given.
func (f Face) TrueType() []byte { return slices.Clone(f.bytes()) }

// bytes returns the shared font file of a face, Regular for a face that does not exist.
func (f Face) bytes() []byte {
	switch f {
	case Bold:
		return gobold.TTF
	case Mono:
		return gomono.TTF
	}
	return goregular.TTF
}

// typeface is what is measured of a font file once, in parts of an em. It never changes
// afterwards, so every page of every goroutine reads the same one.
type typeface struct {
	font                     *sfnt.Font
	capital, ascent, descent float64
	ascii                    [128]float64     // advance by character; 0: no glyph
	others                   map[rune]float64 // the same above ASCII, covered characters only
}

var faces = [...]func() *typeface{
	Regular: sync.OnceValue(func() *typeface { return measure(Regular) }),
	Bold:    sync.OnceValue(func() *typeface { return measure(Bold) }),
	Mono:    sync.OnceValue(func() *typeface { return measure(Mono) }),
}

// of returns the measured typeface, Regular's for a face that does not exist.
func of(f Face) *typeface {
	if int(f) >= len(faces) {
		f = Regular
	}
	return faces[f]()
}

// highest is the last character that the fonts' character maps can hold (they have the
// basic plane alone).
const highest = 0xffff

// measure reads a font that is linked into the program. It panics if the file is damaged,
// which only a broken build can cause.
func measure(f Face) *typeface {
	parsed, err := sfnt.Parse(f.bytes())
	if err != nil {
		panic(fmt.Sprintf("ink: the linked font %v is damaged: %v", f, err))
	}
	var buf sfnt.Buffer
	// At one pixel per font unit nothing is rounded: the numbers are those of the file.
	units := parsed.UnitsPerEm()
	ppem := fixed.I(int(units))
	em := func(v fixed.Int26_6) float64 { return float64(v) / 64 / float64(units) }

	m, err := parsed.Metrics(&buf, ppem, font.HintingNone)
	if err != nil {
		panic(fmt.Sprintf("ink: the linked font %v has no metrics: %v", f, err))
	}
	t := &typeface{font: parsed, capital: em(m.CapHeight), ascent: em(m.Ascent), descent: em(m.Descent),
		others: make(map[rune]float64)}
	advance := func(g sfnt.GlyphIndex) float64 {
		a, err := parsed.GlyphAdvance(&buf, g, ppem, font.HintingNone)
		if err != nil {
			panic(fmt.Sprintf("ink: the linked font %v has no width for glyph %d: %v", f, g, err))
		}
		return em(a)
	}
	for r := rune(' '); r <= highest; r++ {
		g, err := parsed.GlyphIndex(&buf, r)
		if err != nil || g == 0 {
			continue
		}
		if r < 128 {
			t.ascii[r] = advance(g)
		} else {
			t.others[r] = advance(g)
		}
	}
	return t
}

// advance returns the width of a character in parts of an em, and whether the face has it.
func (t *typeface) advance(r rune) (float64, bool) {
	if r >= 0 && r < 128 {
		w := t.ascii[r]
		return w, w > 0
	}
	w, ok := t.others[r]
	return w, ok
}
