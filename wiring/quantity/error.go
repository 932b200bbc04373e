package quantity

import "unicode/utf8"

// Error is a text that is no quantity, no size, no thread or no count. It never names the
// key that the text stood under; whoever knows the key puts it in front:
//
//	length 14 has no unit: 14 in, 14 mm or 14 cm?
//
// Its parts are separate so that they can also be shown in other ways.
type Error struct {
	Text    string // as written, blanks normalised, cut if very long: "14"; empty if nothing was written
	Problem string // what is wrong, as the rest of a sentence that begins with Text: "has no unit"; may be empty
	Offer   string // what to write instead: "14 in, 14 mm or 14 cm?"; may be empty
}

// Error returns "14 has no unit: 14 in, 14 mm or 14 cm?".
func (e *Error) Error() string {
	text := e.Text
	if text != "" && e.Problem != "" {
		text += " "
	}
	text += e.Problem
	if e.Offer != "" {
		text += ": " + e.Offer
	}
	return text
}

// longestShown is how many characters of a faulty text an Error repeats.
const longestShown = 40

func fault(text, problem, offer string) *Error {
	return &Error{Text: clip(text), Problem: problem, Offer: offer}
}

func clip(text string) string {
	if utf8.RuneCountInString(text) <= longestShown {
		return text
	}
	return string([]rune(text)[:longestShown-1]) + "…"
}

// either joins choices as a person would: "A", "A or mA", "in, mm or cm".
func either(choices []string) string {
	out := ""
	for i, c := range choices {
		switch {
		case i == 0:
		case i == len(choices)-1:
			out += " or "
		default:
			out += ", "
		}
		out += c
	}
	return out
}

// withUnits writes a numeral with each unit: "14 in, 14 mm or 14 cm?", or "write 14 V"
// where there is one unit only.
func withUnits(numeral string, units []string) string {
	choices := make([]string, len(units))
	for i, u := range units {
		choices[i] = numeral + " " + u
	}
	if len(choices) == 1 {
		return "write " + choices[0]
	}
	return either(choices) + "?"
}
