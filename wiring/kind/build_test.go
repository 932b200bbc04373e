package kind

import (
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/colour"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// elementOptions compare elements by what they are, not by where they stand in a file.
var elementOptions = cmp.Options{
	cmpopts.IgnoreFields(wiring.ElementBase{}, "Part", "At"),
	cmp.Comparer(func(x, y quantity.Ohm) bool { return math.Abs(float64(x-y)) <= 1e-12*math.Abs(float64(x)) }),
	cmp.Transformer("name", func(c *wiring.Control) string {
		if c == nil {
			return ""
		}
		return c.Name
	}),
}

// A changeover relay, whole: 2b's element table read by hand.
func TestBuildRelay(t *testing.T) {
	d := mustRead(t, `
kind: relay
title: Changeover relay
letter: K
symbol: relay
basis: invented
ratings: {coil-ohms: 90 ohm, pull-in: 8 V, drop-out: 2 V, contact: 30 A at 16 V}
terminals:
  30: {form: spade 6.3, name: common}
  85: {form: spade 6.3}
  86: {form: spade 6.3}
  87: {form: spade 6.3}
  87a: {form: spade 6.3}
inside:
  - coil: {between: [86, 85], ohms: coil-ohms, pull-in: pull-in, drop-out: drop-out}
  - contact: {between: [30, 87], coil: coil, rated: contact}
  - contact: {between: [30, 87a], coil: coil, rest: closed, rated: contact}
`)
	h, p, findings := built(t, d, "{coil-ohms: 100 ohm}")
	if len(findings) > 0 {
		t.Fatal(lines(findings))
	}
	coil := &wiring.Coil{ElementBase: wiring.ElementBase{Name: "coil"}, A: 3, B: 2, Ohms: 100, PullIn: 8, DropOut: 2}
	want := []wiring.Element{
		coil,
		&wiring.Contact{ElementBase: wiring.ElementBase{Name: "contact"}, A: 1, B: 4, Coil: coil, Ohms: 0.0005, Rated: wiring.Rated{Amps: 30, Volts: 16}},
		&wiring.Contact{ElementBase: wiring.ElementBase{Name: "contact2"}, A: 1, B: 5, Coil: coil, RestClosed: true, Ohms: 0.0005, Rated: wiring.Rated{Amps: 30, Volts: 16}},
	}
	if diff := cmp.Diff(want, p.Elements, elementOptions); diff != "" {
		t.Errorf("elements (-want +got)\n%s", diff)
	}
	wantSketch := []string{
		"30: spade 6.3, holds 2 at 30", "85: spade 6.3, holds 2 at 85", "86: spade 6.3, holds 2 at 86",
		"87: spade 6.3, holds 2 at 87", "87a: spade 6.3, holds 2 at 87a", "coil coil", "contact contact", "contact contact2",
	}
	if diff := cmp.Diff(wantSketch, sketch(h, p)); diff != "" {
		t.Errorf("part (-want +got)\n%s", diff)
	}
	wantWhere := map[string]diag.Span{"coil-ohms": {File: "k", Line: 1, Col: 13, EndCol: 20}}
	if diff := cmp.Diff(wantWhere, p.Where); diff != "" {
		t.Errorf("places (-want +got)\n%s", diff)
	}
	if p.Kind.Name != "relay" || p.Ratings["coil-ohms"].Amount.Ohms() != 100 || p.Ratings["pull-in"].At.Known() {
		t.Errorf("kind %q, ratings %+v", p.Kind.Name, p.Ratings)
	}
}

// A fuse block: terminals and fuses by channel, fuses from two layers.
func TestBuildFuseBlock(t *testing.T) {
	d := mustRead(t, `
kind: fuse-block
ratings: {channels: 8, fuses: {}, channel: 30 A}
terminals:
  +: {form: stud M5, torque: 3 Nm}
  "-": {form: stud M5}
  1..channels: {form: spade 6.3, rated: channel}
  n: {form: screw M4, holds: channels, also: [neg]}
inside:
  - fuse: {between: [+, 1..channels], rating: fuses, style: blade, volts: 32 V, breaks: 1 kA}
  - link: {join: ["-", n]}
`)
	h, p, findings := built(t, d, "{channels: 3, fuses: {1: 10 A, 2: 10 A}}", "{fuses: {2: none, 3: auto}}")
	if len(findings) > 0 {
		t.Fatal(lines(findings))
	}
	fuse := func(n int, b wiring.NodeID) *wiring.Fuse {
		return &wiring.Fuse{ElementBase: wiring.ElementBase{Name: numbered("fuse", n)}, A: 1, B: b,
			Channel: n, Style: "blade", Opens: 1.35, Volts: 32, Breaks: 1000}
	}
	one, two, three := fuse(1, 3), fuse(2, 4), fuse(3, 5)
	one.Fitted, one.Rating, one.Ohms = true, 10, 0.008
	three.Fitted, three.Auto = true, true
	want := []wiring.Element{one, two, three, &wiring.Link{ElementBase: wiring.ElementBase{Name: "link"}, Join: []wiring.NodeID{2, 6}}}
	if diff := cmp.Diff(want, p.Elements, elementOptions); diff != "" {
		t.Errorf("elements (-want +got)\n%s", diff)
	}
	n := p.Terminal("neg")
	if n == nil || n.Name != "n" || n.Holds != 3 || p.Terminal("2").Rated != 30 || p.Terminal("+").Torque != 3 || len(h.Nodes) != 7 {
		t.Errorf("terminals: %q", sketch(h, p))
	}
	for _, key := range []string{"channels", "fuses", "fuses.1", "fuses.2", "fuses.3"} {
		if !p.Where[key].Known() {
			t.Errorf("no place for %s", key)
		}
	}
}

// Switches: several ways a position, ranges in step, conditions on controls.
func TestBuildSwitches(t *testing.T) {
	d := mustRead(t, `
kind: drum
ratings: {pins: 2}
controls: {direction: [neutral, forward, reverse]}
terminals:
  1: {form: pin}
  2: {form: pin}
  3: {form: pin}
  a1..pins: {form: pin}
  b1..pins: {form: pin}
inside:
  - switch: {control: direction, closes: {forward: [[1, 2], [3, 2]], reverse: [1, 3, 2]}, ohms: 1 mohm}
  - switch: {name: pole, control: direction, closes: {forward: [a1..pins, b1..pins]}}
  - driver: {between: [1, 2], when: {any: [{direction: forward}, {not: {all: [{direction: reverse}]}}]}}
`)
	_, p, findings := built(t, d)
	if len(findings) > 0 {
		t.Fatal(lines(findings))
	}
	c := p.Controls[0]
	set := func(position string) *wiring.Condition {
		return &wiring.Condition{Op: wiring.Set, Control: c, Position: position}
	}
	want := []wiring.Element{
		&wiring.Switch{ElementBase: wiring.ElementBase{Name: "switch"}, Control: c, Ohms: 0.001,
			Closes: map[string][][]wiring.NodeID{"forward": {{1, 2}, {3, 2}}, "reverse": {{1, 3, 2}}}},
		&wiring.Switch{ElementBase: wiring.ElementBase{Name: "pole1"}, Control: c, Ohms: 0.005, Closes: map[string][][]wiring.NodeID{"forward": {{4, 6}}}},
		&wiring.Switch{ElementBase: wiring.ElementBase{Name: "pole2"}, Control: c, Ohms: 0.005, Closes: map[string][][]wiring.NodeID{"forward": {{5, 7}}}},
		&wiring.Driver{ElementBase: wiring.ElementBase{Name: "driver"}, A: 1, B: 2, Ohms: 0.02,
			When: &wiring.Condition{Op: wiring.Any, Of: []*wiring.Condition{set("forward"),
				{Op: wiring.Not, Of: []*wiring.Condition{{Op: wiring.All, Of: []*wiring.Condition{set("reverse")}}}}}}},
	}
	if diff := cmp.Diff(want, p.Elements, elementOptions); diff != "" {
		t.Errorf("elements (-want +got)\n%s", diff)
	}
}

// Ports and their poles, hidden nodes, the frame, leads that differ.
func TestBuildPortsAndLeads(t *testing.T) {
	d := mustRead(t, `
kind: charger
ratings: {amps: 18 A}
terminals:
  ac: {form: port, poles: [L, N, PE]}
  data: {form: port}
  +: {form: lead, colour: RD, size: 10 AWG, length: 36 in, lug: ring M8}
  "-": {form: lead, colour: BK}
hidden: [v5]
inside:
  - charger: {ac: [L, ac.N], out: [+, "-"], amps: amps, end: 58.4 V, when: {not: hot}}
  - sense: {name: hot, at: v5, to: "-", below: 1 V}
  - link: {join: [PE, frame]}
`)
	h, p, findings := built(t, d, "{leads: {+: {colour: OG, length: 20 in}}}", "{leads: {+: {colour: VT}}}")
	if len(findings) > 0 {
		t.Fatal(lines(findings))
	}
	wantSketch := []string{
		"ac: port , holds 1 L=ac.L N=ac.N PE=ac.PE", "data: port , holds 1", "+: lead , holds 1 at +", "-: lead , holds 1 at -",
		"charger charger", "sense hot", "link link",
	}
	if diff := cmp.Diff(wantSketch, sketch(h, p)); diff != "" {
		t.Errorf("part (-want +got)\n%s", diff)
	}
	hot := &wiring.Sense{ElementBase: wiring.ElementBase{Name: "hot"}, At: 6, To: 5, Below: 1, Back: 1.1, Ohms: 1e6}
	want := []wiring.Element{
		&wiring.Charger{ElementBase: wiring.ElementBase{Name: "charger"}, A: 4, B: 5, L: 1, N: 2, Amps: 18, End: 58.4,
			When: &wiring.Condition{Op: wiring.Not, Of: []*wiring.Condition{{Op: wiring.Holds, Element: hot}}}},
		hot,
		&wiring.Link{ElementBase: wiring.ElementBase{Name: "link"}, Join: []wiring.NodeID{3, 0}},
	}
	if diff := cmp.Diff(want, p.Elements, elementOptions); diff != "" {
		t.Errorf("elements (-want +got)\n%s", diff)
	}
	lead := p.Terminal("+").Lead
	if lead.Colour != (colour.Colour{Base: "VT"}) || lead.Length.Text != "20 in" || lead.Size.Number != 10 || lead.Lug != "ring M8" {
		t.Errorf("lead %+v", lead)
	}
	if other, _, _ := built(t, d); other.Nodes[4].Terminal.Lead.Colour.Base != "RD" {
		t.Error("one part's lead has changed the kind")
	}
	if len(p.Hidden) != 1 || h.Nodes[p.Hidden[0]].String() != "X1.v5" || h.Nodes[0].String() != "frame" {
		t.Errorf("hidden %v", p.Hidden)
	}
}

// Each element with everything that it has, and with as little as it needs.
func TestBuildElements(t *testing.T) {
	base := func(name string) wiring.ElementBase { return wiring.ElementBase{Name: name} }
	tests := []struct {
		inside string
		want   wiring.Element
	}{
		{"resistor: {between: [a, b], ohms: 470 ohm, heat: 10 W}", &wiring.Resistor{ElementBase: base("resistor"), A: 1, B: 2, Ohms: 470, Heat: 10}},
		{"resistor: {between: [a, b], watts: 50 W at 10 V}", &wiring.Resistor{ElementBase: base("resistor"), A: 1, B: 2, Ohms: 2}},
		{"fuse: {between: [a, b], rating: 5 A, style: 10x38}", &wiring.Fuse{ElementBase: base("fuse"), A: 1, B: 2, Fitted: true, Rating: 5, Style: "10x38", Opens: 1.35, Ohms: 0.03}},
		{"fuse: {between: [a, b], rating: 200 A, style: class T}", &wiring.Fuse{ElementBase: base("fuse"), A: 1, B: 2, Fitted: true, Rating: 200, Style: "class T", Opens: 1.35, Ohms: 0.0003}},
		{"fuse: {between: [a, b], rating: auto, opens: 110 %, ohms: 1 mohm}", &wiring.Fuse{ElementBase: base("fuse"), A: 1, B: 2, Fitted: true, Auto: true, Opens: 1.1, Ohms: 0.001}},
		{"coil: {between: [a, b], ohms: 24 ohm, hold: 4 W, pull-in: 30 V, drop-out: 10 V, polarised: true, suppressed: yes}",
			&wiring.Coil{ElementBase: base("coil"), A: 1, B: 2, Ohms: 24, Hold: 4, PullIn: 30, DropOut: 10, Polarised: true, Suppressed: true}},
		{"diode: {between: [a, b]}", &wiring.Diode{ElementBase: base("diode"), A: 1, B: 2, Drop: 0.7, Ohms: 0.01}},
		{"diode: {between: [a, b], drop: 0.3 V, ohms: 2 mohm, amps: 3 A, reverse: 400 V}", &wiring.Diode{ElementBase: base("diode"), A: 1, B: 2, Drop: 0.3, Ohms: 0.002, Amps: 3, Reverse: 400}},
		{"capacitor: {between: [a, b], farads: 4.7 mF}", &wiring.Capacitor{ElementBase: base("capacitor"), A: 1, B: 2, Farads: 0.0047}},
		{"source: {between: [a, b], volts: 12 V, ohms: 9 mohm}", &wiring.Source{ElementBase: base("source"), A: 1, B: 2, Volts: 12, Ohms: 0.009}},
		{"source: {between: [a, b], chemistry: LFP, cells: 16, ohms: 10 mohm, trips: 350 A, capacity: 110 Ah, discharge: 150 A, peak: 300 A for 60 s, charge: 50 A, low: 40 V, high: 58.4 V}",
			&wiring.Source{ElementBase: base("source"), A: 1, B: 2, Chemistry: "LFP", Cells: 16, Ohms: 0.01, Trips: 350, Capacity: 110, Discharge: 150,
				Peak: wiring.Burst{Amps: 300, For: 60}, Charge: 50, Low: 40, High: 58.4}},
		{"mains: {poles: [a, b], volts: 120 V, amps: 15 A}", &wiring.Mains{ElementBase: base("mains"), L: 1, N: 2, Volts: 120, Amps: 15}},
		{"charger: {out: [a, b], amps: 18 A, end: 58.4 V, standby: 0 A, takes: 1200 W, efficiency: 92 %, profile: LFP}",
			&wiring.Charger{ElementBase: base("charger"), A: 1, B: 2, L: wiring.NoNode, N: wiring.NoNode, Amps: 18, End: 58.4, Takes: 1200, Efficiency: 0.92, Profile: "LFP"}},
		{"converter: {in: [a, b], out: [c, b], volts: 12.5 V, amps: 25 A, works: 30 V to 64 V}",
			&wiring.Converter{ElementBase: base("converter"), InA: 1, InB: 2, OutA: 3, OutB: 2, Volts: 12.5, Amps: 25, Works: wiring.Band{Low: 30, High: 64}, Starts: 30.6, Efficiency: 0.9}},
		{"load: {between: [a, b], watts: 18 W, works: 10 V to 15 V, most: 16 V, polarised: true, duty: 50 %, peak: 3 A for 2 s, inrush: 20 A for 50 ms}",
			&wiring.Load{ElementBase: base("load"), A: 1, B: 2, Law: wiring.ConstantPower, Watts: 18, Works: wiring.Band{Low: 10, High: 15}, Most: 16, Polarised: true, Duty: 0.5,
				Peak: wiring.Burst{Amps: 3, For: 2}, Inrush: wiring.Burst{Amps: 20, For: 0.05}}},
		{"load: {between: [a, b], watts: 35 W at 12.8 V, works: 10 to 15 V}", &wiring.Load{ElementBase: base("load"), A: 1, B: 2, Law: wiring.Resistive, Ohms: 12.8 * 12.8 / 35, Works: wiring.Band{Low: 10, High: 15}}},
		{"load: {between: [a, b], amps: 2 A, works: 10 to 15 V}", &wiring.Load{ElementBase: base("load"), A: 1, B: 2, Law: wiring.ConstantCurrent, Amps: 2, Works: wiring.Band{Low: 10, High: 15}}},
		{"load: {between: [a, b], ohms: 96 ohm}", &wiring.Load{ElementBase: base("load"), A: 1, B: 2, Law: wiring.Resistive, Ohms: 96}},
		{"sense: {at: a, to: b, above: 20 V, back: 12 V, ohms: 100 kohm, either-way: true, most: 72 V}",
			&wiring.Sense{ElementBase: base("sense"), At: 1, To: 2, Above: 20, Back: 12, Ohms: 100e3, EitherWay: true, Most: 72}},
		{"sense: {at: a, to: b, above: 20 V}", &wiring.Sense{ElementBase: base("sense"), At: 1, To: 2, Above: 20, Back: 18, Ohms: 1e6}},
		{"sense: {at: a, to: b, below: 20 V}", &wiring.Sense{ElementBase: base("sense"), At: 1, To: 2, Below: 20, Back: 22, Ohms: 1e6}},
		{"sense: {ac: [a, b]}", &wiring.Sense{ElementBase: base("sense"), At: 1, To: 2, AC: true}},
	}
	for _, test := range tests {
		t.Run(test.inside, func(t *testing.T) {
			d := mustRead(t, "kind: k\nterminals:\n  a: {form: pin}\n  b: {form: pin}\n  c: {form: pin}\ninside:\n  - "+test.inside+"\n")
			_, p, findings := built(t, d)
			if len(findings) > 0 {
				t.Fatal(lines(findings))
			}
			if diff := cmp.Diff([]wiring.Element{test.want}, p.Elements, elementOptions); diff != "" {
				t.Errorf("(-want +got)\n%s", diff)
			}
		})
	}
}

// After faults a part has what could be made of it, and nothing that names what is not there.
func TestBuildIncomplete(t *testing.T) {
	d := mustRead(t, `
kind: k
ratings: {ohms: needed, above: 5 V, pins: 2}
terminals:
  a: {form: pin}
  b1..pins: {form: pin}
inside:
  - resistor: {between: [a, b1], ohms: ohms}
  - sense: {name: s, at: a, to: b1, above: above}
  - driver: {name: d, between: [a, b1], when: s}
  - load: {between: [a, b1], ohms: 1 ohm, when: {any: [d, {not: d}]}}
  - resistor: {name: last, between: [a, b2], ohms: 9 ohm}
`)
	tests := []struct {
		part           string
		want, findings []string
	}{
		{"{ohms: 1 ohm}", []string{"resistor", "s", "d", "load", "last"}, nil},
		{"", []string{"s", "d", "load", "last"}, []string{"9:3 X1: a k needs ohms, for example ohms: 250 ohm"}},
		{"{ohms: 1 ohm, above: 5}", []string{"resistor", "last"}, []string{"1:22 above 5 has no unit: write 5 V"}},
		{"{ohms: 1 ohm, pins: 1}", []string{"resistor", "s", "d", "load"}, []string{"12:41 X1: this k has no b2"}},
	}
	for _, test := range tests {
		_, p, findings := built(t, d, test.part)
		if diff := cmp.Diff(test.findings, lines(findings)); diff != "" {
			t.Errorf("%s: findings (-want +got)\n%s", test.part, diff)
		}
		var got []string
		for _, e := range p.Elements {
			got = append(got, e.Base().Name)
		}
		if diff := cmp.Diff(test.want, got); diff != "" {
			t.Errorf("%s: elements (-want +got)\n%s", test.part, diff)
		}
	}
}

// An element that is repeated may name the one of the same number.
func TestBuildInStep(t *testing.T) {
	d := mustRead(t, `
kind: smart-block
ratings: {channels: 3}
terminals:
  +: {form: pin}
  n: {form: pin}
  1..channels: {form: pin}
  in1..channels: {form: pin}
inside:
  - sense: {name: on, at: in1..channels, to: n, above: 6 V}
  - driver: {name: way, between: [+, 1..channels], when: on}
`)
	_, p, findings := built(t, d)
	if len(findings) > 0 {
		t.Fatal(lines(findings))
	}
	for i, e := range p.Elements[3:] {
		if got, want := e.(*wiring.Driver).When.Element.Base().Name, numbered("on", i+1); got != want {
			t.Errorf("%s waits for %s, want %s", e.Base().Name, got, want)
		}
	}
}

// The frame is node 0 of a harness, whatever part is built first, and nodes of further
// parts follow.
func TestBuildSecondPart(t *testing.T) {
	d := mustRead(t, "kind: k\n"+goodTerminals)
	h := &wiring.Harness{}
	for _, name := range []string{"X1", "X2"} {
		p := &wiring.Part{Designation: name}
		if findings := d.Build(h, p, Given{}); len(findings) > 0 {
			t.Fatal(lines(findings))
		}
		h.Parts = append(h.Parts, p)
	}
	var got []string
	for _, n := range h.Nodes {
		got = append(got, n.String())
	}
	if diff := cmp.Diff([]string{"frame", "X1.in", "X1.out", "X2.in", "X2.out"}, got); diff != "" {
		t.Error(diff)
	}
}

// Ratings that no element uses keep what their default is.
func TestUnusedRatings(t *testing.T) {
	d := mustRead(t, "kind: k\nratings: {mass: 29 kg, tube: 12 mm, doors: 2, note-class: fine, span: 9 V to 12 V}\n"+goodTerminals)
	_, p, findings := built(t, d, "{mass: 64, tube: 3 A, doors: many, span: 9 V, note-class: coarse}")
	want := []string{
		"1:8 mass 64 has no unit: 64 kg or 64 lb?",
		"1:18 tube 3 A is no length: in, ft, mm, cm or m",
		"1:30 doors many is no count: a plain whole number",
		"1:42 span 9 V has no voltage with it: 9 V to a number and V or mV",
	}
	if diff := cmp.Diff(want, lines(findings)); diff != "" {
		t.Errorf("(-want +got)\n%s", diff)
	}
	if got := p.Ratings["note-class"].Word; got != "coarse" {
		t.Errorf("note-class %q", got)
	}
	_, p, _ = built(t, d)
	if p.Ratings["mass"].Amount.Dimension != quantity.Mass || p.Ratings["doors"].Count != 2 {
		t.Errorf("ratings %+v", p.Ratings)
	}
}
