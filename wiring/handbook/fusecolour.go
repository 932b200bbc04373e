package handbook

import (
	"strings"

	"github.com/lugwright/lugwright/wiring/colour"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// FuseColour is the body colour of a blade fuse.
type FuseColour struct {
	Form     string // "standard blade"
	Standard string // "ISO 8820-3 type C"
	Rating   quantity.Ampere
	Colour   string // "violet"
	RGB      colour.RGB
	Volts    quantity.Volt // usual rated voltage
	Status   Status
}

var fuseColoursDefinition = table{
	name:    "fuse_colours",
	about:   "body colours of blade fuses",
	columns: []string{"form", "standard", "rating_A", "colour", "srgb", "usual_rated_V"},
	load: func(t *Tables, s *sheet) {
		t.fuseColours = nil
		for _, r := range s.rows {
			c := FuseColour{
				Form: r.word("form"), Standard: r.text("standard"), Colour: r.word("colour"),
				Rating: quantity.Ampere(r.positive("rating_A")),
				Volts:  quantity.Volt(r.optional("usual_rated_V")), Status: r.status(),
			}
			rgb, err := colour.ParseHex(r.text("srgb"))
			if err != nil {
				r.fail("srgb", "%v", err)
			}
			c.RGB = rgb
			if _, taken := t.FuseColour(c.Form, c.Rating); taken {
				r.fail("rating_A", "%v of a %s stands twice", c.Rating, c.Form)
			}
			t.fuseColours = append(t.fuseColours, c)
		}
	},
}

// FuseColour returns the body colour of a blade fuse by its form or style ("blade",
// "standard blade", "mini blade", "maxi blade") and rating, and whether it has one. A
// colour means nothing without the form: red is 10 A standard and 50 A maxi.
//
// Source: ISO 8820-3, SAE J1284 and J2077; status by row.
func (t *Tables) FuseColour(form string, rating quantity.Ampere) (FuseColour, bool) {
	if strings.EqualFold(form, "blade") {
		form = "standard blade"
	}
	for _, c := range t.fuseColours {
		if strings.EqualFold(c.Form, form) && c.Rating == rating {
			return c, true
		}
	}
	return FuseColour{}, false
}
