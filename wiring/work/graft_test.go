package work

import (
	"context"
	"math"
	"path/filepath"
	"testing"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/job"
	"github.com/lugwright/lugwright/wiring/settle"
)

// The cart as it came must settle on the bench as it does by itself, in every state and at
// every terminal: then no node, coil or condition was left behind when it was copied.
func TestCartOnTheBenchIsTheCart(t *testing.T) {
	for _, name := range []string{"tern-point-14", "tern-point-shuttle-3", "tern-point-truck-1"} {
		file := filepath.Join("..", "..", "examples", "tern-point", "jobs", name+".yaml")
		old, _, err := job.LoadBefore(file, job.Options{})
		if err != nil || old == nil {
			t.Fatal(err)
		}
		new, _, err := job.Load(file, job.Options{})
		if err != nil || new == nil {
			t.Fatal(err)
		}
		b := newBench(old, new)
		alone, bench := settle.Compile(old), settle.Compile(b.begin().harness())
		for _, s := range old.States {
			one, _ := b.begin().setting(old, s, asSwitched)
			compare(t, b, settled(t, alone, s), settled(t, bench, one))
		}
	}
}

func settled(t *testing.T, n *settle.Network, s *wiring.State) *settle.Point {
	t.Helper()
	p, err := n.Settle(context.Background(), s, settle.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func compare(t *testing.T, b *bench, want, got *settle.Point) {
	t.Helper()
	zero := b.spot(b.old.Nodes[want.ReferenceNode()].Terminal, b.olds).Node
	for _, p := range b.old.Parts {
		for _, own := range p.Terminals {
			if own.Node <= wiring.FrameNode || want.Floating(own.Node) {
				continue
			}
			u, v := want.Volts(own.Node), got.Across(b.spot(own, b.olds).Node, zero)
			if math.Abs(float64(u-v)) > 1e-6 {
				t.Errorf("%s, %s: %v on the bench, %v by itself", want.State.Name, own.Ref(), v, u)
			}
		}
	}
}
