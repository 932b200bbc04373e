package rules

import (
	"fmt"
	"strings"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/handbook"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/rule"
)

func lugFitsStud() *rule.Rule {
	return &rule.Rule{
		ID:    "lug-fits-stud",
		Title: "each lug has the hole of its stud, the form of its terminal, and a barrel for its wire",
		Level: diag.Warning,
		Why: "A lug must carry by its face. An M10 lug (10.5 mm) on an M8 stud loses two fifths of the face under a 13 mm nut and sits off centre; two sizes over, " +
			"the nut pulls through. A hole that is too small gets drilled out by somebody in a hurry, through the plating and half the tongue. " +
			"A 5/16 in lug on M8, or 3/8 in on M10, is right: they take the same hole.",
		Do: "Order the lug for the stud that is there: M8 and 5/16 in take 8.4 mm. A wire thicker than a blade terminal takes wants a ring and a stud.",
		Source: "Geometry of studs against the fine holes of ISO 273; AC 43.13-1B as taught: the hole matches the stud. " +
			"Wire on blade terminals: DIN 46245 and the like, from memory.",
		Wrong: `wires:
  W51: {from-lug: ring M6}  # on an M8 post
`,
		Right: `wires:
  W51: {from-lug: ring 5/16 in}
`,
		Run: runLugFitsStud,
	}
}

func runLugFitsStud(p *rule.Pass) {
	for _, w := range p.Harness.Wires {
		for _, e := range w.Ends() {
			if e.Terminal != nil && e.Lug != "" && e.Lug != "none" {
				l := lugEnd{pass: p, wire: w, end: e}
				l.judge()
				l.barrel()
			}
		}
	}
}

// lugEnd is one end of a wire with a lug on it.
type lugEnd struct {
	pass *rule.Pass
	wire *wiring.Wire
	end  *wiring.End
}

// ofForm is the lugs that go on each form of terminal.
var ofForm = map[wiring.FormType][]string{
	wiring.Stud:  {"ring"},
	wiring.Screw: {"ring", "fork", "ferrule", "pin"},
	wiring.Spade: {"spade"},
	wiring.Clamp: {"ferrule", "pin"},
	wiring.Pin:   {"pin", "spade"},
}

func (l lugEnd) judge() {
	t := l.end.Terminal
	kinds, ok := ofForm[t.Form.Type]
	if !ok {
		return // a lead, a joint, a port: the lug is cut off or never was
	}
	word, size, _ := strings.Cut(l.end.Lug, " ")
	if !contains(kinds, word) {
		level := diag.Error
		if word == "fork" {
			level = diag.Warning // it holds until it loosens
		}
		l.report(level, fmt.Sprintf("a %s does not belong on the %s %s", l.end.Lug, form(t.Form), t.Ref()),
			fmt.Sprintf("A %s takes a %s.", t.Form.Type, strings.Join(kinds, ", ")))
		return
	}
	switch word {
	case "ring", "fork":
		l.hole(size)
	case "spade":
		if size != "" && t.Form.Size != "" && size != t.Form.Size {
			l.report(diag.Error, fmt.Sprintf("a spade %s does not go on %s, a spade %s", size, t.Ref(), t.Form.Size), "Blade widths must agree.")
		}
	}
}

// hole compares the hole of a ring or fork with the stud.
func (l lugEnd) hole(size string) {
	t := l.end.Terminal
	if size == "" || t.Form.Size == "" {
		return
	}
	lug, err := quantity.ParseThread(size)
	if err != nil {
		l.pass.NotChecked(l.wire.Name(), fmt.Sprintf("its lug %s names no thread", l.end.Lug), endSpan(l.wire, l.end))
		return
	}
	stud, err := quantity.ParseThread(t.Form.Size)
	if err != nil {
		l.pass.NotChecked(t.Ref(), "its stud names no thread", t.Part.At)
		return
	}
	fit, err := l.pass.Handbook.Fit(lug, stud)
	if err != nil {
		l.pass.NotChecked(l.wire.Name(), err.Error(), endSpan(l.wire, l.end))
		return
	}
	detail := ""
	if right, err := l.pass.Handbook.LugFor(stud); err == nil {
		detail = fmt.Sprintf("A stud of %s takes a lug %v, hole %.1f mm.", t.Form.Size, right.Metric, right.Hole.Millimetres())
	}
	switch fit {
	case handbook.TooSmall:
		l.report(diag.Error, fmt.Sprintf("the %s of %s does not go over %s, a stud of %s", l.end.Lug, l.wire.Name(), t.Ref(), t.Form.Size), detail)
	case handbook.OneOver, handbook.TooLarge:
		l.report(diag.Warning, fmt.Sprintf("the %s of %s is %v for %s, a stud of %s", l.end.Lug, l.wire.Name(), fit, t.Ref(), t.Form.Size), detail)
	}
}

// barrels is the most copper that the barrel of a blade receptacle takes.
var barrels = map[string]quantity.SquareMillimetre{"2.8": 1.5, "4.8": 2.5, "6.3": 6.0, "9.5": 6.0}

// barrel compares the wire with the barrel of a blade receptacle. Rings are made for every
// wire.
func (l lugEnd) barrel() {
	word, size, _ := strings.Cut(l.end.Lug, " ")
	most, ok := barrels[size]
	piece := pieceAt(l.wire, l.end)
	if word != "spade" || !ok || piece == nil || !piece.Size.Known() {
		return
	}
	if area, err := l.pass.Handbook.Area(piece.Size); err == nil && area > most {
		l.report(diag.Warning, fmt.Sprintf("%s (%v) is too thick for the %s on %s", l.wire.Name(), piece.Size, l.end.Lug, l.end.Terminal.Ref()),
			fmt.Sprintf("Its barrel takes %v at most, the wire has %v.", most, area))
	}
}

func (l lugEnd) report(level diag.Level, message, detail string) {
	t := l.end.Terminal
	advice := "Order the lug that belongs there."
	if !l.end.Stated {
		advice = "Say which lug it is (from-lug, to-lug), or order the one that belongs there."
	}
	key := "to-lug"
	if l.end == &l.wire.From {
		key = "from-lug"
	}
	at := endSpan(l.wire, l.end)
	if span, ok := l.wire.Where[key]; ok {
		at = span
	}
	l.pass.Report(diag.Finding{
		Level: level, Message: message, Detail: detail, Advice: advice, At: at,
		Related:  defined(t.Part.Designation, t.Part.At),
		Subjects: subjects([]string{l.wire.Name(), t.Ref(), t.Part.Designation}),
	})
}

func contains(words []string, word string) bool {
	for _, w := range words {
		if w == word {
			return true
		}
	}
	return false
}
