package job

import (
	"fmt"
	"sort"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/source"
)

// placesAndRuns merges both over all layers and checks the places of parts.
func (r *reading) placesAndRuns() {
	r.placeOf = map[string]*wiring.Place{}
	r.runOf, r.badRuns = map[string]*wiring.Run{}, map[*wiring.Run]bool{}
	r.runsAt = map[*wiring.Place][]*wiring.Run{}
	r.ways = map[*wiring.Place]map[*wiring.Place]reach{}
	for _, l := range r.layers {
		r.eachNamed(l, "places", r.readPlace)
	}
	for _, l := range r.layers {
		r.eachNamed(l, "runs", r.readRun)
	}
	r.keepWholeRuns()
	r.checkPlaces()
}

func (r *reading) place(name string) *wiring.Place { return r.placeOf[wiring.Fold(name)] }

func (r *reading) readPlace(_ *layer, e source.Entry) {
	p := r.place(e.Key.Text)
	if p == nil {
		p = &wiring.Place{Name: e.Key.Text, At: e.Key.Span}
		r.placeOf[wiring.Fold(p.Name)] = p
		r.h.Places = append(r.h.Places, p)
	}
	f := r.fields(e.Value, placeKeys, "in place "+p.Name)
	if v, ok := f["along"]; ok {
		p.Along = r.amount(v.Value, "along", quantity.Length)
	}
	if v, ok := f["height"]; ok {
		p.Height = r.amount(v.Value, "height", quantity.Length)
	}
	put(r, f, "ambient", quantity.Temperature, &p.Ambient)
}

func (r *reading) readRun(_ *layer, e source.Entry) {
	run := r.runOf[wiring.Fold(e.Key.Text)]
	if run == nil {
		run = &wiring.Run{Name: e.Key.Text, At: e.Key.Span}
		r.runOf[wiring.Fold(run.Name)] = run
		r.h.Runs = append(r.h.Runs, run)
	}
	f := r.fields(e.Value, runKeys, "in run "+run.Name)
	for key, place := range map[string]**wiring.Place{"from": &run.From, "to": &run.To} {
		if v, ok := f[key]; ok {
			*place = r.knownPlace(v.Value, key)
			r.badRuns[run] = r.badRuns[run] || *place == nil
		}
	}
	if v, ok := f["length"]; ok {
		run.Length = r.positive(v.Value, "length", quantity.Length)
		r.badRuns[run] = r.badRuns[run] || !run.Length.Known()
	}
}

// knownPlace finds the place that a value names.
func (r *reading) knownPlace(n *source.Node, key string) *wiring.Place {
	name := r.text(n, key)
	if name == "" {
		return nil
	}
	p := r.place(name)
	if p == nil {
		r.lost(n.Span, fmt.Sprintf("no place %s%s", name, r.meant(name, r.placeNames)))
	}
	return p
}

func (r *reading) placeNames() []string {
	names := make([]string, 0, len(r.h.Places))
	for _, p := range r.h.Places {
		names = append(names, p.Name)
	}
	sort.Strings(names)
	return names
}

// keepWholeRuns reports runs that lack an end or a length, and keeps the others.
func (r *reading) keepWholeRuns() {
	kept := r.h.Runs[:0]
	for _, run := range r.h.Runs {
		switch {
		case r.badRuns[run]:
		case run.From == nil || run.To == nil || !run.Length.Known():
			r.lost(run.At, fmt.Sprintf("run %s needs from, to and length", run.Name), "Write {from: dash, to: seat box, length: 5 ft}")
		case run.From == run.To:
			r.fault(run.At, fmt.Sprintf("run %s goes from %s to itself", run.Name, run.From.Name))
		default:
			kept = append(kept, run)
			r.runsAt[run.From] = append(r.runsAt[run.From], run)
			r.runsAt[run.To] = append(r.runsAt[run.To], run)
		}
	}
	r.h.Runs = kept
}

// checkPlaces reports parts at places that no layer describes, where any are described.
func (r *reading) checkPlaces() {
	if len(r.h.Places) == 0 {
		return
	}
	for _, p := range r.h.Parts {
		if p.Place == "" {
			continue
		}
		if place := r.place(p.Place); place != nil {
			p.Place = place.Name
			continue
		}
		r.lost(p.Span("place"), fmt.Sprintf("no place %s%s", p.Place, r.meant(p.Place, r.placeNames)))
	}
}
