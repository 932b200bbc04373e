package rule

import (
	"fmt"
	"sort"
	"strings"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/source"
)

// WaiverUnused is the id under which a waiver that matches nothing is reported. Run itself
// judges it, after all rules have run; it cannot be waived.
const WaiverUnused = "waiver-unused"

// waive marks the findings that the job waives, and returns the waivers that matched none.
// A waiver matches the findings of its rule that have its place among their subjects.
func waive(h *wiring.Harness, fs []diag.Finding) []diag.Waiver {
	var unused []diag.Waiver
	for _, w := range h.Waivers {
		used := false
		for i := range fs {
			if fs[i].Rule == w.Rule && isSubject(fs[i], w.At) {
				used = true
				if fs[i].Waived == nil {
					waiver := w
					fs[i].Waived = &waiver
				}
			}
		}
		if !used {
			unused = append(unused, w)
		}
	}
	return unused
}

func isSubject(f diag.Finding, name string) bool {
	for _, s := range f.Subjects {
		if wiring.Fold(s) == wiring.Fold(name) {
			return true
		}
	}
	return false
}

// unusedWaivers are the findings about waivers that matched nothing. Waivers of rules that
// exist and were not run are no finding.
func unusedWaivers(unused []diag.Waiver, fs []diag.Finding, rules []*Rule, o Options) []diag.Finding {
	ran := make(map[string]bool, len(rules))
	known := append([]string(nil), o.Known...)
	for _, r := range rules {
		ran[r.ID] = true
		known = append(known, r.ID)
	}
	sort.Strings(known)
	var found []diag.Finding
	for _, w := range unused {
		switch {
		case ran[w.Rule]:
			found = append(found, unusedWaiver(w, fs))
		case !has(known, w.Rule):
			found = append(found, noSuchRule(w, known))
		}
	}
	return found
}

func has(sorted []string, s string) bool {
	i := sort.SearchStrings(sorted, s)
	return i < len(sorted) && sorted[i] == s
}

func unusedWaiver(w diag.Waiver, fs []diag.Finding) diag.Finding {
	f := diag.Finding{
		Rule: WaiverUnused, Level: diag.Warning, At: w.Span, Subjects: []string{w.At},
		Message: fmt.Sprintf("the waiver of %s at %s matches nothing", w.Rule, w.At),
		Detail:  fmt.Sprintf("There is no finding of %s on this cart.", w.Rule),
		Advice:  "Take the waiver out: the reason for it is gone, or it never named the place.",
	}
	if places := placesOf(w.Rule, fs); len(places) > 0 {
		f.Detail = fmt.Sprintf("%s is found at %s.", w.Rule, strings.Join(places, ", "))
		f.Advice = "Name the place of the finding that is meant, or take the waiver out."
	}
	return f
}

// placesOf lists the first subject of each open finding of a rule.
func placesOf(id string, fs []diag.Finding) []string {
	var places []string
	seen := map[string]bool{}
	for _, f := range fs {
		if f.Rule == id && f.Waived == nil && len(f.Subjects) > 0 && !seen[f.Subjects[0]] {
			seen[f.Subjects[0]] = true
			places = append(places, f.Subjects[0])
		}
	}
	sort.Slice(places, func(i, j int) bool { return wiring.Less(places[i], places[j]) })
	return places
}

func noSuchRule(w diag.Waiver, known []string) diag.Finding {
	f := diag.Finding{
		Rule: WaiverUnused, Level: diag.Warning, At: w.Span, Subjects: []string{w.At},
		Message: fmt.Sprintf("the waiver at %s names no rule: %s", w.At, w.Rule),
		Advice:  "The rules are listed by: lugwright explain",
	}
	if near := source.Suggest(w.Rule, known); near != "" {
		f.Advice = fmt.Sprintf("Did you mean %s?", near)
	}
	return f
}
