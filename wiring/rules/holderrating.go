package rules

import (
	"fmt"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/rule"
)

func holderRating() *rule.Rule {
	return &rule.Rule{
		ID:    "holder-rating",
		Title: "the holder of each fuse carries what the fuse lets through",
		Level: diag.Warning,
		Why: "A holder melts around a whole fuse: its spring clips have some milliohms, and what they turn into heat grows with the square of the current. " +
			"An in-line holder for 10 A glass fuses was found melted apart at 8.5 A, its fuse whole. A 40 A fuse in a holder for 30 A " +
			"protects the wire and not the holder.",
		Do:     "Take a holder that is rated for the fuse in it, and load either for long with no more than 80 %, which fuse-carries-load looks at; tighten bolted ones to their torque.",
		Source: "Common practice, no published source; field cases of owners.",
		Wrong: `parts:
  F3: {rating: 15 A, holder: 10 A}
`,
		Right: `parts:
  F3: {rating: 15 A, holder: 32 A}
`,
		Run: runHolderRating,
	}
}

func runHolderRating(p *rule.Pass) {
	unknown := map[*wiring.Part]bool{}
	for _, f := range elementsOf[*wiring.Fuse](p.Harness) {
		switch {
		case !f.Fitted || f.Style == "breaker":
		case f.Holder == 0:
			if !unknown[f.Part] {
				p.NotChecked(f.Part.Designation, "it does not say what its holder carries", f.Part.At)
			}
			unknown[f.Part] = true
		case f.Rating > f.Holder:
			reportHolder(p, f)
		}
	}
}

func reportHolder(p *rule.Pass, f *wiring.Fuse) {
	at := f.Part.At
	for _, key := range []string{"holder", "channel", "rating", fmt.Sprintf("fuses.%d", f.Channel)} {
		if span, ok := f.Part.Where[key]; ok {
			at = span
			break
		}
	}
	p.Report(diag.Finding{
		Message:  fmt.Sprintf("%s of %v sits in a holder for %v", openerName(f), f.Rating, f.Holder),
		Detail:   "A current that the fuse lets through for ever melts its holder.",
		Advice:   "Take a larger holder, a smaller fuse, or lead the load over two.",
		At:       at,
		Related:  defined(f.Part.Designation, f.Part.At),
		Subjects: []string{f.Part.Designation, f.Ref()},
	})
}
