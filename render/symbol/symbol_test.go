package symbol

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"github.com/lugwright/lugwright/render/ink"
)

// kinds are the symbols and terminals of an invented catalogue of parts, with ranges such
// as "1..channels" written out, as the reader of kinds hands them over.
const kinds = `
battery: - +
switch: in out in2 out2
breaker: in out
bus-bar: 1 2 3 4
buzzer: + -
charger: ac + - lock-a lock-b
charger: L N PE + - lock-a lock-b
connector: a1 a2 b1 b2
contactor: in out coil+ coil-
controller: B+ B- U V W run key pedal forward reverse brake lockout coil+ coil- t+ ts t-
controller: B+ B- M- F1 F2 run key interlock pedal forward reverse coil t+ ts t-
controller: B+ B- M- key t+ ts
diode: a k
switch: 1 2 3 4 5 6
switch: in forward reverse
fan: + -
frame: f
fuse: in out
fuse-block: + - 1 2 3 4 5 6 7 8 n
fuse-block: + - 1 2 3 4 5 6 7 8 9 10 11 12 n
horn: + -
inlet: ac
inlet: L N PE
inlet: + - lock
key-switch: in out
lamp: + -
lamp-led: + -
meter: + -
meter: display
meter: v g
motor: U V W
motor: A1 A2 F1 F2
motor: A1 A2 S1 S2
battery: + - display radio
switch: in out t+ ts t-
socket: + -
push-button: in out
radio: data
converter: in+ in- remote out+ out-
converter: in+ in- out memory enable
relay: 30 85 86 87 87a
relay: 30 85 86 87
resistor: 1 2
connector: a+ a- b+ b-
loudspeaker: + - memory
splice: s
splice: 1 2
splice: 1 2 3
box: + - ignition
box: + - enable out
capped: end
reference: to
stud: 1
potentiometer: t+ ts t-
capacitor: + -
pedal: in out t+ ts t-
`

// asks returns the table as requests, each also with labels, wishes and words inside.
func asks() map[string]Ask {
	all := map[string]Ask{}
	for _, line := range strings.Split(strings.TrimSpace(kinds), "\n") {
		symbol, names, _ := strings.Cut(line, ": ")
		bare := Ask{Terminals: named(strings.Fields(names)...)}
		full := Ask{Lines: []string{"U12", "motor controller", "300 A"}}
		for i, t := range bare.Terminals {
			t.Label = t.Name
			t.Side = []Side{Left, Right, AnySide}[i%3]
			if isPositive(t.Name) {
				t.Side = Top
			} else if isNegative(t.Name) {
				t.Side = Bottom
			}
			full.Terminals = append(full.Terminals, t)
		}
		closed := bare
		closed.Closed, closed.Electronic, closed.Operator = true, true, Turn
		all[line] = bare
		all[line+" (with words)"] = full
		all[line+" (closed)"] = closed
		_ = symbol
	}
	return all
}

// requests returns the name and the request of every line, in a fixed order.
func requests() (lines []string, all map[string]Ask) {
	all = asks()
	for line := range all {
		lines = append(lines, line)
	}
	slices.Sort(lines)
	return lines, all
}

func nameIn(line string) string { name, _, _ := strings.Cut(line, ": "); return name }

func placements() []Placement {
	var all []Placement
	for turns := range 4 {
		for _, mirror := range []bool{false, true} {
			all = append(all, Placement{At: Cell{40, 40}, Turns: turns, Mirror: mirror})
		}
	}
	return all
}

func mustBuild(t testing.TB, name string, ask Ask) Shape {
	t.Helper()
	s, err := Build(name, ask)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func TestEveryKindBuildsTruthfully(t *testing.T) {
	lines, all := requests()
	for _, line := range lines {
		s := mustBuild(t, nameIn(line), all[line])
		for _, at := range placements() {
			for _, fault := range faults(s, all[line], at) {
				t.Errorf("%s, %+v: %s", line, at, fault)
			}
			if t.Failed() {
				break // the other placements would say the same
			}
		}
	}
}

func TestAnyTerminalsBuildTruthfully(t *testing.T) {
	words := rapid.SampledFrom([]string{"", "+", "IN−", "coil driver", "GNYE 16", "a label that is far too long to print beside a pin", "工", "\x00"})
	rapid.Check(t, func(t *rapid.T) {
		name := rapid.SampledFrom(Names()).Draw(t, "symbol")
		var ask Ask
		for i := range rapid.IntRange(0, 40).Draw(t, "pins") {
			ask.Terminals = append(ask.Terminals, Terminal{
				Name:  rapid.SampledFrom([]string{"in", "out", "coil", "a", "b", "t+", "x"}).Draw(t, "name") + fmt.Sprint(i),
				Label: words.Draw(t, "label"),
				Side:  Side(rapid.IntRange(0, 5).Draw(t, "side")),
			})
		}
		ask.Lines = rapid.SliceOfN(words, 0, 4).Draw(t, "lines")
		ask.Closed, ask.Electronic = rapid.Bool().Draw(t, "closed"), rapid.Bool().Draw(t, "electronic")
		ask.Operator, ask.Sign = Operator(rapid.IntRange(0, 9).Draw(t, "operator")), words.Draw(t, "sign")
		s, err := Build(name, ask)
		if err != nil {
			t.Fatal(err)
		}
		for _, fault := range faults(s, ask, rapid.SampledFrom(placements()).Draw(t, "at")) {
			t.Error(fault)
		}
	})
}

// faults judges a shape by what it really draws.
func faults(s Shape, ask Ask, at Placement) []string {
	var list []string
	add := func(format string, args ...any) { list = append(list, fmt.Sprintf(format, args...)) }
	placed := s.Place(at)
	page := ink.NewRecorder(400, 400)
	s.Draw(page, at, 1) // a unit is a millimetre, line widths are too wide by 2.5
	again := ink.NewRecorder(400, 400)
	placed.Draw(again, Placement{}, 1)
	if diff := cmp.Diff(near(page), near(again)); diff != "" {
		add("the placed shape draws something else:\n%s", diff)
	}

	if len(s.Pins) != len(ask.Terminals) {
		add("%d pins for %d terminals", len(s.Pins), len(ask.Terminals))
	}
	seen := map[Cell]bool{}
	for i, pin := range placed.Pins {
		if pin.Terminal != ask.Terminals[i].Name {
			add("pin %d is %q, want %q", i, pin.Terminal, ask.Terminals[i].Name)
		}
		if seen[pin.At] {
			add("two pins at %v", pin.At)
		}
		seen[pin.At] = true
		if !inkEndsAt(page, pin.At) {
			add("nothing is drawn to pin %q at %v", pin.Terminal, pin.At)
		}
		if len(s.Body) > 0 && !besideBody(placed, pin) {
			add("pin %q at %v is not half a unit outside the body on side %d", pin.Terminal, pin.At, pin.Side)
		}
	}
	for _, b := range placed.Body {
		for _, v := range []float64{b.X0, b.Y0, b.X1, b.Y1} {
			if v == math.Round(v) {
				add("body %v has an edge on a whole unit", b)
			}
		}
		if b.X0 >= b.X1 || b.Y0 >= b.Y1 {
			add("body %v is empty", b)
		}
	}
	for _, m := range page.Marks {
		if m.Text != nil {
			continue
		}
		for _, run := range m.Path.Flatten(0.01) {
			for _, p := range run {
				if !covered(placed, p) {
					add("ink at (%.2f, %.2f) lies outside the body", p.X, p.Y)
				}
			}
		}
	}
	for i, w := range placed.Words {
		if !inAny(placed.Body, w) {
			add("words %v stick out of the body", w)
		}
		for _, m := range page.Marks {
			if m.Text == nil && crosses(m.Path, w) {
				add("words %v are crossed by a line", w)
			}
		}
		for _, other := range placed.Words[:i] {
			if w.X0 < other.X1 && other.X0 < w.X1 && w.Y0 < other.Y1 && other.Y0 < w.Y1 {
				add("words %v and %v collide", w, other)
			}
		}
	}
	if len(placed.Notes) < 2 {
		add("only %d places for notes", len(placed.Notes))
	}
	for _, spot := range placed.Notes {
		for n := 1; n <= 3; n++ {
			for i := range n {
				list = append(list, noteFaults(placed, spot, i, n)...)
			}
		}
	}
	return list
}

// near rounds what was drawn, so that two orders of the same sums agree.
func near(r *ink.Recorder) []ink.Mark {
	round := func(p ink.Point) ink.Point {
		return ink.At(math.Round(p.X*1e6)/1e6+0, math.Round(p.Y*1e6)/1e6+0)
	}
	var marks []ink.Mark
	for _, m := range r.Marks {
		m.Path = m.Path.Map(round)
		if m.Text != nil {
			text := *m.Text
			text.At = round(text.At)
			m.Text = &text
		}
		marks = append(marks, m)
	}
	return marks
}

// inkEndsAt reports whether a path begins or ends at a cell, or a dot covers it.
func inkEndsAt(page *ink.Recorder, c Cell) bool {
	x, y := float64(c.X), float64(c.Y)
	for _, m := range page.Marks {
		if m.Text != nil {
			continue
		}
		if box, _ := m.Path.Bounds(); m.Style.Fill != nil && math.Abs((box.Min.X+box.Max.X)/2-x)+math.Abs((box.Min.Y+box.Max.Y)/2-y) < 0.01 {
			return true
		}
		for _, run := range m.Path.Flatten(0.01) {
			for _, p := range []ink.Point{run[0], run[len(run)-1]} {
				if math.Hypot(p.X-x, p.Y-y) < 1e-9 {
					return true
				}
			}
		}
	}
	return false
}

// besideBody reports whether a body begins half a unit inwards of a pin, and none holds it.
func besideBody(s Shape, pin Pin) bool {
	x, y := float64(pin.At.X), float64(pin.At.Y)
	inwards := map[Side]ink.Point{Left: {X: 1}, Right: {X: -1}, Top: {Y: 1}, Bottom: {Y: -1}}[pin.Side]
	begins := false
	for _, b := range s.Body {
		if x > b.X0 && x < b.X1 && y > b.Y0 && y < b.Y1 {
			return false
		}
		ix, iy := x+0.51*inwards.X, y+0.51*inwards.Y
		if ix > b.X0 && ix < b.X1 && iy > b.Y0 && iy < b.Y1 {
			begins = true
		}
	}
	return begins
}

// covered reports whether a point of ink lies in a body or on the stroke to a pin.
func covered(s Shape, p ink.Point) bool {
	const slack = 1e-6
	for _, b := range s.Body {
		if p.X > b.X0-slack && p.X < b.X1+slack && p.Y > b.Y0-slack && p.Y < b.Y1+slack {
			return true
		}
	}
	for _, pin := range s.Pins {
		x, y := float64(pin.At.X), float64(pin.At.Y)
		if pin.Side == AnySide && math.Hypot(p.X-x, p.Y-y) < dotRadius+0.01 {
			return true
		}
		along, across := math.Abs(p.Y-y), math.Abs(p.X-x)
		if pin.Side == Left || pin.Side == Right {
			along, across = across, along
		}
		if across < slack && along < 0.5+slack {
			return true
		}
	}
	return false
}

func inAny(bodies []Box, w Box) bool {
	const slack = 1e-9
	for _, b := range bodies {
		if w.X0 >= b.X0-slack && w.X1 <= b.X1+slack && w.Y0 >= b.Y0-slack && w.Y1 <= b.Y1+slack {
			return true
		}
	}
	return false
}

// crosses reports whether a path comes into a box, looking every tenth of a unit.
func crosses(p ink.Path, w Box) bool {
	for _, run := range p.Flatten(0.01) {
		for i := 1; i < len(run); i++ {
			a, b := run[i-1], run[i]
			n := int(math.Hypot(b.X-a.X, b.Y-a.Y)*10) + 1
			for k := range n + 1 {
				t := float64(k) / float64(n)
				x, y := a.X+(b.X-a.X)*t, a.Y+(b.Y-a.Y)*t
				if x > w.X0 && x < w.X1 && y > w.Y0 && y < w.Y1 {
					return true
				}
			}
		}
	}
	return false
}

// noteFaults puts a line of five characters in a spot and sees whether it meets the body
// or the wire of a pin.
func noteFaults(s Shape, spot Spot, i, n int) []string {
	at := spot.Baseline(i, n)
	b := wordBox(ink.Text{At: at, String: "W37 A", Capital: 1, Anchor: spot.Anchor})
	var list []string
	for _, body := range s.Body {
		if b.X0 < body.X1 && body.X0 < b.X1 && b.Y0 < body.Y1 && body.Y0 < b.Y1 {
			list = append(list, fmt.Sprintf("line %d of %d at note %+v meets the body %v", i, n, spot, body))
		}
	}
	for _, pin := range s.Pins {
		// a wire goes at least three units straight out
		x, y := float64(pin.At.X), float64(pin.At.Y)
		wire := map[Side]Box{Left: {x - 3, y, x, y}, Right: {x, y, x + 3, y}, Top: {x, y - 3, x, y}, Bottom: {x, y, x, y + 3}}[pin.Side]
		if pin.Side != AnySide && b.X0 < wire.X1+0.1 && wire.X0-0.1 < b.X1 && b.Y0 < wire.Y1+0.1 && wire.Y0-0.1 < b.Y1 {
			list = append(list, fmt.Sprintf("line %d of %d at note %+v meets the wire of pin %q", i, n, spot, pin.Terminal))
		}
	}
	return list
}
