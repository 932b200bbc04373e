package proof

import (
	"fmt"
	"strings"

	"github.com/lugwright/lugwright/render/ink"
)

// textStart is what the attributes of a text say.
type textStart struct {
	at     ink.Point
	size   float64
	face   ink.Face
	anchor ink.Anchor
	turned bool
}

func readText(a map[string]string) (*textStart, error) {
	t := &textStart{}
	for name, v := range map[string]*float64{"x": &t.at.X, "y": &t.at.Y, "font-size": &t.size} {
		if _, err := fmt.Sscanf(a[name], "%g", v); err != nil {
			return nil, fmt.Errorf("text: %s %q: %w", name, a[name], err)
		}
	}
	if a["font-weight"] == "bold" {
		t.face = ink.Bold
	}
	switch a["text-anchor"] {
	case "middle":
		t.anchor = ink.Middle
	case "end":
		t.anchor = ink.End
	}
	t.turned = strings.HasPrefix(a["transform"], "rotate(-90")
	return t, nil
}

// descenders are the characters of our sheets that reach below the baseline.
const descenders = "gjpqyQ,;/()"

// finish makes the text: its box goes from the capitals' height to the baseline, and below
// it where a character does.
func (t *textStart) finish(s string, g *group) Text {
	capital := t.size / ink.Em(t.face, 1)
	x := ink.Text{At: t.at, String: s, Capital: capital, Face: t.face, Anchor: t.anchor, Turned: t.turned}
	box := x.Box()
	below := 0.0
	if strings.ContainsAny(s, descenders) {
		below = 0.22 * capital
	}
	if t.turned {
		box.Min.X, box.Max.X = t.at.X-capital, t.at.X+below
	} else {
		box.Min.Y, box.Max.Y = t.at.Y-capital, t.at.Y+below
	}
	return Text{Owner: g.name, Class: g.class, String: s, Box: box, Capital: capital, Turned: t.turned}
}
