package sheet

import (
	"fmt"
	"slices"
	"sort"
	"strings"

	"github.com/lugwright/lugwright/render/sheet/frame"
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/colour"
	"github.com/lugwright/lugwright/wiring/diag"
)

// content is what stands around every page of a kind.
func (b *Book) content(k *Kind) frame.Content {
	h, id := b.Harness, b.Harness.Identity
	c := frame.Content{
		Owner:        h.Shop.Name,
		Number:       id.Number,
		Title:        id.Title,
		Approver:     id.Approved,
		Creator:      id.By,
		DocumentType: k.Title,
		Note:         basis(h),
		Centring:     true,
	}
	for _, r := range id.History {
		c.Revisions = append(c.Revisions, frame.Revision{Index: r.Index, Date: r.Date, By: r.By, Note: r.Note})
		c.Revision, c.Date = r.Index, r.Date
	}
	if k.Surround.Colours {
		c.Legend = colours(h)
	}
	if k.Surround.Cautions {
		c.Cautions = cautions(h)
	}
	if k.Surround.Open > 0 {
		c.Findings, c.MostShown = openLines(b.Open(diag.Warning)), k.Surround.Open
	}
	if k.Surround.Waived {
		c.Waived = waivedLines(b.Waived())
	}
	return c
}

// openLines words open findings, most serious first.
func openLines(open []diag.Finding) []string {
	open = slices.Clone(open)
	sort.SliceStable(open, func(i, j int) bool { return open[i].Level > open[j].Level })
	var lines []string
	for _, f := range open {
		lines = append(lines, fmt.Sprintf("%s: %s (%s)", f.Level, f.Message, f.Rule))
	}
	return lines
}

// waivedLines words what the job lives with, and why.
func waivedLines(waived []diag.Finding) []string {
	var lines []string
	for _, f := range waived {
		by := ""
		if f.Waived.By != "" {
			by = " (" + f.Waived.By + ")"
		}
		lines = append(lines, fmt.Sprintf("%s: %s%s", f.Message, f.Waived.Reason, by))
	}
	return lines
}

// colours lists what the codes on the sheets mean: every code that occurs, as a base or as
// a tracer, in the order of the colour table, and one wire with a tracer to show how that is
// drawn. A line for each pair would cost the drawing a third of its height.
func colours(h *wiring.Harness) []colour.Colour {
	used := map[colour.Code]bool{}
	var traced colour.Colour
	for _, w := range h.Wires {
		for _, p := range w.Pieces {
			used[p.Colour.Base], used[p.Colour.Tracer] = true, true
			if traced.Tracer == "" && p.Colour.Tracer != "" {
				traced = p.Colour
			}
		}
	}
	delete(used, "")
	order := map[colour.Code]int{}
	for i, code := range colour.Codes() {
		order[code] = i
	}
	var list []colour.Colour
	for code := range used {
		list = append(list, colour.Colour{Base: code})
	}
	slices.SortFunc(list, func(a, b colour.Colour) int {
		if d := order[a.Base] - order[b.Base]; d != 0 {
			return d
		}
		return strings.Compare(string(a.Base), string(b.Base))
	})
	if traced.Known() {
		list = append(list, traced)
	}
	return list
}

// basis warns of figures that no maker stands behind, as kinds say of themselves.
func basis(h *wiring.Harness) string {
	for _, p := range h.Parts {
		if strings.Contains(p.Kind.Basis, "invented") {
			return "Device figures are invented: ask the makers"
		}
	}
	return "For device figures ask the makers"
}
