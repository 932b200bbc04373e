package schematic

import (
	"fmt"
	"os"
	"testing"
	"time"

	"github.com/lugwright/lugwright/render/sheet/frame"
	"github.com/lugwright/lugwright/render/symbol"
)

func TestZZ(t *testing.T) {
	if os.Getenv("ZZ") == "" {
		t.Skip()
	}
	for _, o := range []Options{areaOn(frame.A4())} {
		for _, f := range examples(t)[:1] {
			c := newCircuit(load(t, f))
			c.cluster()
			s := &set{circuit: c, plan: [][]int{{traction}, {supply, lowVoltage}}, first: 1, zone: o.Zone, zones: map[spot]string{}}
			s.contents = c.split(s.plan, 1)
			g, err := draft(s, s.contents[0], int(o.Width/symbol.Unit), int(o.Height/symbol.Unit))
			if err != nil {
				t.Fatal(err)
			}
			t0 := time.Now()
			sum := 0.0
			for seed := range 5 {
				r := try(&g.d, uint64(seed*2+1))
				sum += quality(&g.d, r)
				fmt.Printf("{q%.0f m%d l%d x%d b%d ", quality(&g.d, r), len(r.labels.Missing), r.labels.Leaders, r.routes.Crossing, r.routes.Bends)
			}
			fmt.Printf("= %.0f %v\n", sum/5, time.Since(t0)/5)
		}
	}
}
