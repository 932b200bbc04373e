package job

import (
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/kind"
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
	planned []plannedWire
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

// Bounds of what is said.
const (
	mostFindings   = 500 // of one call; more are counted, not listed
	longestMessage = 400 // characters
	longestName    = 80  // characters of a place, loom, state or group
)

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
		r.readAsBuilt(l)
		r.markInterlock(l)
	}
	return r.finish()
}
