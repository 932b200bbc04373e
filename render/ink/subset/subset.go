// Package subset cuts a TrueType font down to the characters that a document uses, so that
// it can travel inside the document. Outlines and widths stay exactly as they are; hinting,
// glyph names and layout features go.
package subset

import (
	"encoding/binary"
	"fmt"
	"slices"

	"golang.org/x/image/font/sfnt"
)

// Font is a font that has been cut down.
type Font struct {
	File     []byte          // a TrueType font file
	Glyphs   map[rune]uint16 // the number of each character's glyph in it
	UnitsPer int             // units of an em
	Box      [4]int16        // around all glyphs of the whole font: left, bottom, right, top, in units
}

// TrueType returns the file of [Cut].
func TrueType(font []byte, characters []rune) ([]byte, error) {
	f, err := Cut(font, characters)
	return f.File, err
}

// Cut makes a font with the glyphs of the given characters, of what they are composed of,
// and of the missing-glyph box. Characters that the font lacks, and those above the basic
// plane, are left out. The same characters in any order give the same bytes.
//
// The layout of all tables is that of the OpenType specification 1.9.
func Cut(font []byte, characters []rune) (Font, error) {
	parsed, err := sfnt.Parse(font)
	if err != nil {
		return Font{}, fmt.Errorf("subset: %w", err)
	}
	src, err := readTables(font)
	if err != nil {
		return Font{}, fmt.Errorf("subset: %w", err)
	}
	var buf sfnt.Buffer
	glyphOf := map[rune]uint16{}
	keep := []uint16{0}
	for _, r := range characters {
		g, err := parsed.GlyphIndex(&buf, r)
		if err != nil {
			return Font{}, fmt.Errorf("subset: %w", err)
		}
		if g == 0 || r > 0xfffe {
			continue
		}
		glyphOf[r] = uint16(g)
		keep = append(keep, uint16(g))
	}
	if keep, err = src.withComponents(keep); err != nil {
		return Font{}, fmt.Errorf("subset: %w", err)
	}
	number := make(map[uint16]uint16, len(keep)) // of a kept glyph in the new font
	for i, g := range keep {
		number[g] = uint16(i)
	}
	out, err := src.build(keep, number)
	if err != nil {
		return Font{}, fmt.Errorf("subset: %w", err)
	}
	out["cmap"] = characterMap(glyphOf, number)
	cut := Font{File: assemble(out), Glyphs: make(map[rune]uint16, len(glyphOf)), UnitsPer: int(parsed.UnitsPerEm())}
	for r, g := range glyphOf {
		cut.Glyphs[r] = number[g]
	}
	for i := range cut.Box {
		cut.Box[i] = int16(binary.BigEndian.Uint16(src["head"][36+2*i:]))
	}
	return cut, nil
}

// tables of a font file by their four-letter tags.
type tables map[string][]byte

// needed are the tables that a subset is made from.
var needed = []string{"OS/2", "glyf", "head", "hhea", "hmtx", "loca", "maxp", "name", "post"}

// shortest lengths of the tables whose fields are read or changed here.
var shortest = map[string]int{"head": 54, "hhea": 36, "maxp": 32, "post": 32}

func readTables(font []byte) (tables, error) {
	t := tables{}
	// sfnt.Parse has already seen that the directory lies within the file.
	count := int(binary.BigEndian.Uint16(font[4:]))
	for i := range count {
		record := font[12+16*i:]
		from, long := binary.BigEndian.Uint32(record[8:]), binary.BigEndian.Uint32(record[12:])
		if uint64(from)+uint64(long) > uint64(len(font)) {
			return nil, fmt.Errorf("table %q lies outside the file", record[:4])
		}
		t[string(record[:4])] = font[from : from+long]
	}
	for _, tag := range needed {
		if len(t[tag]) < max(1, shortest[tag]) {
			return nil, fmt.Errorf("table %q is missing or too short: not a TrueType font with outlines", tag)
		}
	}
	return t, nil
}

// glyph returns the outline data of a glyph, empty for a space.
func (t tables) glyph(g uint16) ([]byte, error) {
	var from, to int
	loca := t["loca"]
	if long := binary.BigEndian.Uint16(t["head"][50:]) == 1; long {
		if len(loca) < 4*int(g)+8 {
			return nil, fmt.Errorf("glyph %d is not in the font", g)
		}
		from, to = int(binary.BigEndian.Uint32(loca[4*int(g):])), int(binary.BigEndian.Uint32(loca[4*int(g)+4:]))
	} else {
		if len(loca) < 2*int(g)+4 {
			return nil, fmt.Errorf("glyph %d is not in the font", g)
		}
		from, to = 2*int(binary.BigEndian.Uint16(loca[2*int(g):])), 2*int(binary.BigEndian.Uint16(loca[2*int(g)+2:]))
	}
	if from > to || to > len(t["glyf"]) || to > from && to-from < 10 {
		return nil, fmt.Errorf("the outline of glyph %d is damaged", g)
	}
	return t["glyf"][from:to], nil
}

// withComponents adds the glyphs that others are composed of, and sorts.
func (t tables) withComponents(keep []uint16) ([]uint16, error) {
	seen := map[uint16]bool{}
	for next := keep; len(next) > 0; {
		g := next[0]
		next = next[1:]
		if seen[g] {
			continue
		}
		seen[g] = true
		data, err := t.glyph(g)
		if err != nil {
			return nil, err
		}
		parts, _, err := components(data)
		if err != nil {
			return nil, fmt.Errorf("glyph %d: %w", g, err)
		}
		for _, at := range parts {
			next = append(next, binary.BigEndian.Uint16(data[at:]))
		}
	}
	all := make([]uint16, 0, len(seen))
	for g := range seen {
		all = append(all, g)
	}
	slices.Sort(all)
	return all, nil
}

// build makes every table but the character map.
func (t tables) build(keep []uint16, number map[uint16]uint16) (tables, error) {
	var glyf, loca, hmtx []byte
	for _, g := range keep {
		loca = binary.BigEndian.AppendUint32(loca, uint32(len(glyf)))
		data, err := t.glyph(g)
		if err != nil {
			return nil, err
		}
		if data, err = renumbered(data, number); err != nil {
			return nil, fmt.Errorf("glyph %d: %w", g, err)
		}
		glyf = append(glyf, data...)
		for len(glyf)%4 != 0 {
			glyf = append(glyf, 0)
		}
		metric, err := t.metric(g)
		if err != nil {
			return nil, err
		}
		hmtx = append(hmtx, metric...)
	}
	loca = binary.BigEndian.AppendUint32(loca, uint32(len(glyf)))

	head, hhea, maxp := slices.Clone(t["head"]), slices.Clone(t["hhea"]), slices.Clone(t["maxp"])
	binary.BigEndian.PutUint16(head[50:], 1) // long offsets
	binary.BigEndian.PutUint32(head[8:], 0)  // checkSumAdjustment, set by assemble
	binary.BigEndian.PutUint16(hhea[34:], uint16(len(keep)))
	binary.BigEndian.PutUint16(maxp[4:], uint16(len(keep)))
	binary.BigEndian.PutUint16(maxp[26:], 0) // maxSizeOfInstructions
	post := slices.Clone(t["post"][:32])
	binary.BigEndian.PutUint32(post, 0x00030000) // no glyph names
	return tables{"OS/2": t["OS/2"], "glyf": glyf, "head": head, "hhea": hhea, "hmtx": hmtx,
		"loca": loca, "maxp": maxp, "name": t["name"], "post": post}, nil
}

// metric returns the advance and the left side bearing of a glyph. The last glyphs of a
// table may share one advance.
func (t tables) metric(g uint16) ([]byte, error) {
	long := int(binary.BigEndian.Uint16(t["hhea"][34:]))
	hmtx := t["hmtx"]
	advance, bearing := 4*int(g), 4*int(g)+2
	if int(g) >= long {
		advance, bearing = 4*(long-1), 4*long+2*(int(g)-long)
	}
	if long == 0 || bearing+2 > len(hmtx) {
		return nil, fmt.Errorf("glyph %d has no width", g)
	}
	return slices.Concat(hmtx[advance:advance+2], hmtx[bearing:bearing+2]), nil
}
