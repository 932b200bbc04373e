package ink

import (
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// Outline returns a text as the filled outlines of its glyphs, for a format that has no
// fonts. Overlapping contours fill by the non-zero rule. A character that the face lacks
// leaves the box that stands for it.
func Outline(t Text) (Path, error) {
	face := of(t.Face)
	units := float64(face.font.UnitsPerEm())
	em := Em(t.Face, t.Capital)
	along := 0.0
	switch t.Anchor {
	case Middle:
		along = -t.Width() / 2
	case End:
		along = -t.Width()
	}
	var buf sfnt.Buffer
	var p Path
	for _, r := range t.String {
		g, err := face.font.GlyphIndex(&buf, r)
		if err != nil {
			return nil, err
		}
		segments, err := face.font.LoadGlyph(&buf, g, fixed.I(int(units)), nil)
		if err != nil {
			return nil, err
		}
		at := func(v fixed.Point26_6) Point {
			x, y := along+float64(v.X)/64/units*em, float64(v.Y)/64/units*em
			if t.Turned {
				x, y = y, -x
			}
			return Point{t.At.X + x, t.At.Y + y}
		}
		p = appendGlyph(p, segments, at)
		along += Width(string(r), t.Face, t.Capital)
	}
	return p, nil
}

// appendGlyph adds the contours of one glyph; TrueType closes each by itself.
func appendGlyph(p Path, segments sfnt.Segments, at func(fixed.Point26_6) Point) Path {
	for i, s := range segments {
		switch s.Op {
		case sfnt.SegmentOpMoveTo:
			if i > 0 {
				p = p.Close()
			}
			q := at(s.Args[0])
			p = p.Move(q.X, q.Y)
		case sfnt.SegmentOpLineTo:
			q := at(s.Args[0])
			p = p.Line(q.X, q.Y)
		case sfnt.SegmentOpQuadTo:
			// A quadratic is the cubic whose control points lie two thirds of the way out.
			from, c, q := p[len(p)-1].P, at(s.Args[0]), at(s.Args[1])
			p = p.Curve(
				Point{from.X + (c.X-from.X)*2/3, from.Y + (c.Y-from.Y)*2/3},
				Point{q.X + (c.X-q.X)*2/3, q.Y + (c.Y-q.Y)*2/3}, q.X, q.Y)
		case sfnt.SegmentOpCubeTo:
			q := at(s.Args[2])
			p = p.Curve(at(s.Args[0]), at(s.Args[1]), q.X, q.Y)
		}
	}
	if len(segments) > 0 {
		p = p.Close()
	}
	return p
}
