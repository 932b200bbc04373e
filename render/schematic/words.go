package schematic

import (
	"strings"

	"github.com/lugwright/lugwright/render/arrange"
	"github.com/lugwright/lugwright/render/ink"
	"github.com/lugwright/lugwright/wiring"
)

// Blank stands in a line of words for a box to write in: what is not known and has to be
// measured. It is drawn, not written.
const Blank = '▯'

// blankWidth is the breadth of such a box, in units.
const blankWidth = 2.6

// Heights of a line of a label, in units: capitals, and what hangs below the baseline.
const descent = 0.2

// wideFor is how much wider a text is taken than it is, for viewers without our faces.
const wideFor = 1 + ink.Slack/3

// textWidth measures a line in units.
func textWidth(s string, f ink.Face) float64 {
	n := strings.Count(s, string(Blank))
	return (ink.Width(strings.ReplaceAll(s, string(Blank), ""), f, 1) + float64(n)*blankWidth) * wideFor
}

// words measures a block of lines in the regular face.
func words(lines ...string) arrange.Words {
	w := arrange.Words{Lines: lines, Height: 1 + ink.LineSpacing*float64(len(lines)-1)}
	for _, l := range lines {
		w.Width = max(w.Width, textWidth(l, ink.Regular))
	}
	if n := len(lines); n > 0 && strings.ContainsAny(lines[n-1], hanging) {
		w.Height += descent
	} else {
		w.Height += overshoot
	}
	return w
}

// hanging are the characters that reach below the baseline; the others keep to it but for
// an overshoot of round ones.
const (
	hanging   = "gjpqyQ,;/()_"
	overshoot = 0.05
)

// piece is the colour and size of one stretch of a wire, as it is written.
type piece struct{ colour, size string }

func (p piece) String() string { return p.colour + " " + p.size }

// pieces lists what the wire is made of, from end to end, neighbours that are alike as one.
func pieces(w *wiring.Wire) []piece {
	var ps []piece
	for _, x := range w.Pieces {
		p := piece{string(Blank), string(Blank)}
		if x.Colour.Known() {
			p.colour = x.Colour.String()
		}
		if x.Size.Known() {
			p.size = x.Size.String()
		}
		if len(ps) == 0 || ps[len(ps)-1] != p {
			ps = append(ps, p)
		}
	}
	return ps
}

// wireWords lists the ways to write a wire's label, best first.
func wireWords(w *wiring.Wire) []arrange.Words {
	if w.Cord() {
		return cordWords(w)
	}
	ps := pieces(w)
	number := w.Name()
	var all []arrange.Words
	add := func(lines ...string) { all = append(all, words(lines...)) }
	full := make([]string, len(ps))
	for i, p := range ps {
		full[i] = p.String()
	}
	switch len(full) {
	case 0:
		add(number)
	case 1:
		add(number + " " + full[0])
		add(number, full[0])
		add(number+" "+ps[0].colour, ps[0].size)
		add(number, ps[0].colour, ps[0].size)
	default:
		add(number + " " + strings.Join(full, " + "))
		if colours, size, ok := oneSize(ps); ok {
			add(number + " " + colours + " " + size)
			add(number, colours+" "+size)
			add(number+" "+colours, size)
		}
		add(number+" "+full[0]+" +", strings.Join(full[1:], " + "))
		add(append([]string{number}, joined(full)...)...)
	}
	return all
}

// oneSize returns the colours of pieces that are all of one size.
func oneSize(ps []piece) (colours, size string, ok bool) {
	for i, p := range ps {
		if p.size != ps[0].size {
			return "", "", false
		}
		if i > 0 {
			colours += " + "
		}
		colours += p.colour
	}
	return colours, ps[0].size, true
}

// joined gives each piece a line, with a plus at the end of all but the last.
func joined(full []string) []string {
	lines := make([]string, len(full))
	for i, f := range full {
		lines[i] = f
		if i+1 < len(full) {
			lines[i] += " +"
		}
	}
	return lines
}

// cordWords lists the ways to write the label of a ready-made cord: with what is known of
// it, and its poles.
func cordWords(w *wiring.Wire) []arrange.Words {
	number, about := w.Name(), "cord"
	for _, p := range w.Pieces {
		if p.Colour.Known() && p.Size.Known() {
			about = "cord " + p.Colour.String() + " " + p.Size.String()
			break
		}
	}
	var poles []string
	for _, p := range w.From.Terminal.Poles {
		poles = append(poles, p.Name)
	}
	names := strings.Join(poles, " ")
	if len(poles) == 0 {
		about, names = "data cord", ""
	}
	if names == "" {
		return []arrange.Words{words(number + " " + about), words(number, about)}
	}
	return []arrange.Words{words(number + " " + about + ", " + names), words(number+" "+about, names), words(number, about, names)}
}

// wrap breaks a text into lines of at most a width in units, at blanks.
func wrap(text string, f ink.Face, width float64) []string {
	var lines []string
	for _, word := range strings.Fields(text) {
		if n := len(lines); n > 0 && textWidth(lines[n-1]+" "+word, f) <= width {
			lines[n-1] += " " + word
		} else {
			lines = append(lines, word)
		}
	}
	return lines
}
