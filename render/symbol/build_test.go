package symbol

import (
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"github.com/lugwright/lugwright/render/ink"
)

func TestBuildRefuses(t *testing.T) {
	many := make([]Terminal, mostPins+1)
	for i := range many {
		many[i].Name = strings.Repeat("x", i+1)
	}
	for _, c := range []struct {
		name string
		ask  Ask
		want string
	}{
		{"solenoid", Ask{}, `no symbol "solenoid"; there are battery, fuse,`},
		{"fuse", Ask{Terminals: named("in", "")}, "terminal 2 of a fuse has no name"},
		{"fuse", Ask{Terminals: named("in", "in")}, `terminal "in" of a fuse is named twice`},
		{"box", Ask{Terminals: many}, "more than 200"},
	} {
		if _, err := Build(c.name, c.ask); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("Build(%q): %v, want %q", c.name, err, c.want)
		}
	}
}

func TestNames(t *testing.T) {
	names := Names()
	for i, n := range names {
		if slices.Contains(names[:i], n) {
			t.Errorf("symbol %q is listed twice", n)
		}
		if !Known(n) || len(entries()[i].examples) == 0 {
			t.Errorf("symbol %q is not known or has no example", n)
		}
	}
	if Known("solenoid") {
		t.Error("an unknown symbol is known")
	}
	if iec, ieee := Standard("fuse"); iec != "07-21-01" || ieee != "9.1" {
		t.Errorf("fuse comes from %q, %q", iec, ieee)
	}
	s := mustBuild(t, "", Ask{Terminals: named("a")})
	if s.Symbol != "box" {
		t.Errorf("no name gives %q", s.Symbol)
	}
}

// The form of a symbol follows from what its terminals are called.
func TestPinsStandWhereTheirNamesSay(t *testing.T) {
	top, bottom, left, right := Top, Bottom, Left, Right
	for _, c := range []struct {
		symbol, names string
		want          []Pin
	}{
		{"fuse", "in out", []Pin{{"in", Cell{0, 0}, top}, {"out", Cell{0, 4}, bottom}}},
		{"battery", "- +", []Pin{{"-", Cell{0, 0}, top}, {"+", Cell{0, 4}, bottom}}},
		{"switch", "in out", []Pin{{"in", Cell{0, 0}, top}, {"out", Cell{0, 4}, bottom}}},
		{"switch", "in in2 out out2", []Pin{{"in", Cell{0, 0}, top}, {"in2", Cell{4, 0}, top}, {"out", Cell{0, 4}, bottom}, {"out2", Cell{4, 4}, bottom}}},
		{"switch", "forward in reverse", []Pin{{"forward", Cell{-1, 4}, bottom}, {"in", Cell{0, 0}, top}, {"reverse", Cell{1, 4}, bottom}}},
		{"switch", "in low mid high", []Pin{{"in", Cell{1, 0}, top}, {"low", Cell{0, 4}, bottom}, {"mid", Cell{2, 4}, bottom}, {"high", Cell{4, 4}, bottom}}},
		{"switch", "in out t+ ts t-", []Pin{{"in", Cell{0, 0}, top}, {"out", Cell{0, 4}, bottom}, {"t+", Cell{6, 0}, top}, {"ts", Cell{4, 4}, bottom}, {"t-", Cell{6, 4}, bottom}}},
		{"contactor", "in out coil+ coil-", []Pin{{"in", Cell{0, 0}, top}, {"out", Cell{0, 4}, bottom}, {"coil+", Cell{-6, 0}, top}, {"coil-", Cell{-6, 4}, bottom}}},
		{"contactor", "A1 A2 1 2", []Pin{{"A1", Cell{-6, 0}, top}, {"A2", Cell{-6, 4}, bottom}, {"1", Cell{0, 0}, top}, {"2", Cell{0, 4}, bottom}}},
		{"contactor", "1 2 3 4", []Pin{{"1", Cell{0, 0}, top}, {"2", Cell{0, 4}, bottom}, {"3", Cell{-6, 0}, top}, {"4", Cell{-6, 4}, bottom}}},
		{"relay", "30 85 86 87 87a", []Pin{{"30", Cell{0, 0}, top}, {"85", Cell{-6, 4}, bottom}, {"86", Cell{-6, 0}, top}, {"87", Cell{0, 4}, bottom}, {"87a", Cell{2, 4}, bottom}}},
		{"motor", "S1 S2 A1 A2", []Pin{{"S1", Cell{0, 4}, left}, {"S2", Cell{0, 6}, left}, {"A1", Cell{0, 0}, left}, {"A2", Cell{0, 2}, left}}},
		{"motor", "1 2 3 4", []Pin{{"1", Cell{0, 0}, left}, {"2", Cell{0, 2}, left}, {"3", Cell{0, 4}, left}, {"4", Cell{0, 6}, left}}},
		{"connector", "a+ a- b+ b-", []Pin{{"a+", Cell{0, 0}, top}, {"a-", Cell{2, 0}, top}, {"b+", Cell{0, 4}, bottom}, {"b-", Cell{2, 4}, bottom}}},
		{"potentiometer", "t+ ts t-", []Pin{{"t+", Cell{0, 0}, top}, {"ts", Cell{2, 2}, right}, {"t-", Cell{0, 4}, bottom}}},
	} {
		s := mustBuild(t, c.symbol, Ask{Terminals: named(strings.Fields(c.names)...)})
		if diff := cmp.Diff(c.want, s.Pins); diff != "" {
			t.Errorf("%s %s:\n%s", c.symbol, c.names, diff)
		}
		if s.Marked {
			t.Errorf("%s %s is a box", c.symbol, c.names)
		}
	}
}

func TestBoxPinsKeepTheirSideAndOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var ask Ask
		for i := range rapid.IntRange(1, 40).Draw(t, "pins") {
			side := Side(rapid.IntRange(1, 4).Draw(t, "side"))
			ask.Terminals = append(ask.Terminals, Terminal{strings.Repeat("i", i+1), rapid.StringMatching(`[A-Z]{0,9}`).Draw(t, "label"), side})
		}
		s, err := Build("controller", ask)
		if err != nil {
			t.Fatal(err)
		}
		along := map[Side]int{}
		for i, pin := range s.Pins {
			if pin.Side != ask.Terminals[i].Side {
				t.Fatalf("pin %d is on side %d, not %d", i, pin.Side, ask.Terminals[i].Side)
			}
			at := pin.At.X
			if pin.Side == Left || pin.Side == Right {
				at = pin.At.Y
			}
			if last, some := along[pin.Side]; some && at < last+2 {
				t.Fatalf("pin %d stands at %d, the one before at %d", i, at, last)
			}
			along[pin.Side] = at
		}
	})
}

// Operated contacts look different from resting ones, and so do all operators.
func TestStatesAndOperatorsAreSeen(t *testing.T) {
	drawn := func(ask Ask) []ink.Mark {
		page := ink.NewRecorder(0, 0)
		mustBuild(t, "switch", ask).Draw(page, Placement{}, 1)
		return page.Marks
	}
	two := named("in", "out")
	for _, terminals := range [][]Terminal{two, named("in", "out", "in2", "out2"), named("in", "a", "b"), named("in", "out", "t+", "ts", "t-")} {
		if cmp.Equal(drawn(Ask{Terminals: terminals}), drawn(Ask{Terminals: terminals, Closed: true})) {
			t.Errorf("%v looks the same open and closed", terminals)
		}
	}
	for a := Hand; a <= Magnet; a++ {
		for b := a + 1; b <= Magnet; b++ {
			if cmp.Equal(drawn(Ask{Terminals: two, Operator: a}), drawn(Ask{Terminals: two, Operator: b})) {
				t.Errorf("operators %d and %d look the same", a, b)
			}
		}
	}
}

func TestOperatorOf(t *testing.T) {
	for control, want := range map[string]Operator{"key": Key, "button": Push, "brake": Pedal, "pedal": Pedal, "direction": Turn, "plug": Magnet, "switch": AnyOperator, "tow-run": AnyOperator, "": AnyOperator} {
		if got := OperatorOf(control); got != want {
			t.Errorf("OperatorOf(%q) = %d, want %d", control, got, want)
		}
	}
}

func TestPolarityFollowsNames(t *testing.T) {
	for _, c := range []struct {
		names string
		want  bool
	}{
		{"+ -", false}, {"- +", true}, {"B+ B-", false}, {"neg pos", true}, {"a k", false}, {"k a", true},
		{"anode cathode", false}, {"cathode anode", true}, {"1 2", false}, {"x +", true}, {"- x", true}, {"in out", false},
	} {
		if got := reversed(Ask{Terminals: named(strings.Fields(c.names)...)}); got != c.want {
			t.Errorf("%s: reversed %v", c.names, got)
		}
	}
}

func TestPlacementsCompose(t *testing.T) {
	draw := func(t *rapid.T, label string) Placement {
		return Placement{Cell{rapid.IntRange(-9, 9).Draw(t, label+"x"), rapid.IntRange(-9, 9).Draw(t, label+"y")},
			rapid.IntRange(-5, 5).Draw(t, label+"turns"), rapid.Bool().Draw(t, label+"mirror")}
	}
	rapid.Check(t, func(t *rapid.T) {
		first, then := draw(t, "first"), draw(t, "then")
		c := Cell{rapid.IntRange(-9, 9).Draw(t, "x"), rapid.IntRange(-9, 9).Draw(t, "y")}
		side := Side(rapid.IntRange(0, 4).Draw(t, "side"))
		both := then.After(first)
		if got, want := both.Cell(c), then.Cell(first.Cell(c)); got != want {
			t.Fatalf("%+v after %+v takes %v to %v, want %v", then, first, c, got, want)
		}
		if got, want := both.Side(side), then.Side(first.Side(side)); got != want {
			t.Fatalf("side %d becomes %d, want %d", side, got, want)
		}
		p := first.Point(ink.At(float64(c.X), float64(c.Y)))
		if q := first.Cell(c); p != ink.At(float64(q.X), float64(q.Y)) {
			t.Fatalf("point goes to %v, cell to %v", p, q)
		}
		// A side turns like a step towards it.
		step := map[Side]Cell{AnySide: {}, Left: {-1, 0}, Right: {1, 0}, Top: {0, -1}, Bottom: {0, 1}}
		origin := first.Cell(Cell{})
		moved := first.Cell(step[side])
		if want := step[first.Side(side)]; moved.X-origin.X != want.X || moved.Y-origin.Y != want.Y {
			t.Fatalf("side %d turns otherwise than a step", side)
		}
	})
}

// Text never stands on its head, and stays in the box when the box is turned.
func TestTurnedBoxReadsFromBelow(t *testing.T) {
	s := mustBuild(t, "box", Ask{Lines: []string{"A1"}, Terminals: []Terminal{{"a", "LONGER", Left}, {"b", "B", Right}}})
	for _, at := range placements() {
		page := ink.NewRecorder(400, 400)
		s.Draw(page, at, 1)
		for _, m := range page.Marks {
			if m.Text != nil && m.Text.Turned != (at.Turns%2 == 1) {
				t.Errorf("%+v: %q turned %v", at, m.Text.String, m.Text.Turned)
			}
		}
	}
}
