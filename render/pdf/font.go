package pdf

import (
	"crypto/sha256"
	"fmt"
	"strings"

	"github.com/lugwright/lugwright/render/ink"
	"github.com/lugwright/lugwright/render/ink/subset"
)

// font is a face as the file uses it: a composite font (9.7) whose codes number the
// characters in the order in which they are first needed.
type font struct {
	face       ink.Face
	code       map[rune]int
	characters []rune // by code, from 1; code 0 is the missing glyph
}

func newFont(face ink.Face) *font { return &font{face: face, code: map[rune]int{}} }

// fontName is what content streams call a face.
func fontName(f ink.Face) string { return fmt.Sprintf("/F%d", f) }

// codes writes a text as the hexadecimal digits of its codes.
func (f *font) codes(s string) string {
	var b strings.Builder
	for _, r := range s {
		code, ok := f.code[r]
		if !ok {
			f.characters = append(f.characters, r)
			code = len(f.characters)
			f.code[r] = code
		}
		fmt.Fprintf(&b, "%04x", code)
	}
	return b.String()
}

// perMille of an em, the unit of widths in a PDF.
const perMille = 1000

// put writes the objects of a font and returns the number of the first.
func (f *font) put(out *file) (ref, error) {
	cut, err := subset.Cut(f.face.TrueType(), f.characters)
	if err != nil {
		return 0, err
	}
	program, glyphs, unicode := out.reserve(), out.reserve(), out.reserve()
	out.stream(program, fmt.Sprintf("/Length1 %d", len(cut.File)), cut.File)
	out.stream(glyphs, "", f.glyphMap(cut.Glyphs))
	out.stream(unicode, "", f.toUnicode())
	name := f.name(cut.File)
	descriptor := out.add(f.descriptor(name, cut, program))
	descendant := out.add(fmt.Sprintf("<</Type/Font/Subtype/CIDFontType2/BaseFont%s/CIDSystemInfo<</Registry(Adobe)/Ordering(Identity)/Supplement 0>>"+
		"/FontDescriptor %s/DW %s/W[1[%s]]/CIDToGIDMap %s>>", name, descriptor, f.width(ink.Replacement), f.widths(), glyphs))
	return out.add(fmt.Sprintf("<</Type/Font/Subtype/Type0/BaseFont%s/Encoding/Identity-H/DescendantFonts[%s]/ToUnicode %s>>",
		name, descendant, unicode)), nil
}

// name is that of the face behind a tag of six letters that tells this subset from others
// (9.6.4).
func (f *font) name(file []byte) string {
	sum := sha256.Sum256(file)
	tag := make([]byte, 6)
	for i := range tag {
		tag[i] = 'A' + sum[i]%26
	}
	return "/" + string(tag) + "+" + strings.ReplaceAll(f.face.String(), " ", "")
}

// Flags of a font descriptor (9.8.2).
const (
	fixedPitch = 1
	symbolic   = 4 // any character set of its own, as every subset has
)

// stems are how thick the upright strokes of the faces are, per mille of an em, measured on
// their letter I at half its height.
var stems = [...]int{ink.Regular: 102, ink.Bold: 150, ink.Mono: 97}

func (f *font) descriptor(name string, cut subset.Font, program ref) string {
	flags := symbolic
	if f.face == ink.Mono {
		flags |= fixedPitch
	}
	em := ink.Em(f.face, 1)
	box := make([]string, len(cut.Box))
	for i, v := range cut.Box {
		box[i] = ink.Decimal(float64(v) * perMille / float64(cut.UnitsPer))
	}
	return fmt.Sprintf("<</Type/FontDescriptor/FontName%s/Flags %d/FontBBox[%s]/ItalicAngle 0/Ascent %s/Descent %s/CapHeight %s/StemV %d/FontFile2 %s>>",
		name, flags, strings.Join(box, " "), ink.Decimal(ink.Ascent(f.face, 1)/em*perMille),
		ink.Decimal(-ink.Descent(f.face, 1)/em*perMille), ink.Decimal(1/em*perMille), stems[f.face], program)
}

// width of a character, per mille of an em.
func (f *font) width(r rune) string {
	return ink.Decimal(ink.Width(string(r), f.face, 1) / ink.Em(f.face, 1) * perMille)
}

func (f *font) widths() string {
	words := make([]string, len(f.characters))
	for i, r := range f.characters {
		words[i] = f.width(r)
	}
	return strings.Join(words, " ")
}

// glyphMap says which glyph each code means (9.7.4.2).
func (f *font) glyphMap(glyphs map[rune]uint16) []byte {
	b := []byte{0, 0}
	for _, r := range f.characters {
		g := glyphs[r]
		b = append(b, byte(g>>8), byte(g))
	}
	return b
}

// mostPerBlock entries may stand in one block of a character map (Adobe Technical Note 5014).
const mostPerBlock = 100

// toUnicode is the map by which text is searched for and copied (9.10.3).
func (f *font) toUnicode() []byte {
	var b strings.Builder
	b.WriteString("/CIDInit /ProcSet findresource begin 12 dict begin begincmap\n" +
		"/CIDSystemInfo<</Registry(Adobe)/Ordering(UCS)/Supplement 0>>def\n" +
		"/CMapName/Adobe-Identity-UCS def/CMapType 2 def\n" +
		"1 begincodespacerange <0000><ffff> endcodespacerange\n")
	for from := 0; from < len(f.characters); from += mostPerBlock {
		block := f.characters[from:min(from+mostPerBlock, len(f.characters))]
		fmt.Fprintf(&b, "%d beginbfchar\n", len(block))
		for i, r := range block {
			fmt.Fprintf(&b, "<%04x><%s>\n", from+i+1, utf16Hex(string(r)))
		}
		b.WriteString("endbfchar\n")
	}
	b.WriteString("endcmap CMapName currentdict/CMap defineresource pop end end\n")
	return []byte(b.String())
}
