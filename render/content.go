package render

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

// contentOf is what stands around the drawing on every sheet of a packet.
func contentOf(h *wiring.Harness, found []diag.Finding) frame.Content {
	id := h.Identity
	c := frame.Content{
		Owner:        h.Shop.Name,
		Number:       id.Number,
		Title:        id.Title,
		Approver:     id.Approved,
		Creator:      id.By,
		DocumentType: "circuit diagram",
		Legend:       colours(h),
		Findings:     append(openLines(found), waivedLines(found)...),
		Cautions:     cautions(h),
		Note:         basis(h),
		Centring:     true,
	}
	for _, r := range id.History {
		c.Revisions = append(c.Revisions, frame.Revision{Index: r.Index, Date: r.Date, By: r.By, Note: r.Note})
		c.Revision, c.Date = r.Index, r.Date
	}
	return c
}

// openLines words the open errors and warnings, most serious first.
func openLines(found []diag.Finding) []string {
	var open []diag.Finding
	for _, f := range found {
		if f.Waived == nil && f.Level >= diag.Warning {
			open = append(open, f)
		}
	}
	sort.SliceStable(open, func(i, j int) bool { return open[i].Level > open[j].Level })
	var lines []string
	for _, f := range open {
		lines = append(lines, fmt.Sprintf("%s: %s (%s)", f.Level, f.Message, f.Rule))
	}
	return lines
}

// waivedLines words what the job lives with, and why.
func waivedLines(found []diag.Finding) []string {
	var lines []string
	for _, f := range found {
		if f.Waived == nil {
			continue
		}
		by := ""
		if f.Waived.By != "" {
			by = " (" + f.Waived.By + ")"
		}
		lines = append(lines, fmt.Sprintf("waived: %s: %s%s", f.Message, f.Waived.Reason, by))
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
