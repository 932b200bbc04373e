package job

import (
	"fmt"
	"slices"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
)

// The points that every platform should give.
const (
	interlockPoint = "interlock"
)

// checkNeeds compares what a layer expects with the points of those below it.
func (r *reading) checkNeeds(l *layer) {
	n := l.get("needs")
	if n == nil {
		return
	}
	for _, e := range r.entries(n, "needs") {
		name := e.Key.Text
		need := wiring.Need{Point: name, What: r.text(e.Value, "needs"), At: e.Key.Span}
		_, given := l.given[name]
		_, known := r.points[name]
		need.Met = given || known
		l.Needs = append(l.Needs, need)
		if !need.Met {
			r.unmet(l, need)
		}
	}
}

// unmet reports a point that a layer expects and nothing gives.
func (r *reading) unmet(l *layer, n wiring.Need) {
	what := ""
	if n.What != "" {
		what = fmt.Sprintf(" (%s)", n.What)
	}
	if r.alone() {
		r.note(n.At, fmt.Sprintf("this %s needs the point %s%s", spoken(l.Kind), n.Point, what), "What it is used on gives it; alone this is no fault")
		return
	}
	f := r.lost(n.At, fmt.Sprintf("this %s needs the point %s%s; no layer below gives it", spoken(l.Kind), n.Point, what),
		fmt.Sprintf("If there is none: points: {%s: none}", n.Point))
	if l.user != nil {
		f.Related = []diag.Place{{Span: l.user.At, Label: "used by this " + spoken(l.user.Kind)}}
	}
}

// readPoints takes the points that a layer defines.
func (r *reading) readPoints(l *layer) {
	n := l.get("points")
	if n == nil {
		return
	}
	for _, e := range r.entries(n, "points") {
		name := e.Key.Text
		if !pointForm.MatchString(name) {
			r.fault(e.Key.Span, fmt.Sprintf("%s is no name of a point", name), "Write small letters, digits, + and -, beginning with a letter: pack+")
			continue
		}
		text := r.text(e.Value, "point "+name)
		if text == "" {
			continue
		}
		p := &point{name: name, layer: l.index, at: e.Value.Span}
		if !isNone(text) {
			end := r.end(text, scope{layer: l, who: "point " + name + ": ", at: e.Value.Span})
			p.terminal = end.terminal
			p.broken = end.state == unknown || end.state == unmet
		}
		r.setPoint(p)
	}
}

func (r *reading) setPoint(p *point) {
	if _, ok := r.points[p.name]; !ok {
		r.order = append(r.order, p.name)
	}
	r.points[p.name] = p
}

// pointNames lists the points that a layer may speak of.
func (r *reading) pointNames(l *layer) []string {
	names := slices.Clone(r.order)
	for name := range l.given {
		if !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	slices.Sort(names)
	return names
}
