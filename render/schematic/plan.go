package schematic

import (
	"slices"

	"github.com/lugwright/lugwright/render/arrange"
)

// planSheets divides the clusters into sheets: each sheet takes the next cluster as long as
// that does not crowd it.
func (s *set) planSheets(used []int, fits func(plan [][]int, sheet int) (bool, error)) error {
	s.plan = nil
	for i, k := range used {
		if n := len(s.plan); n > 0 {
			joined := slices.Clone(s.plan[:n-1])
			joined = append(joined, append(slices.Clone(s.plan[n-1]), k))
			ok, err := fits(append(joined, apart(used[i+1:])...), n-1)
			if err != nil {
				return err
			}
			if ok {
				s.plan = joined
				continue
			}
		}
		s.plan = append(s.plan, []int{k})
	}
	return nil
}

// apart gives each cluster a sheet of its own.
func apart(clusters []int) [][]int {
	plan := make([][]int, len(clusters))
	for i, k := range clusters {
		plan[i] = []int{k}
	}
	return plan
}

// used lists the clusters that have anything to show; at least one.
func (c *circuit) used(clusters int) []int {
	var used []int
	for k := range clusters {
		if c.weigh(k) > 0 {
			used = append(used, k)
		}
	}
	if len(used) == 0 {
		used = []int{traction}
	}
	return used
}

// crowded is how many times its breadth a sheet may need before it is divided: columns can
// share some of the room that each of them asks for.
const crowded = 1.35

// fits reports whether a sheet of a plan is not crowded.
func (s *set) fits(o Options) func(plan [][]int, sheet int) (bool, error) {
	return func(plan [][]int, sheet int) (bool, error) {
		try := &set{circuit: s.circuit, plan: plan, first: s.first, zone: s.zone, zones: s.zones}
		try.contents = s.circuit.split(plan, s.first)
		g, err := try.draftSheet(try.contents[sheet], o)
		if err != nil {
			return false, err
		}
		return arrange.Breadth(&g.d) <= crowded*float64(g.d.Width), nil
	}
}
