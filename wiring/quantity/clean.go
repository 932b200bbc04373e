package quantity

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// longestText is more than any quantity needs; beyond it nothing is looked at.
const longestText = 200

// sameSign maps characters that word processors, phones and other keyboards put in place
// of the ones that the format knows.
var sameSign = map[rune]string{
	'\u03bc': "µ", // Greek mu, for the micro sign
	'\u2126': "Ω", // the ohm sign, for Greek omega
	'\u212a': "K", // the kelvin sign
	'−':      "-", '‐': "-", '‑': "-", '–': "-", '—': "-",
	'⁄': "/", '∕': "/",
	'″': `"`, '”': `"`, '“': `"`,
	'′': "'", '’': "'", '‘': "'",
	'º':      "°",
	'⋅':      "·",
	'\u200b': "", '\u200c': "", '\u200d': "", '\ufeff': "", '\u00ad': "", // invisible
	'½': " 1/2", '¼': " 1/4", '¾': " 3/4",
	'⅛': " 1/8", '⅜': " 3/8", '⅝': " 5/8", '⅞': " 7/8",
}

// clean gives a text one spelling for each sign: plain blanks, one at a time and none at
// the ends, one micro sign, plain minus, plain quotes, fractions in digits.
func clean(text string) (string, *Error) {
	if len(text) > longestText {
		return "", fault(firstRunes(text), "is too long", "")
	}
	if !utf8.ValidString(text) {
		return "", fault(strings.ToValidUTF8(text, "?"), "is no UTF-8 text", "")
	}
	var b strings.Builder
	for _, r := range text {
		same, ok := sameSign[r]
		switch {
		case ok:
			b.WriteString(same)
		case unicode.IsSpace(r):
			b.WriteByte(' ')
		case unicode.IsControl(r):
			b.WriteByte('?')
		default:
			b.WriteRune(r)
		}
	}
	out := strings.ReplaceAll(b.String(), "''", `"`)
	return strings.Join(strings.Fields(out), " "), nil
}

// firstRunes cuts a long text to what an Error shows, without decoding the rest.
func firstRunes(text string) string {
	head := text[:longestText]
	return strings.ToValidUTF8(head, "")
}
