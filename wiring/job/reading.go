package job

import (
	"fmt"
	"unicode/utf8"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/kind"
	"github.com/lugwright/lugwright/wiring/source"
)

// reading is one call of Load: what has been read so far and what was wrong with it.
type reading struct {
	store    *store
	catalog  *Catalog
	files    *diag.Files
	findings []diag.Finding
	full     map[string]bool  // limits that were reported as exceeded
	faulty   map[string]bool  // folded names of parts that were reported and left out
	taken    map[string]taken // by the letters of designations and numbers
	unlisted int              // findings beyond mostFindings
	named    map[string]int   // entries by section
	ranged   int              // names that ranges were written out to
	gaps     bool             // a file could not be read whole: what seems not to be there may be

	layers []*layer // lowest first
	kinds  *kind.Set

	parts   map[string][]*draftPart // by folded designation, oldest first
	count   int                     // of parts that were ever defined
	groups  map[string]*group       // by folded name
	wires   map[string]*draftWire   // live ones, by folded number
	leads   map[*wiring.Terminal]*draftWire
	laid    []*draftWire // all that were ever laid, in order
	dropped []droppedWire
	points  map[string]*point
	order   []string // names of points, in the order of definition
	h       *wiring.Harness
	removed *wiring.Harness // holds the nodes of parts that are gone
	built   map[*wiring.Part]*draftPart

	stateOf    map[string]*draftState // by folded name
	stateOrder []*draftState
	controlOf  map[string][]*wiring.Control // by folded name of the control

	placeOf map[string]*wiring.Place // by folded name, as are the next two
	runOf   map[string]*wiring.Run
	loomOf  map[string]*wiring.Loom
	badRuns map[*wiring.Run]bool // a fault of theirs was reported
	runsAt  map[*wiring.Place][]*wiring.Run
	ways    map[*wiring.Place]map[*wiring.Place]reach
}

func newReading(s *store, c *Catalog) *reading {
	return &reading{
		store: s, catalog: c,
		files:   &diag.Files{},
		full:    map[string]bool{},
		taken:   map[string]taken{},
		named:   map[string]int{},
		faulty:  map[string]bool{},
		parts:   map[string][]*draftPart{},
		groups:  map[string]*group{},
		wires:   map[string]*draftWire{},
		leads:   map[*wiring.Terminal]*draftWire{},
		points:  map[string]*point{},
		h:       &wiring.Harness{},
		removed: &wiring.Harness{},
		built:   map[*wiring.Part]*draftPart{},
	}
}

// fault reports an input error.
func (r *reading) fault(at diag.Span, message string, advice ...string) *diag.Finding {
	return r.add(source.Fault(at, message, advice...))
}

// lost reports a reference to what is not there, unless it may be in what could not be
// read.
func (r *reading) lost(at diag.Span, message string, advice ...string) *diag.Finding {
	if r.gaps {
		return &diag.Finding{}
	}
	return r.fault(at, message, advice...)
}

// took keeps what a parser found. If it seems to have left out more than single values, it
// remembers that.
func (r *reading) took(root *source.Node, findings []diag.Finding) {
	r.findings = append(r.findings, findings...)
	errors := 0
	for _, f := range findings {
		if f.Level == diag.Error {
			errors++
		}
	}
	if errors > nulls(root, 0) || errors > 0 && sectionLost(root) {
		r.gaps = true
	}
}

// nulls counts the values that could not be read; each has had its fault reported.
func nulls(n *source.Node, depth int) int {
	if n == nil || depth > source.MostNesting {
		return 0
	}
	count := 0
	if n.Kind == source.Null {
		count++
	}
	for _, item := range n.Items {
		count += nulls(item, depth+1)
	}
	for _, e := range n.Entries {
		count += nulls(e.Value, depth+1)
	}
	return count
}

// sectionLost reports whether a whole section or a whole part of a layer is missing.
func sectionLost(root *source.Node) bool {
	for _, e := range root.Entries {
		if e.Value.Kind == source.Null {
			return true
		}
		for _, inner := range e.Value.Entries {
			if e.Key.Text == "parts" && inner.Value.Kind == source.Null {
				return true
			}
		}
	}
	return false
}

// warn reports something about the input that may be as meant.
func (r *reading) warn(at diag.Span, message string, advice ...string) *diag.Finding {
	f := source.Fault(at, message, advice...)
	f.Level = diag.Warning
	return r.add(f)
}

// note reports something about the input that is worth knowing.
func (r *reading) note(at diag.Span, message string, advice ...string) *diag.Finding {
	f := source.Fault(at, message, advice...)
	f.Level = diag.Note
	return r.add(f)
}

// add keeps a finding. The result may be completed until the next one is added. Of a file
// that is nothing but faults the first are enough.
func (r *reading) add(f diag.Finding) *diag.Finding {
	if r.flooded() {
		r.unlisted++
		return &diag.Finding{}
	}
	f.Message = clip(f.Message, longestMessage)
	r.findings = append(r.findings, f)
	return &r.findings[len(r.findings)-1]
}

// Bounds of what is said.
const (
	mostFindings   = 500 // of one call; more are counted, not listed
	longestMessage = 400 // characters
	longestName    = 80  // characters of a place, loom, state or group
)

// flooded reports whether enough has been found.
func (r *reading) flooded() bool { return len(r.findings) >= mostFindings }

// closeFlood says how many faults are not listed.
func (r *reading) closeFlood() {
	if r.unlisted > 0 {
		r.findings = append(r.findings, source.Fault(topOf(r.top().File), fmt.Sprintf("%d more faults are not listed", r.unlisted)))
	}
}

// clip cuts a text to a number of characters.
func clip(text string, most int) string {
	if utf8.RuneCountInString(text) <= most {
		return text
	}
	return string([]rune(text)[:most-1]) + "…"
}

// meant is ": did you mean X?" for a word that is none of some names, or nothing. The names
// are asked for only if there is still something to say.
func (r *reading) meant(word string, names func() []string) string {
	if r.flooded() || len(word) > longestName {
		return ""
	}
	return source.DidYouMean(word, names())
}

// once reports a fault the first time that it is asked for under this name.
func (r *reading) once(name string, at diag.Span, message string, advice ...string) {
	if !r.full[name] {
		r.full[name] = true
		r.fault(at, message, advice...)
	}
}

// top is the layer that was asked for.
func (r *reading) top() *layer { return r.layers[len(r.layers)-1] }

// alone reports whether what was asked for is not a whole cart: a kit, add-on or list.
func (r *reading) alone() bool {
	switch r.top().Kind {
	case wiring.JobLayer, wiring.PlatformLayer:
		return false
	}
	return true
}

// harness runs the steps after gathering.
func (r *reading) harness() *wiring.Harness {
	if len(r.layers) == 0 {
		return nil
	}
	r.readKinds()
	for _, l := range r.layers {
		r.readParts(l)
		r.removeParts(l)
		r.readGroups(l)
	}
	r.buildParts()
	for _, l := range r.layers {
		r.removeWires(l)
		r.checkNeeds(l)
		r.readMoves(l)
		r.readPoints(l)
		r.readWires(l)
		r.markInterlock(l)
	}
	return r.finish()
}
