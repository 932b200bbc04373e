package proof_test

import (
	"bytes"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"github.com/lugwright/lugwright/render/ink"
	"github.com/lugwright/lugwright/render/proof"
	"github.com/lugwright/lugwright/render/svg"
)

// drawing is a small sheet under construction: two fuses side by side and what a test adds.
type drawing struct {
	page *svg.Page
	file *bytes.Buffer
}

func newDrawing() *drawing {
	d := &drawing{file: &bytes.Buffer{}}
	d.page = svg.New(d.file, 100, 80, svg.Options{})
	return d
}

func (d *drawing) group(class, name string, draw func()) {
	d.page.Open(ink.Group{Class: class, Name: name})
	draw()
	d.page.Close()
}

// fuse is a symbol of two pins, 10 mm apart, upright.
func (d *drawing) fuse(name string, x, y float64) {
	d.group("part", name, func() {
		d.page.Path(ink.Rect{Min: ink.At(x-1.5, y+1.25), Max: ink.At(x+1.5, y+8.75)}.Path(), ink.Pen(ink.Medium))
		d.page.Path(ink.Lines(ink.At(x, y), ink.At(x, y+10)), ink.Pen(ink.Medium))
		for i, at := range []ink.Point{ink.At(x, y), ink.At(x, y+10)} {
			d.group("pin", []string{"in", "out"}[i], func() { d.page.Path(ink.Lines(at, at), ink.Style{}) })
		}
	})
}

func (d *drawing) wire(name string, points ...ink.Point) {
	d.group("wire", name, func() { d.page.Path(ink.Lines(points...), ink.Pen(0.5)) })
}

func (d *drawing) label(name, text string, x, y, capital float64) {
	d.group("label", name, func() { d.page.Text(ink.Text{At: ink.At(x, y), String: text, Capital: capital}) })
}

func (d *drawing) dot(x, y float64) {
	d.group("joints", "", func() { d.page.Path(ink.Circle(ink.At(x, y), 0.8), ink.Area(ink.Color{})) })
}

func (d *drawing) rail(name string, x0, x1, y float64) {
	d.group("rail", name, func() { d.page.Path(ink.Lines(ink.At(x0, y), ink.At(x1, y)), ink.Pen(1)) })
}

func (d *drawing) read(t *testing.T) *proof.Drawing {
	t.Helper()
	if err := d.page.Finish(); err != nil {
		t.Fatal(err)
	}
	got, err := proof.Read(d.file.Bytes())
	if err != nil {
		t.Fatal(err)
	}
	return got
}

// sound is a sheet without fault: a rail, two fuses, three wires, of which two meet in a dot.
func sound() *drawing {
	d := newDrawing()
	d.rail("G1.+", 10, 90, 10)
	d.fuse("F1", 20, 30)
	d.fuse("F2", 60, 30)
	d.wire("W1", ink.At(20, 10), ink.At(20, 30))
	d.dot(20, 10)
	d.wire("W2", ink.At(20, 40), ink.At(20, 60), ink.At(60, 60), ink.At(60, 40))
	d.wire("W3", ink.At(60, 50), ink.At(80, 50), ink.At(80, 10))
	d.dot(60, 50)
	d.dot(80, 10)
	d.label("W1", "W1 RD", 21, 20, 2.5)
	d.label("W2", "W2 BK", 30, 59, 2.5)
	d.label("W3", "W3 GN", 66, 49, 2.5)
	return d
}

func TestNetsComeFromGeometry(t *testing.T) {
	nets, faults := sound().read(t).Nets()
	if len(faults) > 0 {
		t.Errorf("%v", faults)
	}
	var got []string
	for _, n := range nets {
		got = append(got, strings.Join(n.Pins, " ")+": "+strings.Join(n.Wires, " "))
	}
	want := []string{"F1.in F1.out F2.out G1.+: W1 W2 W3", "F2.in: "}
	// W1 joins the rail and F1.in; W2 and W3 join F1.out, F2.out and the rail: one net
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}

func TestCrossingIsNoJoint(t *testing.T) {
	d := newDrawing()
	d.fuse("F1", 20, 30)
	d.fuse("F2", 60, 30)
	d.wire("W1", ink.At(20, 30), ink.At(20, 20), ink.At(90, 20))
	d.wire("W2", ink.At(60, 30), ink.At(60, 10))
	got := d.read(t)
	nets, _ := got.Nets()
	for _, n := range nets {
		if slices.Contains(n.Wires, "W1") && slices.Contains(n.Wires, "W2") {
			t.Error("two wires that cross without a dot are taken as one")
		}
	}
	if r := got.Judge(nil); r.Soft.Crossings != 1 {
		t.Errorf("%d crossings counted", r.Soft.Crossings)
	}
}

func TestSoundSheetHasNoFault(t *testing.T) {
	r := sound().read(t).Judge([]string{"W1", "W2", "W3"})
	if len(r.Faults) > 0 {
		t.Errorf("%v", r.Faults)
	}
	want := proof.Soft{Wires: 3, Bends: 3, MostBends: 2, Fill: r.Soft.Fill, Smallest: r.Soft.Smallest}
	if diff := cmp.Diff(want, r.Soft); diff != "" {
		t.Error(diff)
	}
	if s := r.Soft.Smallest; s < 2.49 || s > 2.51 {
		t.Errorf("lettering of %v mm, want 2.5", s)
	}
}

// Each thing that must not be is found, and called by its name.
func TestFaultsAreFound(t *testing.T) {
	for _, c := range []struct {
		kind string
		add  func(d *drawing)
		want []string // wires that must be there
	}{
		{"unrouted", func(*drawing) {}, []string{"W9"}},
		{"unlabelled", func(d *drawing) { d.wire("W9", ink.At(5, 70), ink.At(15, 70)) }, []string{"W9"}},
		{"slant", func(d *drawing) { d.wire("W9", ink.At(5, 70), ink.At(15, 75)) }, nil},
		{"through-symbol", func(d *drawing) { d.wire("W9", ink.At(10, 35), ink.At(40, 35)) }, nil},
		{"overlap", func(d *drawing) { d.wire("W9", ink.At(30, 60), ink.At(50, 60)) }, nil},
		{"overlap", func(d *drawing) { d.wire("W9", ink.At(30, 10), ink.At(50, 10)) }, nil}, // along a rail
		{"no-dot", func(d *drawing) { d.wire("W9", ink.At(40, 60), ink.At(40, 75)) }, nil},
		{"no-dot", func(d *drawing) { d.wire("W9", ink.At(40, 10), ink.At(40, 25)) }, nil}, // on a rail
		{"idle-dot", func(d *drawing) { d.dot(5, 75) }, nil},
		{"over-pin", func(d *drawing) { d.wire("W9", ink.At(50, 30), ink.At(70, 30)) }, nil},
		{"text-on-text", func(d *drawing) { d.label("W9", "W9", 22, 21, 2.5) }, nil},
		{"text-on-line", func(d *drawing) { d.label("W9", "W9", 35, 61, 2.5) }, nil},
		{"text-on-line", func(d *drawing) { d.label("W9", "W9", 85, 11, 2.5) }, nil}, // on a rail
		{"text-on-symbol", func(d *drawing) { d.label("W9", "W9", 59, 36, 2.5) }, nil},
		{"text-on-enclosure", func(d *drawing) {
			d.group("enclosure", "A1", func() {
				d.page.Path(ink.Rect{Min: ink.At(2, 62), Max: ink.At(30, 78)}.Path(), ink.Pen(0.25).DashDotted())
			})
			d.label("W9", "W9", 29, 72, 2.5)
		}, nil},
		{"small", func(d *drawing) { d.label("W9", "W9", 5, 70, 2) }, nil},
		{"leader-on-text", func(d *drawing) {
			d.group("label", "W9", func() {
				d.page.Path(ink.Lines(ink.At(20, 16), ink.At(32, 22)), ink.Pen(0.25))
				d.page.Text(ink.Text{At: ink.At(33, 23), String: "W9", Capital: 2.5})
			})
		}, nil},
	} {
		d := sound()
		c.add(d)
		r := d.read(t).Judge(c.want)
		found := slices.ContainsFunc(r.Faults, func(f proof.Fault) bool { return f.Kind == c.kind })
		if !found {
			t.Errorf("%s is not found, but %v", c.kind, r.Faults)
		}
	}
}

// A wire of two pieces with a sleeve between them, and one with an edge and a tracer, are
// each one line.
func TestPiecesAreOneWire(t *testing.T) {
	d := newDrawing()
	d.fuse("F1", 20, 10)
	d.fuse("F2", 20, 60)
	d.group("wire", "W1", func() {
		d.page.Path(ink.Lines(ink.At(20, 20), ink.At(20, 40)), ink.Pen(0.76))
		d.page.Path(ink.Lines(ink.At(20, 20), ink.At(20, 40)), ink.Pen(0.5))
		d.page.Path(ink.Lines(ink.At(20, 40), ink.At(20, 60)), ink.Pen(0.5))
		d.group("sleeve", "", func() {
			d.page.Path(ink.Rect{Min: ink.At(19, 39), Max: ink.At(21, 41)}.Path(), ink.Area(ink.Color{}))
		})
	})
	d.label("W1", "W1", 22, 30, 2.5)
	got := d.read(t)
	if r := got.Judge([]string{"W1"}); len(r.Faults) > 0 || r.Soft.Bends != 0 {
		t.Errorf("%v, %d bends", r.Faults, r.Soft.Bends)
	}
	if w := got.Wires[0]; len(w.Runs) != 1 || len(w.Ends) != 2 || w.Width != 0.76 {
		t.Errorf("%+v", w)
	}
}

func TestNearForeignAndLeadersAreCounted(t *testing.T) {
	d := sound()
	d.wire("W4", ink.At(5, 70), ink.At(40, 70))
	d.wire("W5", ink.At(5, 75), ink.At(40, 75))
	d.label("W5", "W5", 10, 73.2, 2.5) // nearer to W4
	d.group("label", "W4", func() {
		d.page.Path(ink.Lines(ink.At(44, 76), ink.At(38, 70)), ink.Pen(0.25))
		d.page.Text(ink.Text{At: ink.At(45, 77), String: "W4", Capital: 2.5})
	})
	s := d.read(t).Judge(nil).Soft
	if s.NearForeign != 1 || s.Leaders != 1 {
		t.Errorf("%+v", s)
	}
}

func TestBrokenFilesAreRefused(t *testing.T) {
	for _, file := range []string{
		"<svg", `<svg viewBox="none"/>`,
		`<svg viewBox="0 0 9 9"><g class="wire"><path d="M1 Q2"/></g></svg>`,
		`<svg viewBox="0 0 9 9"><g class="wire"><path d="L1"/></g></svg>`,
		`<svg viewBox="0 0 9 9"><g class="label"><text x="a" y="0" font-size="1">x</text></g></svg>`,
	} {
		if d, err := proof.Read([]byte(file)); err == nil {
			t.Errorf("%s is read as %+v", file, d)
		}
	}
}
