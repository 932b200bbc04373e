package ink

// LineSpacing is the distance of baselines in capital heights (ISO 3098 practice: 1.4).
const LineSpacing = 1.4

// Slack is how much wider a text may come out where the faces are missing and the viewer
// takes another font. Keep this share of a text's width free beside it. Measured on labels
// of a schematic: DejaVu Sans Condensed, which the SVG format asks for, is 6 % narrower to
// 7 % wider than Go Regular and 2 to 8 % wider than Go Bold; plain DejaVu Sans, where a
// machine has nothing else, is 5 to 19 % and 14 to 20 % wider.
const Slack = 0.14

// Width returns how long a line of text is, in millimetres, for a capital height in
// millimetres. The faces are set without kerning and ligatures, so it is the sum of the
// advances of the characters. A character that the face lacks counts as one em, which is
// the width of Replacement and of the ideographs that a viewer may find in another font;
// so does a line break: measure line by line.
func Width(s string, f Face, capital float64) float64 {
	t := of(f)
	ems := 0.0
	for _, r := range s {
		w, ok := t.advance(r)
		if !ok {
			w = 1
		}
		ems += w
	}
	return ems * capital / t.capital
}

// Em returns the size of the face, which is what formats call the font size, that gives
// capitals of the stated height; both in millimetres.
func Em(f Face, capital float64) float64 { return capital / of(f).capital }

// Ascent returns how far the tallest characters (accented capitals) reach above the
// baseline, in millimetres.
func Ascent(f Face, capital float64) float64 { t := of(f); return t.ascent * capital / t.capital }

// Descent returns how far the deepest characters reach below the baseline, in millimetres,
// as a positive number.
func Descent(f Face, capital float64) float64 { t := of(f); return t.descent * capital / t.capital }

// Covers reports whether a face has a glyph for a character.
func Covers(f Face, r rune) bool { _, ok := of(f).advance(r); return ok }

// Width returns the length of the text in millimetres.
func (t Text) Width() float64 { return Width(t.String, t.Face, t.Capital) }

// Box returns the rectangle that the text may ink, from the foot of its deepest to the top
// of its tallest possible character, so that boxes of two texts on one line agree.
func (t Text) Box() Rect {
	long, up, down := t.Width(), Ascent(t.Face, t.Capital), Descent(t.Face, t.Capital)
	from := 0.0
	switch t.Anchor {
	case Middle:
		from = -long / 2
	case End:
		from = -long
	}
	if t.Turned {
		// Reading upwards, the line runs to smaller y and its top lies to the left.
		return Rect{Point{t.At.X - up, t.At.Y - from - long}, Point{t.At.X + down, t.At.Y - from}}
	}
	return Rect{Point{t.At.X + from, t.At.Y - up}, Point{t.At.X + from + long, t.At.Y + down}}
}
