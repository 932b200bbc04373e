package list

import (
	"slices"
	"strings"

	"github.com/lugwright/lugwright/wiring"
)

// Item is one part of the cart, or one that was taken off it.
type Item struct {
	Part   *wiring.Part
	Status Status
	Layer  *wiring.Layer // that fits, changes or removes it; nil: as found
}

// Parts lists the parts in the order of their designations, then those that were taken off.
func Parts(h *wiring.Harness) []Item {
	var items []Item
	for _, p := range h.Parts {
		items = append(items, Item{p, PartStatus(p), partLayer(p)})
	}
	for _, r := range h.Before {
		items = append(items, Item{r.Part, Removed, r.By})
	}
	return items
}

// partLayer is the layer that speaks of a part last, above the platform.
func partLayer(p *wiring.Part) *wiring.Layer {
	for _, l := range slices.Backward(p.Changed) {
		if !ofPlatform(l) {
			return l
		}
	}
	if !ofPlatform(p.Origin) {
		return p.Origin
	}
	return nil
}

// ToBuy is a number of equal devices that the work fits.
type ToBuy struct {
	Kind  *wiring.Kind
	Title string // the ratings that tell it from others of its kind: "60 W"
	Parts []*wiring.Part
}

// Buy groups the parts that the work fits by kind and ratings, in the order of their first
// designations. Joints and frame points, which are not bought, are left out.
func Buy(h *wiring.Harness) []ToBuy {
	var all []ToBuy
	for _, p := range h.Parts {
		if PartStatus(p) != New || onlyJoints(p) {
			continue
		}
		title := Ratings(p)
		at := slices.IndexFunc(all, func(b ToBuy) bool { return b.Kind == p.Kind && b.Title == title })
		if at < 0 {
			at = len(all)
			all = append(all, ToBuy{Kind: p.Kind, Title: title})
		}
		all[at].Parts = append(all[at].Parts, p)
	}
	return all
}

func onlyJoints(p *wiring.Part) bool {
	return len(p.Terminals) > 0 && !slices.ContainsFunc(p.Terminals, func(t *wiring.Terminal) bool { return t.Form.Type != wiring.Joint })
}

// Ratings says by which figures a part is ordered, in the order of its kind: those that it
// must state, and those that it states otherwise than its kind.
func Ratings(p *wiring.Part) string {
	var words []string
	for _, spec := range p.Kind.Ratings {
		r, ok := p.Ratings[spec.Name]
		if !ok || r.Word == "" || spec.Map || !spec.Needed && !r.At.Known() {
			continue
		}
		word := r.Word
		if r.Count > 0 {
			word += " " + strings.ReplaceAll(spec.Name, "-", " ")
		}
		words = append(words, word)
	}
	return strings.Join(words, ", ")
}
