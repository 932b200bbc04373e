package schematic

import "github.com/lugwright/lugwright/wiring"

// Titles says which sheets a schematic will have, without laying them out: one title a
// sheet, in the order of [Sheets]. It takes a small part of the time.
func Titles(h *wiring.Harness, o Options) ([]string, error) {
	s, err := planned(h, &o)
	if err != nil {
		return nil, err
	}
	var titles []string
	for i := range s.plan {
		titles = append(titles, s.title(i))
	}
	return titles, nil
}
