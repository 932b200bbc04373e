package settle

import (
	"math"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/settle/internal/sparse"
)

// solving is the room in which one state is settled. It serves one goroutine at a time.
type solving struct {
	network *Network

	// What is given.
	charge    quantity.Ratio
	override  func(*wiring.Source) quantity.Volt
	positions []string // by control

	// What the elements remember, by model.
	memory []bool
	opened []bool
	broken []int32 // the models that opened, in the order in which they did

	// Where the characteristics stand, by bend.
	piece     []piece
	inUse     []bool
	held      []bool    // held on its lower piece for this solve
	delivered []float64 // watts that it paid for when its voltage fell too low
	overload  []int32   // supplies, by model, that are overloaded in this solve

	// The network, by branch.
	laws  []law
	volts []float64
	amps  []float64
	slope []float64

	// By bus: the voltage is hi + lo, so that the difference of two that are nearly equal
	// keeps its digits; unbalanced is the sum of currents that leave it.
	hi, lo     []float64
	unbalanced []float64
	largest    []float64
	fixed      []bool

	joined   disjoint // of nets: what branches that conduct hold together
	ground   []int32  // by root of joined: the bus from which its voltages count
	regroup  bool     // joined is out of date
	ac       alternating
	matrix   *sparse.Matrix
	factors  *sparse.Factors
	residual float64
	rounds   int
	next     []bool // work of a round
}

func newSolving(n *Network) *solving {
	branches, buses := len(n.branches), int(n.buses)
	return &solving{
		network:    n,
		positions:  make([]string, len(n.controls)),
		memory:     make([]bool, len(n.models)),
		next:       make([]bool, len(n.models)),
		opened:     make([]bool, len(n.models)),
		piece:      make([]piece, len(n.bendings)),
		inUse:      make([]bool, len(n.bendings)),
		held:       make([]bool, len(n.bendings)),
		delivered:  make([]float64, len(n.bendings)),
		laws:       make([]law, branches),
		volts:      make([]float64, branches),
		amps:       make([]float64, branches),
		slope:      make([]float64, branches),
		hi:         make([]float64, buses),
		lo:         make([]float64, buses),
		unbalanced: make([]float64, buses),
		largest:    make([]float64, buses),
		fixed:      make([]bool, buses),
		joined:     newDisjoint(int(n.nets)),
		ground:     make([]int32, n.nets),
		matrix:     n.pattern.NewMatrix(),
		factors:    n.pattern.NewFactors(),
	}
}

// prepare clears the room for a state.
func (s *solving) prepare(st *wiring.State, o Options) {
	n := s.network
	s.charge, s.override = o.SOC, o.OpenCircuit
	if s.charge == 0 {
		s.charge = st.SOC
	}
	if s.charge == 0 {
		s.charge = n.harness.Assume.SOC
	}
	for i, c := range n.controls {
		s.positions[i] = position(st, c)
	}
	clear(s.memory)
	clear(s.opened)
	clear(s.piece)
	clear(s.volts)
	clear(s.laws)
	copy(s.laws, n.wireLaws)
	copy(s.laws[len(s.laws)-len(n.bridges):], n.bridges)
	s.broken, s.rounds, s.regroup = nil, 0, true
	for id, f := range n.forced {
		s.opened[id] = f.kind == elementOpen
	}
}

// position is where a control stands in a state; "" for a control without positions.
func position(st *wiring.State, c *wiring.Control) string {
	if c == nil || len(c.Positions) == 0 {
		return ""
	}
	return st.Position(c)
}

// openCircuit is the voltage of a source that carries nothing, in volts; 0 if what is
// given is no number.
func (s *solving) openCircuit(e *wiring.Source) float64 {
	v := quantity.Volt(0)
	if s.override != nil {
		v = s.override(e)
	}
	if v == 0 {
		v = OpenCircuit(e, s.charge)
	}
	if math.IsNaN(float64(v)) || math.IsInf(float64(v), 0) {
		return 0
	}
	return float64(v)
}

// set gives a branch its law.
func (s *solving) set(branch int32, l law) {
	if l.conducts() != s.laws[branch].conducts() {
		s.regroup = true
	}
	s.laws[branch] = l
}

// bends says whether a bend counts now.
func (s *solving) bends(bend int32, inUse bool) { s.inUse[bend] = inUse }

// behave lets a model set its laws.
func (s *solving) behave(m model) {
	m.behave(s)
	if s.network.forced != nil {
		s.network.forced[m.itself().id].apply(s, m)
	}
}

func (s *solving) behaveAll() {
	for _, m := range s.network.models {
		s.behave(m)
	}
}

// move puts a bend on another piece.
func (s *solving) move(bend int32, to piece) {
	b := &s.network.bendings[bend]
	if to == lower && b.feeds >= 0 {
		s.delivered[bend] = max(-s.volts[b.feeds]*s.amps[b.feeds], 0)
	}
	s.piece[bend] = to
	s.behave(b.model)
}
