// Package sheets holds the sheets of a packet, one file each, and their list.
package sheets

import "github.com/lugwright/lugwright/render/sheet"

// All lists the sheets in the order in which they are bound.
func All() []*sheet.Kind {
	return []*sheet.Kind{
		Cover(),
		Schematic(),
		WireList(),
		CutList(),
		Posts(),
		Fuses(),
		Readings(),
		HandOver(),
		Parts(),
		NotChecked(),
	}
}

// Find finds a sort of sheet by its id; nil if there is none.
func Find(id string) *sheet.Kind {
	for _, k := range All() {
		if k.ID == id {
			return k
		}
	}
	return nil
}
