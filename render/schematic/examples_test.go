package schematic

import (
	"bytes"
	"fmt"
	"path/filepath"
	"sort"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"github.com/lugwright/lugwright/render/ink"
	"github.com/lugwright/lugwright/render/proof"
	"github.com/lugwright/lugwright/render/sheet/frame"
	"github.com/lugwright/lugwright/render/svg"
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/job"
)

// examples lists the jobs that ship, whatever they are.
func examples(t testing.TB) []string {
	t.Helper()
	files, err := filepath.Glob("../../examples/*/jobs/*.yaml")
	if err != nil || len(files) == 0 {
		t.Fatalf("no example jobs: %v", err)
	}
	return files
}

func load(t testing.TB, file string) *wiring.Harness {
	t.Helper()
	h, found, err := job.Load(file, job.Options{})
	if err != nil || h == nil {
		t.Fatalf("%s: %v %v", file, err, found)
	}
	return h
}

// areaOn is the drawing area of a paper under a frame without findings.
func areaOn(p frame.Paper) Options {
	f := frame.Layout(p, frame.Content{Title: "t", Number: "n"})
	return Options{Width: f.Area.Width(), Height: f.Area.Height(), Zone: func(at ink.Point) string {
		return f.Zone(ink.Point{X: at.X + f.Area.Min.X, Y: at.Y + f.Area.Min.Y})
	}}
}

// paint draws a sheet as SVG.
func paint(t testing.TB, s *Sheet, o Options) []byte {
	t.Helper()
	var b bytes.Buffer
	page := svg.New(&b, o.Width, o.Height, svg.Options{})
	s.Draw(page)
	if err := page.Finish(); err != nil {
		t.Errorf("sheet %d: %v", s.Number, err)
	}
	return b.Bytes()
}

// Every shipped example on both usual papers: read back from the finished file, nothing may
// be misread, and what is joined on paper is what is joined on the cart. The limits are
// those of package proof.
func TestExamplesCanBeRead(t *testing.T) {
	if testing.Short() {
		t.Skip("laying out every sheet of every example takes half a minute")
	}
	for _, paper := range []frame.Paper{frame.A4(), frame.Letter()} {
		for _, file := range examples(t) {
			t.Run(paper.Name+"/"+strings.TrimSuffix(filepath.Base(file), ".yaml"), func(t *testing.T) {
				t.Parallel()
				o := areaOn(paper)
				h := load(t, file)
				readBack(t, h, o)
			})
		}
	}
}

// readBack lays out a cart, reads each sheet back, and misses no wire.
func readBack(t *testing.T, h *wiring.Harness, o Options) {
	t.Helper()
	sheets, err := Sheets(h, o)
	if err != nil {
		t.Fatal(err)
	}
	drawn := map[string]bool{}
	for _, s := range sheets {
		judge(t, s, paint(t, s, o), drawn)
		sleevesAreClear(t, s)
	}
	for _, w := range h.Wires {
		if !drawn[w.Name()] {
			t.Errorf("%s is on no sheet", w.Name())
		}
	}
}

// sleevesAreClear holds joints off other wires: a sleeve that touches a cable reads as a
// joint with it.
func sleevesAreClear(t *testing.T, s *Sheet) {
	t.Helper()
	for i, path := range s.c.routes.Paths {
		if path == nil || s.g.wires[i].line.wire == nil {
			continue
		}
		_, joints := s.joined(i, path)
		for _, j := range joints {
			for k, other := range s.c.routes.Paths {
				if k != i && touchesPath(j.box(0), other, s.g.d.Wires[k].Thick) {
					t.Errorf("sheet %d: a sleeve of %s stands on %s", s.Number, s.g.d.Wires[i].Name, s.g.d.Wires[k].Name)
				}
			}
		}
	}
}

// judge reads a drawn sheet back and holds it to the limits; it notes the wires on it.
func judge(t *testing.T, s *Sheet, file []byte, drawn map[string]bool) {
	t.Helper()
	d, err := proof.Read(file)
	if err != nil {
		t.Fatal(err)
	}
	var wires []string
	for i := range s.g.d.Wires {
		if s.g.wires[i].line.wire != nil {
			wires = append(wires, s.g.d.Wires[i].Name)
			drawn[s.g.d.Wires[i].Name] = true
		}
	}
	r := d.Judge(wires)
	for _, f := range r.Faults {
		t.Errorf("sheet %d: %v", s.Number, f)
	}
	if n := len(s.Stats.Unrouted) + len(s.Stats.Unlabelled); n > 0 {
		t.Errorf("sheet %d: no way for %v, no place for %v", s.Number, s.Stats.Unrouted, s.Stats.Unlabelled)
	}
	got, _ := d.Nets()
	if diff := cmp.Diff(s.wanted(), shown(got)); diff != "" {
		t.Errorf("sheet %d: what the lines join (-cart +paper):\n%s", s.Number, diff)
	}
	t.Logf("sheet %d %q: %+v", s.Number, s.Title, r.Soft)
}

// shown writes nets of more than one pin as sorted lines.
func shown(nets []proof.Net) []string {
	var all []string
	for _, n := range nets {
		if pins := compact(n.Pins); len(pins) > 1 || len(n.Wires) > 0 {
			all = append(all, fmt.Sprint(pins, n.Wires))
		}
	}
	sort.Strings(all)
	return all
}

// wanted lists the same from the circuit: what the lines of the sheet join.
func (s *Sheet) wanted() []string {
	root := map[string]string{}
	var find func(n string) string
	find = func(n string) string {
		if r, ok := root[n]; ok && r != n {
			return find(r)
		}
		return n
	}
	type joined struct{ wire, at string }
	var all []joined
	for i := range s.g.wires {
		var ends [2]string
		for k, e := range s.g.d.Wires[i].Ends {
			if e.IsBar() {
				ends[k] = s.g.d.Bars[e.Pin].Name
				continue
			}
			it := s.g.items[e.Item]
			ends[k] = s.g.d.Items[e.Item].Name + "." + it.ask.Terminals[e.Pin].Name
		}
		root[find(ends[0])] = find(ends[1])
		if s.g.wires[i].line.wire != nil {
			all = append(all, joined{s.g.d.Wires[i].Name, ends[0]})
		}
		for _, e := range ends {
			all = append(all, joined{"", e})
		}
	}
	nets := map[string]*proof.Net{}
	for _, j := range all {
		r := find(j.at)
		if nets[r] == nil {
			nets[r] = &proof.Net{}
		}
		if j.wire != "" {
			nets[r].Wires = append(nets[r].Wires, j.wire)
		}
		nets[r].Pins = append(nets[r].Pins, j.at)
	}
	var list []proof.Net
	for _, n := range nets {
		sort.Strings(n.Pins)
		sort.Strings(n.Wires)
		n.Pins = compact(n.Pins)
		list = append(list, *n)
	}
	return shown(list)
}

func compact(s []string) []string {
	var out []string
	for i, v := range s {
		if i == 0 || v != s[i-1] {
			out = append(out, v)
		}
	}
	return out
}

// The same job gives the same bytes, whatever ran before and beside it.
func TestSameBytesAgain(t *testing.T) {
	file := "../../examples/tern-point/jobs/tern-point-shuttle-3.yaml"
	o := areaOn(frame.A4())
	var first [][]byte
	for round := range 2 {
		sheets, err := Sheets(load(t, file), o)
		if err != nil {
			t.Fatal(err)
		}
		for i, s := range sheets {
			b := paint(t, s, o)
			if round == 0 {
				first = append(first, b)
			} else if !bytes.Equal(first[i], b) {
				t.Errorf("sheet %d differs at the second time", s.Number)
			}
		}
	}
}
