package schematic

import (
	"sort"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"github.com/lugwright/lugwright/render/arrange"
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/job"
)

// tp14 is the smallest of the examples: two seats, 48 V, lights, horn, USB and sound bar.
func tp14(t *testing.T) *circuit {
	t.Helper()
	h := load(t, "../../examples/tern-point/jobs/tern-point-14.yaml")
	c := newCircuit(h)
	c.cluster()
	return c
}

func (c *circuit) barNamed(name string) *bar {
	for _, b := range c.bars {
		if b.name == name {
			return b
		}
	}
	return nil
}

func (c *circuit) deviceNamed(name string) *device {
	for _, d := range c.devices {
		if d.name == name {
			return d
		}
	}
	return nil
}

func TestRailsOfACart(t *testing.T) {
	c := tp14(t)
	for _, want := range []struct {
		name  string
		row   arrange.Row
		thick bool
	}{
		{"G1.+", arrange.TopRow, true}, {"G1.−", arrange.BottomRow, true}, {"X3", arrange.BottomRow, true},
		{"A1.+", arrange.TopRow, true}, {"A1.− n", arrange.BottomRow, true}, {"X13", arrange.Free, false}, {"X12", arrange.Free, false},
	} {
		b := c.barNamed(want.name)
		if b == nil {
			t.Errorf("no bar %s", want.name)
			continue
		}
		if b.row != want.row || b.thick != want.thick {
			t.Errorf("%s: row %d, thick %v", want.name, b.row, b.thick)
		}
	}
	if b := c.barNamed("X12"); b == nil || !b.railLike {
		t.Error("the factory harness ground is wired to the pack and leads from nowhere to nowhere")
	}
	if b := c.barNamed("X13"); b == nil || b.railLike {
		t.Error("the key-switched feed is no rail")
	}
}

// One drop is one lug: every wire on a stud is a line of its own on the rail.
func TestOneDropIsOneLug(t *testing.T) {
	c := tp14(t)
	for _, b := range c.bars {
		want := map[string]bool{}
		for _, term := range b.terminals {
			for _, w := range term.Wires {
				want[w.Name()] = true
			}
		}
		got := map[string]bool{}
		for _, l := range b.lines {
			if l.wire != nil {
				got[l.wire.Name()] = true
			}
		}
		if diff := cmp.Diff(want, got); diff != "" {
			t.Errorf("%s:\n%s", b.name, diff)
		}
	}
}

func TestFuseBlockUnfolds(t *testing.T) {
	c := tp14(t)
	if c.deviceNamed("A1") != nil {
		t.Error("the block is still one box")
	}
	for _, name := range []string{"A1.1", "A1.2", "A1.3", "A1.4"} {
		d := c.deviceNamed(name)
		if d == nil || d.symbol != "fuse" || len(d.lines) != 2 {
			t.Errorf("%s: %+v", name, d)
		}
	}
	if c.deviceNamed("A1.5") != nil {
		t.Error("a channel without fuse and wire is drawn")
	}
	if got := blockWords(c.h.Part("A1")); !strings.HasSuffix(got, "free: 5 6 7 8") {
		t.Errorf("the title of the block is %q", got)
	}
}

// Parts stand with what they have fewest hops to; the solenoid with the motor that it feeds
// by cables, though the enable lead of the reducer lands on it too.
func TestClusters(t *testing.T) {
	c := tp14(t)
	want := map[string]int{"M1": traction, "U1": traction, "K1": traction, "F1": traction, "S1": traction, "G1": traction, "P2": traction,
		"T1": supply, "T2": supply, "F2": supply, "F3": supply, "X1": supply, "A1.1": lowVoltage, "S6": lowVoltage, "E1": lowVoltage, "P4": lowVoltage}
	for name, k := range want {
		if d := c.deviceNamed(name); d == nil || d.cluster != k {
			t.Errorf("%s stands with cluster %v, want %d", name, d, k)
		}
	}
}

// Every wire is on a sheet whole, or on two with a flag on each.
func TestSplitShowsEveryLine(t *testing.T) {
	for _, file := range examples(t) {
		c := newCircuit(load(t, file))
		n := c.cluster()
		for _, plan := range [][][]int{{c.used(n)}, apart(c.used(n))} {
			ends := map[*line]int{}
			for _, s := range c.split(plan, 1) {
				for _, l := range s.lines {
					ends[l] += 2
				}
				for _, f := range s.flags {
					ends[f.line]++
				}
			}
			for _, l := range c.lines {
				want := 0
				for _, e := range l.ends {
					if e.device != nil || e.bar != nil {
						want++
					}
				}
				if ends[l] != want {
					t.Errorf("%s, plan %v: %d of %d ends of %s are drawn", file, plan, ends[l], want, lineName(l))
				}
			}
		}
	}
}

func TestCappedAndLooseEndsAreFlags(t *testing.T) {
	c := tp14(t)
	s := &set{circuit: c, plan: [][]int{{traction, supply, lowVoltage}}, first: 1}
	s.contents = c.split(s.plan, 1)
	var got []string
	for _, f := range s.contents[0].flags {
		got = append(got, f.line.wire.Name()+" "+s.where(f))
	}
	sort.Strings(got)
	if diff := cmp.Diff([]string{"P4.memory capped", "W63 capped"}, got); diff != "" {
		t.Error(diff)
	}
	loose := &flag{line: &line{wire: &wiring.Wire{Number: "W9"}, ends: [2]lineEnd{{}, {end: &wiring.End{Loose: "A1.-"}}}}}
	if got := s.where(loose); got != "LOOSE, was on A1.−" {
		t.Errorf("a loose end is called %q", got)
	}
}

// The cart as it was: a string of batteries has its rails at its two ends, and jumpers
// between.
func TestStringOfBatteries(t *testing.T) {
	h, _, err := job.LoadBefore("../../examples/tern-point/jobs/tern-point-14.yaml", job.Options{})
	if err != nil || h == nil {
		t.Fatal(err)
	}
	c := newCircuit(h)
	if c.barNamed("G16.+") == nil || c.barNamed("G11.−") == nil {
		t.Error("no rail at an end of the string")
	}
	if c.barNamed("G12.+") != nil {
		t.Error("a stud between two batteries is a rail")
	}
}

func TestSourceStandsLeftAndMotorIsACompanion(t *testing.T) {
	c := tp14(t)
	for name, want := range map[string]arrange.Role{"G1": arrange.Source, "M1": arrange.Companion, "S1": arrange.Control, "U1": arrange.Host, "T2": arrange.Host, "F1": arrange.InChain} {
		if got := roleOf(c, c.deviceNamed(name)); got != want {
			t.Errorf("%s: role %d, want %d", name, got, want)
		}
	}
}
