package colour

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// Parse reads a wire colour as people write it, in any case: IEC 60757 codes (BK/YE),
// English names (grey, gray, purple, light blue, black with yellow), American shop letters
// (BLK/YEL), and our own TN, CL, bare and L or D before a code. The error is always an
// [*Error]; a joined pair such as RDBU is one, because it does not say which is the tracer.
func Parse(text string) (Colour, error) {
	cleaned := clean(text)
	if cleaned == "" {
		return Colour{}, &Error{Problem: "no colour is given", Offer: exampleColours}
	}
	c, err := parse(cleaned)
	if err != nil {
		return Colour{}, err
	}
	return c, nil
}

const exampleColours = "such as BK, BK/YE or black with yellow"

// Limits on what is looked at and what is repeated in an error.
const (
	longestText  = 80
	longestShown = 30
)

// clean makes blanks plain and drops what cannot belong to a colour.
func clean(text string) string {
	if len(text) > longestText {
		text = strings.ToValidUTF8(text[:longestText], "") + "…"
	}
	text = strings.ToValidUTF8(text, "?")
	text = strings.Map(func(r rune) rune {
		switch {
		case unicode.IsSpace(r):
			return ' '
		case r == '\u200b' || r == '\ufeff' || r == '\u00ad':
			return -1
		case unicode.IsControl(r):
			return '?'
		case r == '\u2010' || r == '\u2011' || r == '\u2013':
			return '-'
		}
		return r
	}, text)
	return strings.Join(strings.Fields(text), " ")
}

func clip(text string) string {
	if utf8.RuneCountInString(text) <= longestShown {
		return text
	}
	return string([]rune(text)[:longestShown-1]) + "…"
}

func parse(text string) (Colour, *Error) {
	parts := cutTracer(text)
	switch len(parts) {
	case 1:
		return single(text, parts[0])
	case 2:
		return pair(text, parts[0], parts[1])
	}
	return Colour{}, &Error{Text: clip(text), Problem: clip(text) + " has more than one tracer", Offer: exampleColours}
}

// cutTracer splits base from tracer: "black/yellow", "black with yellow stripe".
func cutTracer(text string) []string {
	lower := strings.ToLower(text)
	if len(lower) != len(text) {
		return []string{text}
	}
	for _, word := range []string{" stripe", " striped", " tracer", " trace"} {
		if strings.HasSuffix(lower, word) {
			lower = strings.TrimSuffix(lower, word)
			text = text[:len(lower)]
		}
	}
	for _, with := range []string{" with a ", " with ", " w/ ", " w/"} {
		if i := strings.Index(lower, with); i >= 0 {
			return []string{strings.TrimSpace(text[:i]), strings.TrimSpace(text[i+len(with):])}
		}
	}
	parts := strings.Split(text, "/")
	for i := range parts {
		parts[i] = strings.TrimSpace(parts[i])
	}
	return parts
}

// single reads a colour without a tracer.
func single(text, word string) (Colour, *Error) {
	if c, ok := codeOf(word); ok {
		return Colour{Base: c}, nil
	}
	if a, b, ok := joined(word); ok {
		return Colour{}, joinedPair(text, a, b)
	}
	return Colour{}, unknown(text, word)
}

// pair reads base and tracer.
func pair(text, base, tracer string) (Colour, *Error) {
	b, ok := codeOf(base)
	if !ok {
		return Colour{}, unknown(text, base)
	}
	t, ok := codeOf(tracer)
	if !ok {
		return Colour{}, unknown(text, tracer)
	}
	switch {
	case b == "GN" && t == "YE":
		return Colour{}, earth(text)
	case b == t:
		return Colour{}, &Error{Text: clip(text), Problem: clip(text) + " has a tracer of its own colour", Offer: "write " + string(b)}
	case !b.takesTracer() || !t.takesTracer():
		return Colour{}, &Error{Text: clip(text), Problem: clip(text) + " is no base and tracer", Offer: exampleColours}
	}
	return Colour{Base: b, Tracer: t}, nil
}

// takesTracer reports whether a code may stand on either side of the stroke.
func (c Code) takesTracer() bool { return c != ProtectiveEarth && c != Bare }

// joined splits two colours that were run together, or that a blank or hyphen separates.
func joined(word string) (a, b Code, ok bool) {
	for i := 1; i < len(word); i++ {
		left := strings.TrimRight(word[:i], " -+,")
		right := strings.TrimLeft(word[i:], " -+,")
		first, isFirst := codeOf(left)
		second, isSecond := codeOf(right)
		if isFirst && isSecond && first.takesTracer() && second.takesTracer() {
			return first, second, true
		}
	}
	return "", "", false
}

func joinedPair(text string, a, b Code) *Error {
	switch {
	case a == b:
		return &Error{Text: clip(text), Problem: clip(text) + " is one colour twice", Offer: "write " + string(a)}
	case a == "GN" && b == "YE" || a == "YE" && b == "GN":
		return earth(text)
	}
	ab, ba := Colour{a, b}.String(), Colour{b, a}.String()
	return &Error{Text: clip(text), Problem: clip(text) + " does not say which is the tracer", Offer: ab + " or " + ba}
}

// earth offers the one spelling of the protective earth bicolour.
func earth(text string) *Error {
	return &Error{Text: clip(text), Problem: clip(text) + " is the protective earth bicolour", Offer: "write GNYE"}
}

// unknown explains a word that is no colour, with the nearest ones that are.
func unknown(text, word string) *Error {
	e := &Error{Text: clip(text), Problem: "no colour " + clip(word)}
	if word == "" {
		e.Problem = clip(text) + " lacks a colour beside the stroke"
	} else if word != text {
		e.Problem += " in " + clip(text)
	}
	e.Offer = exampleColours
	if near := nearest(word); len(near) > 0 {
		e.Offer = "did you mean " + listed(near) + "?"
	}
	return e
}

// listed joins codes: "RD", "GN or GY", "BK, BN or BU".
func listed(codes []Code) string {
	out := ""
	for i, c := range codes {
		switch {
		case i == 0:
		case i == len(codes)-1:
			out += " or "
		default:
			out += ", "
		}
		out += string(c)
	}
	return out
}
