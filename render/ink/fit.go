package ink

import "strings"

// Ellipsis ends a text that had to be cut.
const Ellipsis = "…"

// Cut returns as much of a text as fits a width in millimetres, ended by an ellipsis if
// anything is missing. Where not even the ellipsis fits it returns nothing.
func Cut(s string, f Face, capital, width float64) string {
	if Width(s, f, capital) <= width {
		return s
	}
	room := width - Width(Ellipsis, f, capital)
	if room < 0 {
		return ""
	}
	long := 0.0
	for i, r := range s {
		long += Width(string(r), f, capital)
		if long > room {
			return strings.TrimRight(s[:i], " ,;:-–(") + Ellipsis
		}
	}
	return s
}

// Fit returns the capital height between most and least, both in millimetres, at which a
// text fills a width without exceeding it, and the text, cut if even the least is too much.
func Fit(s string, f Face, most, least, width float64) (capital float64, fitted string) {
	long := Width(s, f, most)
	if long <= width {
		return most, s
	}
	// Heights step by a twentieth of a millimetre, downwards, so that the text surely fits.
	const step = 0.05
	capital = float64(int(most*width/long/step)) * step
	if capital >= least {
		return capital, s
	}
	return least, Cut(s, f, least, width)
}

// Wrap breaks a text at its spaces into lines that fit a width in millimetres. No line is
// longer: a single word that is too long is cut. If there are more lines than most, the
// last one ends in an ellipsis.
func Wrap(s string, f Face, capital, width float64, most int) []string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(s) {
		longer := word
		if line != "" {
			longer = line + " " + word
		}
		if line == "" || Width(longer, f, capital) <= width {
			line = longer
			continue
		}
		lines = append(lines, line)
		line = word
	}
	if line != "" {
		lines = append(lines, line)
	}
	if most > 0 && len(lines) > most {
		rest := strings.Join(lines[most-1:], " ")
		lines = append(lines[:most-1], rest)
	}
	for i := range lines {
		lines[i] = Cut(lines[i], f, capital, width)
	}
	return lines
}
