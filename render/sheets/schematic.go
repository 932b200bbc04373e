package sheets

import (
	"sync"

	"github.com/lugwright/lugwright/render/schematic"
	"github.com/lugwright/lugwright/render/sheet"
)

// Schematic is the circuit diagram, on as many pages as it takes.
func Schematic() *sheet.Kind {
	return &sheet.Kind{
		ID:       "schematic",
		Title:    "circuit diagram",
		About:    "every part and wire, with rails for the supplies",
		Surround: sheet.Surround{Colours: true, Cautions: true, Open: 3, Waived: true},
		Plan:     planSchematic,
	}
}

func planSchematic(b *sheet.Book, r sheet.Room) ([]sheet.Page, error) {
	o := schematic.Options{Width: r.Width, Height: r.Height, First: r.First, Zone: r.Zone}
	titles, err := schematic.Titles(b.Harness, o)
	if err != nil {
		return nil, err
	}
	// The pages refer to each other, so all are laid out when the first one is wanted.
	all := sync.OnceValues(func() ([]*schematic.Sheet, error) { return schematic.Sheets(b.Harness, o) })
	var pages []sheet.Page
	for i, title := range titles {
		pages = append(pages, sheet.Page{Title: title, Lay: func(*sheet.Document) (sheet.Laid, error) {
			sheets, err := all()
			if err != nil {
				return sheet.Laid{}, err
			}
			s := sheets[i]
			return sheet.Laid{Draw: s.Draw, Undrawn: s.Stats.Unrouted, Unlabelled: s.Stats.Unlabelled}, nil
		}})
	}
	return pages, nil
}
