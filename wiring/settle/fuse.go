package settle

import "github.com/lugwright/lugwright/wiring"

// A fuse drops 0.08 V at its rating and opens above 135 % of it (ISO 8820-3 has it open
// within minutes there); both from memory. One without a rating never opens and is a
// milliohm.
const (
	fuseVolts  = 0.08
	fuseOpens  = 1.35
	fuseUnsaid = 0.001 // ohm
)

type fuse struct {
	unit
	fitted bool
	ohms   float64
	most   float64 // amperes that it carries for good; 0: never opens
}

func newFuse(e *wiring.Fuse, c *compiler) model {
	f := &fuse{unit: c.unit(e, c.branch(e.A, e.B)), fitted: e.Fitted}
	rating := float64(e.Rating)
	f.most = rating * orElse(float64(e.Opens), fuseOpens)
	f.ohms = float64(e.Ohms)
	if f.ohms <= 0 && rating > 0 {
		f.ohms = fuseVolts / rating
	}
	f.ohms = orElse(f.ohms, fuseUnsaid)
	return f
}

func (f *fuse) behave(s *solving) {
	if f.holds(s) {
		s.set(f.first, ohmic(f.ohms))
	} else {
		s.set(f.first, law{})
	}
}

// holds: the fuse is there, and whole.
func (f *fuse) holds(s *solving) bool { return f.fitted && !s.opened[f.id] }

func (f *fuse) strain(s *solving) float64 { return strain(s.amps[f.first], f.most) }

// strain is a current as a share of a limit; 0 without a limit.
func strain(amps, most float64) float64 {
	if most <= 0 {
		return 0
	}
	return max(amps, -amps) / most
}
