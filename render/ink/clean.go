package ink

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/unicode/norm"
)

// Replacement stands where a character cannot be shown. All three faces have it.
const Replacement = utf8.RuneError

// Clean makes one harmless line of any text: bytes that are not UTF-8 become Replacement,
// control characters and breaks become a space, marks that change the reading direction or
// have no width are dropped, and composed characters take their usual form. Spaces are
// joined and trimmed.
func Clean(s string) string {
	if printable(s) {
		return s
	}
	var b strings.Builder
	space := false
	for _, r := range norm.NFC.String(strings.ToValidUTF8(s, string(Replacement))) {
		if unicode.IsSpace(r) || unicode.IsControl(r) {
			space = true
			continue
		}
		// Format characters include those that turn text around; the last two planes and
		// the surrogates have no characters at all.
		if unicode.In(r, unicode.Cf, unicode.Variation_Selector) {
			continue
		}
		if unicode.In(r, unicode.Co, unicode.Cs) || isNoncharacter(r) {
			r = Replacement
		}
		if space && b.Len() > 0 {
			b.WriteByte(' ')
		}
		space = false
		b.WriteRune(r)
	}
	return b.String()
}

// printable reports whether s is plain ASCII that Clean would leave alone.
func printable(s string) bool {
	for i := range len(s) {
		c := s[i]
		if c < ' ' || c > '~' || c == ' ' && (i == 0 || i == len(s)-1 || s[i-1] == ' ') {
			return false
		}
	}
	return true
}

// isNoncharacter reports the 66 code points that Unicode sets aside for internal use; XML
// forbids two of them.
func isNoncharacter(r rune) bool { return r >= 0xfdd0 && r <= 0xfdef || r&0xfffe == 0xfffe }

// alike says what to print for characters that the faces lack but whose meaning another
// character carries.
var alike = map[rune]rune{
	'\u2010': '-', '\u2011': '-', '\u2012': '–', '\u2043': '-', '\ufe63': '-', '\uff0d': '-',
	'\u02b9': '\'', '\u02ba': '"', '\u201f': '"', '\u22c5': '·', '\u2715': '×', '\u2a2f': '×',
	'\u2a7d': '≤', '\u2a7e': '≥', '\u2300': 'Ø', '\u2295': '+', '\u2296': '–',
}

// Substitute replaces the characters that a face lacks, by one that looks alike where
// there is one and by Replacement elsewhere, and returns those that were lost, each once,
// in the order of the text. Formats that carry the faces inside the file need it; one that
// lets the viewer choose a further font does not.
func Substitute(s string, f Face) (string, []rune) {
	var b strings.Builder
	var lost []rune
	for _, r := range s {
		if Covers(f, r) {
			b.WriteRune(r)
			continue
		}
		if other, ok := alike[r]; ok && Covers(f, other) {
			b.WriteRune(other)
			continue
		}
		b.WriteRune(Replacement)
		if !strings.ContainsRune(string(lost), r) {
			lost = append(lost, r)
		}
	}
	return b.String(), lost
}
