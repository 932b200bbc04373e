package schematic

import (
	"fmt"
	"os"
	"testing"

	"github.com/lugwright/lugwright/render/arrange"
	"github.com/lugwright/lugwright/render/sheet/frame"
	"github.com/lugwright/lugwright/render/symbol"
)

func TestZZ(t *testing.T) {
	if os.Getenv("ZZ") == "" {
		t.Skip()
	}
	o := areaOn(frame.A4())
	for _, f := range examples(t) {
		c := newCircuit(load(t, f))
		c.cluster()
		s := &set{circuit: c, plan: [][]int{{traction}, {supply, lowVoltage}}, first: 1, zone: o.Zone, zones: map[spot]string{}}
		s.contents = c.split(s.plan, 1)
		g, err := draft(s, s.contents[0], int(o.Width/symbol.Unit), int(o.Height/symbol.Unit))
		if err != nil {
			t.Fatal(err)
		}
		for _, e := range []struct {
			n              int
			h1, c1, h2, c2 float64
		}{{60000, 100, 10, 20, .4}} {
			sum, x, nr, h := 0.0, 0, 0, 0
			for seed := range 5 {
				l, firm := arrange.Start(&g.d)
				l = arrange.Improve(&g.d, l, arrange.Effort{Moves: e.n, Hot: e.h1, Cold: e.c1, Reach: 24, Seed: uint64(seed), Held: firm})
				l = arrange.Improve(&g.d, l, arrange.Effort{Moves: e.n, Hot: e.h2, Cold: e.c2, Reach: 12, Seed: uint64(seed)})
				k := arrange.CostOf(&g.d, l)
				sum += k.Total / 5
				x += k.Crossings
				nr += k.NoRoom
				h += k.Hits
			}
			fmt.Printf("%v: %.0f x%d noroom %d hits %d\n", e, sum, x, nr, h)
		}
	}
}
