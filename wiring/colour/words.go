package colour

import "strings"

// words maps what people write, in small letters, to codes: English names beside those of
// the table, and the letters that American shops and wiring diagrams use (common practice,
// no published source).
var words = map[string]Code{
	"gray": "GY", "purple": "VT", "beige": "TN", "transparent": "CL",
	"green and yellow": ProtectiveEarth, "green-yellow": ProtectiveEarth,
	"bare copper": Bare,

	"blk": "BK", "brn": "BN", "red": "RD", "org": "OG", "orn": "OG", "yel": "YE",
	"grn": "GN", "blu": "BU", "vio": "VT", "pur": "VT", "ppl": "VT", "gry": "GY",
	"wht": "WH", "pnk": "PK", "tan": "TN", "clr": "CL", "trq": "TQ", "slv": "SR", "gld": "GD",
}

// vague maps abbreviations that are nobody's standard to the colours they could mean.
var vague = map[string][]Code{
	"b": {"BK", "BN", "BU"}, "bl": {"BK", "BU"}, "br": {"BN"}, "g": {"GN", "GY"}, "gr": {"GN", "GY"},
	"o": {"OG"}, "or": {"OG"}, "p": {"PK", "VT"}, "pu": {"VT"}, "r": {"RD"}, "s": {"SR", "GY"},
	"t": {"TN", "TQ"}, "v": {"VT"}, "w": {"WH"}, "y": {"YE"},
}

// shadeWords stand before an English name or code.
var shadeWords = []struct {
	word  string
	shade shade
}{
	{"light ", light}, {"lt ", light}, {"lt. ", light}, {"pale ", light},
	{"dark ", dark}, {"dk ", dark}, {"dk. ", dark},
}

// codeOf reads one colour without a tracer, in any case.
func codeOf(word string) (Code, bool) {
	lower := strings.ToLower(word)
	if c, ok := plainCode(lower); ok {
		return c, true
	}
	for _, s := range shadeWords {
		if rest, ok := strings.CutPrefix(lower, s.word); ok {
			return shaded(s.shade, rest)
		}
	}
	if len(lower) > 2 && (lower[0] == 'l' || lower[0] == 'd') {
		if c := Code(strings.ToUpper(lower[1:])); c.HasShades() {
			return Code(strings.ToUpper(lower)), true
		}
	}
	return "", false
}

// plainCode reads a code, an English name or shop letters.
func plainCode(lower string) (Code, bool) {
	for _, c := range read().order {
		if lower == strings.ToLower(string(c)) || lower == read().byKey[c].name {
			return c, true
		}
	}
	c, ok := words[lower]
	return c, ok
}

func shaded(s shade, word string) (Code, bool) {
	c, ok := plainCode(strings.TrimSpace(word))
	if !ok || !c.HasShades() {
		return "", false
	}
	return Code(rune(s)) + c, true
}
