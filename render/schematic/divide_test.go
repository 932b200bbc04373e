package schematic

import (
	"fmt"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/lugwright/lugwright/render/sheet/frame"
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/job"
)

// lamps is an invented job: a pack, a reducer and a fuse block whose channels each feed a
// lamp through a switch.
func lamps(t *testing.T, channels int) *wiring.Harness {
	t.Helper()
	var b strings.Builder
	fmt.Fprintf(&b, "job: T-1\ntitle: Many lamps\nparts:\n  G1: {kind: pack-lfp, cells: 16}\n  F1: {kind: fuse-10x38, rating: 15 A, title: reducer}\n  T2: {kind: reducer}\n")
	fmt.Fprintf(&b, "  A1: {kind: fuse-block, channels: %d, fuses: {", channels)
	for i := range channels {
		fmt.Fprintf(&b, "%d: 5 A, ", i+1)
	}
	b.WriteString("}}\n")
	for i := range channels {
		fmt.Fprintf(&b, "  S%d: {kind: rocker, title: lamp %d}\n  E%d: {kind: lamp}\n", i+11, i+1, i+11)
	}
	b.WriteString("wires:\n  W1: {from: G1.+, to: F1.in}\n  W2: {from: F1.out, to: T2.in+}\n  W3: {from: T2.in-, to: G1.-}\n  W4: {from: T2.enable, to: G1.+}\n")
	b.WriteString("  W5: {from: T2.out, to: A1.+}\n  W6: {from: T2.memory, to: capped}\n  W7: {from: G1.-, to: A1.-, colour: BK, size: 10 AWG}\n")
	for i := range channels {
		fmt.Fprintf(&b, "  W%d: {from: A1.%d, to: S%d.in, colour: OG, size: 16 AWG}\n", 100+10*i, i+1, i+11)
		fmt.Fprintf(&b, "  W%d: {from: S%d.out, to: E%d.+, colour: OG/BK, size: 16 AWG}\n", 101+10*i, i+11, i+11)
		fmt.Fprintf(&b, "  W%d: {from: E%d.-, to: A1.n, colour: BK, size: 16 AWG}\n", 102+10*i, i+11)
	}
	h, found, err := job.Load("many.yaml", job.Options{FS: fstest.MapFS{"many.yaml": {Data: []byte(b.String())}}})
	if err != nil || h == nil {
		t.Fatalf("%v %v", err, found)
	}
	return h
}

// A block of more channels than a sheet can show goes on on further sheets, channel by
// channel, with its rails drawn again.
func TestManyChannelsTakeMoreSheets(t *testing.T) {
	c := newCircuit(lamps(t, 24))
	n := c.cluster()
	for k := range n {
		if w := c.weigh(k); w > mostWires+8 {
			t.Errorf("cluster %d has %d wires", k, w)
		}
	}
	home := map[int]int{}
	for _, d := range c.devices {
		if d.channel > 0 {
			home[d.channel] = d.cluster
		}
	}
	for ch := 2; ch <= 24; ch++ {
		if home[ch] < home[ch-1] {
			t.Errorf("channel %d stands before channel %d", ch, ch-1)
		}
	}
	if home[1] == home[24] {
		t.Error("all channels are on one sheet")
	}
	if c.parent[home[24]] != home[1] {
		t.Errorf("cluster %d is not known to go on from %d", home[24], home[1])
	}
}

func TestDividedSheetsCanBeRead(t *testing.T) {
	if testing.Short() {
		t.Skip("laying out three full sheets takes some seconds")
	}
	o := areaOn(frame.A4())
	h := lamps(t, 20)
	readBack(t, h, o)
}
