package catalog

import (
	"bytes"
	"io/fs"
	"regexp"
	"slices"
	"strings"
	"sync"
	"testing"

	"github.com/google/go-cmp/cmp"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/kind"
	"github.com/lugwright/lugwright/wiring/source"
)

// neededValues are what the test gives for ratings that a part must give.
var neededValues = map[string]string{
	"cells": "16", "rating": "10 A", "ohms": "470 ohm", "end": "58.4 V", "profile": "LFP",
}

// build makes a part of a shipped kind with all that it needs.
func build(t *testing.T, name string) (*wiring.Harness, *wiring.Part) {
	t.Helper()
	d, ok := Kind(name)
	if !ok {
		t.Fatalf("no kind %s", name)
	}
	var given kind.Given
	for _, r := range d.Ratings {
		value, known := neededValues[r.Name]
		if !r.Needed {
			continue
		}
		if !known {
			t.Fatalf("%s needs %s, and this test does not know what to give", name, r.Name)
		}
		root, _ := source.Parse("part", []byte(r.Name+": "+value+"\n"))
		given.Set(root.Entries[0].Key, root.Entries[0].Value)
	}
	h, p := &wiring.Harness{}, &wiring.Part{Designation: d.Letter + "1"}
	for _, f := range d.Build(h, p, given) {
		t.Errorf("%s: %s:%d:%d %s", name, f.At.File, f.At.Line, f.At.Col, f.Message)
	}
	return h, p
}

// Every file reads without a word, and the kind says what a sheet prints of it.
func TestKindsRead(t *testing.T) {
	entries, err := fs.ReadDir(files, folder)
	if err != nil || len(entries) != len(Names()) {
		t.Fatalf("%d files, %d kinds, %v", len(entries), len(Names()), err)
	}
	set := kind.NewSet(nil)
	for _, name := range Names() {
		file, text, ok := Text(name)
		if !ok {
			t.Fatalf("no file of %s", name)
		}
		root, findings := source.Parse(file, text)
		_, more := set.AddFile(root)
		for _, f := range append(findings, more...) {
			t.Errorf("%s:%d:%d %s", f.At.File, f.At.Line, f.At.Col, f.Message)
		}
	}
	for _, f := range set.Findings() {
		t.Errorf("%s:%d:%d %s %s", f.At.File, f.At.Line, f.At.Col, f.Message, f.Advice)
	}
	for _, d := range Kinds() {
		for what, text := range map[string]string{"title": d.Title, "basis": d.Basis, "symbol": d.Symbol, "letter": d.Letter} {
			if text == "" {
				t.Errorf("%s has no %s", d.Name, what)
			}
		}
	}
}

// Every kind becomes a part; each of its terminals is joined to something inside, unless it
// carries data only or stands for itself.
func TestKindsBuild(t *testing.T) {
	for _, name := range Names() {
		t.Run(name, func(t *testing.T) {
			h, p := build(t, name)
			d, _ := Kind(name)
			if len(p.Elements) == 0 && name != "splice" && name != "radio-adapter" {
				t.Error("nothing is inside")
			}
			if got, want := p.Kind, &d.Kind; got != want {
				t.Error("the part has another kind")
			}
			used := map[wiring.NodeID]bool{}
			for _, e := range p.Elements {
				for _, n := range nodesOf(e) {
					used[n] = true
				}
			}
			for id, n := range h.Nodes {
				if n.Part != nil && !used[wiring.NodeID(id)] && name != "splice" {
					t.Errorf("%s is joined to nothing inside", n)
				}
			}
			for _, term := range p.Terminals {
				if l := term.Lead; l != nil && (!l.Colour.Known() || !l.Size.Known() || !l.Length.Known()) {
					t.Errorf("the lead %s does not say its colour, size and length", term.Name)
				}
			}
		})
	}
}

// What a shop finds here, by what it is for. The list is ours: what carts, kits and
// accessories are made of.
func TestKindsThatShip(t *testing.T) {
	want := map[string][]string{
		"packs and batteries": {"pack-lfp", "pack-lfp-port", "pack-lfp-precharge", "battery-lead-acid", "battery-6v", "battery-8v", "battery-12v", "battery-auxiliary", "battery-switch", "service-disconnect", "shunt"},
		"main contactors":     {"solenoid", "solenoid-36v", "solenoid-12v", "contactor-economiser", "contactor-auxiliary"},
		"drives": {"controller-separately-excited", "controller-series", "controller-ac", "controller-ac-12v",
			"motor-separately-excited", "motor-series", "motor-ac", "direction-drum", "brake-electric", "computer-onboard"},
		"12 V":         {"reducer", "reducer-isolated", "reducer-remote", "reducer-always-on", "fuse-block"},
		"charging":     {"charger-onboard", "charger-plain", "inlet-ac", "inlet-ac-interlock", "inlet-dc", "inlet-dc-reed", "inlet-dc-plain", "interlock-lead", "relay-lockout"},
		"fuses":        {"fuse-blade", "fuse-sf30", "fuse-sf51", "fuse-class-t", "fuse-10x38", "fuse-single-bolt", "breaker"},
		"switches":     {"key-switch", "tow-switch", "direction-switch", "pedal", "pedal-hall", "throttle", "rocker", "switch-two-way", "push-button", "brake-switch", "seat-switch", "turn-switch", "hazard-switch"},
		"accessories":  {"lamp", "lamp-led", "light-bar", "horn", "usb-outlet", "power-socket", "sound-bar", "fan", "tracker", "buzzer", "flasher", "flasher-load", "meter", "meter-voltage", "voltmeter", "radio-adapter"},
		"small pieces": {"relay", "diode", "diode-inline", "resistor", "bus-bar", "splice", "connector", "frame-point"},
	}
	var listed []string
	for what, names := range want {
		for _, name := range names {
			if _, ok := Kind(name); !ok {
				t.Errorf("%s: no %s", what, name)
			}
		}
		listed = append(listed, names...)
	}
	slices.Sort(listed)
	if diff := cmp.Diff(listed, Names()); diff != "" {
		t.Errorf("the list and the catalogue differ (-list +catalogue)\n%s", diff)
	}
}

// Editors take YAML more strictly than our reader: a bare - inside brackets, or as a key,
// is an error there.
func TestKindsAreStrictYAML(t *testing.T) {
	bare := regexp.MustCompile(`[\[,]\s*-\s*[\],]|^\s*-:|\t`)
	for _, name := range Names() {
		_, text, _ := Text(name)
		for i, line := range bytes.Split(text, []byte("\n")) {
			if bare.Match(line) {
				t.Errorf("%s:%d: %s", name, i+1, line)
			}
		}
		if !bytes.HasSuffix(text, []byte("\n")) || bytes.Contains(text, []byte("\r")) {
			t.Errorf("%s: line ends", name)
		}
	}
}

// Controls that states throw have one name and one position at rest in all kinds.
func TestControls(t *testing.T) {
	standard := map[string][]string{ // the names and positions that the built-in states use
		"pack": {"on", "off"}, "tow-run": {"run", "tow"}, "key": {"off", "on"},
		"direction": {"neutral", "forward", "reverse"}, "pedal": {"up", "down"}, "brake": {"up", "down"},
		"plug": {"out", "in"}, "switch": {"off", "on"}, "button": {"up", "down"},
		"breaker": {"closed", "open"}, "mated": {"mated", "apart"},
	}
	positions := map[string][]string{}
	for _, name := range Names() {
		_, p := build(t, name)
		for _, c := range p.Controls {
			positions[c.Name] = append(positions[c.Name], c.Positions...)
			want, known := standard[c.Name]
			if known && (len(c.Positions) < len(want) || cmp.Diff(want, c.Positions[:len(want)]) != "") {
				t.Errorf("%s: control %s is %v, and begins with %v elsewhere", name, c.Name, c.Positions, want)
			}
		}
	}
	for name := range standard {
		if positions[name] == nil {
			t.Errorf("no kind has the control %s", name)
		}
	}

	file, text := States()
	root, findings := source.Parse(file, text)
	if root == nil || len(findings) > 0 {
		t.Fatalf("states: %v", findings)
	}
	for _, state := range root.Get("states").Entries {
		for _, e := range state.Value.Entries {
			if slices.Contains([]string{"like", "after", "expect", "soc"}, e.Key.Text) {
				continue
			}
			if !slices.Contains(positions[e.Key.Text], e.Value.Text) {
				t.Errorf("state %s: no kind has %s: %s", state.Key.Text, e.Key.Text, e.Value.Text)
			}
		}
	}
}

// The motors, and nothing else, move the cart.
func TestTraction(t *testing.T) {
	for _, d := range Kinds() {
		if d.Traction != strings.HasPrefix(d.Name, "motor-") {
			t.Errorf("%s: traction %v", d.Name, d.Traction)
		}
	}
}

func TestTexts(t *testing.T) {
	if _, _, ok := Text("nothing"); ok {
		t.Error("the file of a kind that does not exist")
	}
	if _, _, ok := Text("../states"); ok {
		t.Error("a file that is no kind")
	}
	if d, ok := Kind("Fuse-Blade"); !ok || d.Name != "fuse-blade" {
		t.Error("kinds are found without regard to case")
	}
	var f diag.Files
	AddTo(&f)
	if n := len(f.Names()); n != len(Names())+len(Layers(""))+1 {
		t.Errorf("%d files to quote, %d kinds and %d layers", n, len(Names()), len(Layers("")))
	}
	d, _ := Kind("reducer")
	if line, ok := f.Line(d.At.File, d.At.Line); !ok || line != "kind: reducer" {
		t.Errorf("the line of the reducer is %q", line)
	}
}

// Kinds may be read by many at once.
func TestConcurrentUse(t *testing.T) {
	var all sync.WaitGroup
	for range 8 {
		all.Go(func() {
			for _, d := range Kinds() {
				d.Build(&wiring.Harness{}, &wiring.Part{Designation: "X1"}, kind.Given{})
			}
		})
	}
	all.Wait()
}

func nodesOf(e wiring.Element) []wiring.NodeID {
	switch e := e.(type) {
	case *wiring.Resistor:
		return []wiring.NodeID{e.A, e.B}
	case *wiring.Link:
		return e.Join
	case *wiring.Fuse:
		return []wiring.NodeID{e.A, e.B}
	case *wiring.Switch:
		var all []wiring.NodeID
		for _, groups := range e.Closes {
			for _, group := range groups {
				all = append(all, group...)
			}
		}
		return all
	case *wiring.Coil:
		return []wiring.NodeID{e.A, e.B}
	case *wiring.Contact:
		return []wiring.NodeID{e.A, e.B}
	case *wiring.Diode:
		return []wiring.NodeID{e.A, e.B}
	case *wiring.Capacitor:
		return []wiring.NodeID{e.A, e.B}
	case *wiring.Source:
		return []wiring.NodeID{e.A, e.B}
	case *wiring.Mains:
		return []wiring.NodeID{e.L, e.N}
	case *wiring.Charger:
		return []wiring.NodeID{e.A, e.B, e.L, e.N}
	case *wiring.Converter:
		return []wiring.NodeID{e.InA, e.InB, e.OutA, e.OutB}
	case *wiring.Load:
		return []wiring.NodeID{e.A, e.B}
	case *wiring.Sense:
		return []wiring.NodeID{e.At, e.To}
	case *wiring.Driver:
		return []wiring.NodeID{e.A, e.B}
	}
	return nil
}
