package rule

import (
	"context"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/figure"
	"github.com/lugwright/lugwright/wiring/handbook"
	"github.com/lugwright/lugwright/wiring/meter"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/position"
	"github.com/lugwright/lugwright/wiring/settle"
)

// desk is what the rules of one run share: what they reported, and answers that cost too
// much to find twice. Each answer is found when it is first asked for.
type desk struct {
	ctx      context.Context
	harness  *wiring.Harness
	graph    *path.Graph
	handbook *handbook.Tables

	findings   []diag.Finding
	notChecked []NotChecked

	supplies      []*path.Supply
	negative      *path.Reach
	controllers   map[*wiring.Part]bool
	network       *settle.Network
	points        map[pointKey]*settle.Point
	figures       *figure.Cart
	properties    []*position.Property // that the rules of this run prove
	steady        []*wiring.State      // the states with every button released
	mostPositions int64
	proofs        map[*position.Property]position.Result
	bench         *meter.Bench
}

func newDesk(ctx context.Context, h *wiring.Harness, rules []*Rule, o Options) *desk {
	tables := o.Handbook
	if tables == nil {
		tables = handbook.Default()
	}
	most := o.Positions
	if most <= 0 {
		most = mostPositions
	}
	return &desk{ctx: ctx, harness: h, graph: path.New(h), handbook: tables,
		points: map[pointKey]*settle.Point{}, properties: propertiesOf(rules), mostPositions: most}
}
