package job

import (
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/source"
)

// testPoints collects the test points of all layers, each once. What is gone by now is
// passed over.
func (r *reading) testPoints() {
	seen := map[*wiring.Terminal]bool{}
	for _, l := range r.layers {
		n := l.get("test-points")
		if n == nil {
			continue
		}
		for _, item := range r.items(n, "test-points") {
			for _, name := range r.expand(item) {
				e := r.end(name, scope{layer: l, who: "test-points: ", at: item.Span})
				if t := e.terminal; t != nil && !seen[t] && r.built[t.Part].gone == still {
					seen[t] = true
					r.h.TestPoints = append(r.h.TestPoints, t)
				}
			}
		}
	}
}

// waivers collects the waivers of all layers.
func (r *reading) waivers() {
	for _, l := range r.layers {
		n := l.get("waivers")
		if n == nil {
			continue
		}
		for _, item := range r.items(n, "waivers") {
			if item.Kind != source.Map {
				r.fault(item.Span, "a waiver is a map of keys", "Write {rule: colour-clear, at: W83, reason: …}")
				continue
			}
			f := r.fields(item, waiverKeys, "in a waiver")
			w := diag.Waiver{Span: item.Span}
			for key, text := range map[string]*string{"rule": &w.Rule, "at": &w.At, "reason": &w.Reason, "by": &w.By} {
				if v, ok := f[key]; ok {
					*text = r.text(v.Value, key)
				}
			}
			w.At = l.name(w.At)
			switch {
			case w.Rule == "" || w.At == "":
				r.fault(item.Span, "a waiver needs the rule and what its finding is about", "Write {rule: colour-clear, at: W83, reason: …}")
			case w.Reason == "":
				r.fault(item.Span, "the waiver of "+w.Rule+" at "+w.At+" gives no reason", "The reason is printed: write why the job lives with it")
			default:
				r.h.Waivers = append(r.h.Waivers, w)
			}
		}
	}
}
