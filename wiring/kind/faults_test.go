package kind

import (
	"testing"

	"github.com/google/go-cmp/cmp"
)

// A kind that is in order; {…} stands where each test puts its mistake.
const goodTerminals = "terminals:\n  in: {form: spade 6.3}\n  out: {form: spade 6.3}\n"

func TestKindFaults(t *testing.T) {
	inside := func(element string) string {
		return "kind: k\ncontrols: {switch: [off, on]}\n" + goodTerminals + "hidden: [v5]\ninside:\n  - " + element + "\n"
	}
	tests := []struct {
		name, text string
		want       []string
	}{
		{"no header", "title: x\n", []string{"1:1 a kind file begins with its name, such as kind: reducer"}},
		{"unknown key", "kind: k\ntitel: x\n" + goodTerminals, []string{"2:1 unknown key titel in kind k: did you mean title?"}},
		{"format", "format: 2\nkind: k\n" + goodTerminals, []string{"1:9 this file asks for format 2, this program reads 1"}},
		{"name", "kind: my lamp\n" + goodTerminals, []string{"1:7 the name of a kind has no blanks, dots, commas, colons, slashes, quotes or brackets: my lamp"}},
		{"letter", "kind: k\nletter: W\n" + goodTerminals, []string{"2:9 letter is one or two capital letters, and not W, which is for wires"}},
		{"traction", "kind: k\ntraction: maybe\n" + goodTerminals, []string{"2:11 traction is true or false (yes or no), not maybe"}},
		{"title a list", "kind: k\ntitle: [a]\n" + goodTerminals, []string{"2:8 title is one text, not a list or a map"}},
		{"mount", "kind: k\nmount: {screw: 4 x M5}\n" + goodTerminals, []string{"2:9 unknown key screw in mount: did you mean screws?. Mount has hole, screws, note"}},
		{"no like", "kind: k\nlike: other\n", []string{"2:7 no kind other to be like. Kinds: lugwright kinds"}},
		{"no terminals", "kind: k\n", []string{"1:7 kind k has no terminals. For example: terminals: {in: {form: spade 6.3}, out: {form: spade 6.3}}"}},

		{"rating like a key", "kind: k\nratings: {title: 10 A}\n" + goodTerminals, []string{"2:11 rating title is a key that every part has. Give the rating another name"}},
		{"rating a list", "kind: k\nratings: {amps: [10 A]}\n" + goodTerminals, []string{"2:17 rating amps is one quantity, or {} for one by channel number"}},
		{"mass without unit", "kind: k\nratings: {mass: 29}\n" + goodTerminals, []string{"2:17 rating mass 29 has no unit: 29 kg or 29 lb?"}},

		{"control with one position", "kind: k\ncontrols: {key: [off]}\n" + goodTerminals,
			[]string{"2:17 the control key needs at least two positions, the rest position first. For example: key: [off, on]"}},
		{"position twice", "kind: k\ncontrols: {key: [off, on, off]}\n" + goodTerminals, []string{"2:27 the control key has the position off twice"}},
		{"control no list", "kind: k\ncontrols: {key: on}\n" + goodTerminals, []string{"2:17 control key is a list, such as [off, on], the rest position first"}},

		{"no form", "kind: k\nterminals:\n  in: {name: x}\n", []string{"3:3 terminal in has no form. For example: in: {form: spade 6.3}"}},
		{"form", "kind: k\nterminals:\n  in: {form: spad 6.3}\n", []string{"3:14 no form spad: did you mean spade?. Forms: stud, screw, spade, clamp, pin, lead, port, joint"}},
		{"stud without thread", "kind: k\nterminals:\n  in: {form: stud}\n", []string{"3:14 this stud has no thread: stud M8, stud 5/16 in or stud 10-32"}},
		{"spade with unit", "kind: k\nterminals:\n  in: {form: spade 6.3 mm}\n", []string{"3:14 the width of a spade is in millimetres, without a unit: spade 6.3"}},
		{"pin with size", "kind: k\nterminals:\n  in: {form: pin 3}\n", []string{"3:14 a pin has no size: form: pin"}},
		{"terminal key", "kind: k\nterminals:\n  in: {form: pin, colours: RD}\n", []string{"3:19 unknown key colours in terminal in: did you mean colour?"}},
		{"colour of a stud", "kind: k\nterminals:\n  in: {form: stud M8, colour: RD}\n", []string{"3:23 colour belongs to a lead, and in is a stud"}},
		{"poles of a stud", "kind: k\nterminals:\n  in: {form: stud M8, poles: [L]}\n", []string{"3:23 poles belongs to a port, and in is a stud"}},
		{"lead", "kind: k\nterminals:\n  in: {form: lead, colour: RDX, size: 18, length: 14}\n", []string{
			"3:28 no colour RDX: did you mean RD?", "3:39 size 18: 18 AWG or 18 mm2?", "3:51 length 14 has no unit: 14 in, 14 mm or 14 cm?"}},
		{"torque", "kind: k\nterminals:\n  in: {form: stud M8, torque: 9}\n", []string{"3:31 torque 9 has no unit: 9 Nm, 9 in lb or 9 ft lb?"}},
		{"dot in a name", "kind: k\nterminals:\n  a.b: {form: pin}\n", []string{"3:3 the name of a terminal has no blanks, dots, commas, colons, slashes, quotes or brackets: a.b"}},
		{"two terminals alike", "kind: k\nterminals:\n  In: {form: pin}\n  in: {form: pin}\n", []string{"4:3 in is the name of a terminal already"}},
		{"pin like a terminal", "kind: k\nterminals:\n  a: {form: pin}\n  b: {form: pin, pin: a}\n", []string{"4:23 a is the name of a terminal already"}},
		{"terminal called frame", "kind: k\nterminals:\n  frame: {form: pin}\n", []string{"3:3 frame is the name of the vehicle's frame already"}},
		{"hidden like a terminal", "kind: k\n" + goodTerminals + "hidden: [in]\n", []string{"5:10 in is the name of a terminal already"}},
		{"range without a rating", "kind: k\nratings: {channels: 4}\nterminals:\n  1..chanels: {form: pin}\n",
			[]string{"4:3 the range ends with chanels, which is neither a number nor a rating: did you mean channels?"}},
		{"no range", "kind: k\nterminals:\n  a..pins: {form: pin}\n", []string{"3:3 a..pins is no range of terminals. For example: 1..channels, or a1..pins, where channels and pins are ratings"}},

		{"element", inside("fuze: {between: [in, out], rating: 10 A}"), []string{
			"8:5 no element fuze: did you mean fuse?. Elements: resistor, link, fuse, switch, coil, contact, diode, capacitor, source, mains, charger, converter, load, sense, driver"}},
		{"no element", inside("fuse"), []string{"8:5 an element is its type and, behind a colon, its parameters in { }. For example: - fuse: {between: [in, out], rating: rating}"}},
		{"element no map", inside("fuse: 10 A"), []string{"8:11 a fuse is a map of its parameters: name, between, rating, style, opens, ohms, volts, breaks, holder"}},
		{"parameter", inside("fuse: {betwen: [in, out], rating: 10 A}"), []string{
			"8:5 the fuse has no between: its two ends",
			"8:12 unknown key betwen in fuse: did you mean between?. A fuse has name, between, rating, style, opens, ohms, volts, breaks, holder"}},
		{"node", inside("fuse: {between: [in, v50], rating: 10 A}"), []string{"8:26 no terminal, pole or hidden node v50: did you mean v5?"}},
		{"to itself", inside("fuse: {between: [in, in], rating: 10 A}"), []string{"8:21 between goes from in to itself"}},
		{"three nodes", inside("fuse: {between: [in, out, v5], rating: 10 A}"), []string{"8:21 between is a pair of terminals, such as [in, out]"}},
		{"unit", inside("fuse: {between: [in, out], rating: 10}"), []string{"8:40 rating 10 has no unit: 10 A or 10 mA?"}},
		{"wrong unit", inside("fuse: {between: [in, out], rating: 30 V}"), []string{"8:40 rating 30 V is no current: A or mA"}},
		{"no rating of that name", inside("fuse: {between: [in, out], rating: amps}"), []string{"8:40 rating amps is no current: a number and A or mA"}},
		{"zero", inside("resistor: {between: [in, out], ohms: 0 ohm}"), []string{"8:42 ohms 0 ohm is nothing: it is above 0"}},
		{"share", inside("converter: {in: [in, out], out: [v5, out], volts: 5 V, amps: 1 A, works: 9 V to 12 V, efficiency: 120 %}"),
			[]string{"8:103 efficiency 120 % is too much: it is at most 100 %"}},
		{"opens below its rating", inside("fuse: {between: [in, out], rating: 10 A, opens: 90 %}"), []string{"8:53 opens 90 % is too little: it is at least 100 %"}},
		{"band", inside("load: {between: [in, out], amps: 1 A, works: 15 V to 10 V}"), []string{"8:50 works 15 V to 10 V runs downwards: write 10 V to 15 V"}},
		{"truth", inside("coil: {between: [in, out], ohms: 9 ohm, pull-in: 9 V, drop-out: 3 V, polarised: perhaps}"),
			[]string{"8:85 polarised is true or false (yes or no), not perhaps"}},
		{"word", inside("source: {between: [in, out], chemistry: NiCd, cells: 4, ohms: 9 mohm}"), []string{"8:45 chemistry is LFP or lead-acid, not NiCd"}},
		{"control", inside("switch: {control: swich, closes: {on: [in, out]}}"), []string{"8:23 no control swich in this kind: did you mean switch?. Declare it: controls: {swich: [off, on]}"}},
		{"position", inside("switch: {control: switch, closes: {onn: [in, out]}}"), []string{"8:40 the control switch has the positions off, on, not onn: did you mean on?"}},
		{"one terminal in a position", inside("switch: {control: switch, closes: {on: [in]}}"), []string{"8:40 the position on joins less than two terminals. For example: on: [in, out]"}},
		{"when", inside("driver: {between: [in, out], when: enabel}\n  - sense: {name: enable, at: in, to: out, above: 6 V}"),
			[]string{"8:40 when names enabel, which is no sense, coil, driver, converter or charger of this kind: did you mean enable?"}},
		{"when a list", inside("driver: {between: [in, out], when: [a, b]}"),
			[]string{"8:40 when is a name, or one of {all: […]}, {any: […]}, {not: …} or {CONTROL: POSITION}. If all of these must hold: {all: […]}"}},
		{"two operators", inside("driver: {between: [in, out], when: {all: [], any: []}}"), []string{"8:40 when has one operator: {all: […]}, {any: […]}, {not: …} or {CONTROL: POSITION}"}},
		{"all of nothing", inside("driver: {between: [in, out], when: {all: []}}"), []string{"8:46 all of nothing: name at least one"}},
		{"setting", inside("driver: {between: [in, out], when: {switch: up}}"), []string{"8:49 the control switch has the positions off, on, not up"}},
		{"no such control", inside("driver: {between: [in, out], when: {al: [x]}}"), []string{"8:41 no control al in this kind: did you mean all?"}},
		{"coil", inside("contact: {between: [in, out], coil: coil}"), []string{"8:41 coil names coil, which is no coil of this kind"}},
		{"two of one name", inside("fuse: {between: [in, out], rating: 1 A}\n  - load: {name: fuse, between: [in, out], ohms: 1 ohm}"), []string{"9:5 two elements are named fuse"}},
		{"map where one value stands", "kind: k\nratings: {fuses: {}}\n" + goodTerminals + "inside:\n  - fuse: {between: [in, out], rating: fuses}\n",
			[]string{"7:40 fuses is a map by channel number, and rating here is one value"}},
		{"rating in two meanings", "kind: k\nratings: {x: 10 A}\n" + goodTerminals + "inside:\n  - fuse: {between: [in, out], rating: x, volts: x}\n",
			[]string{"7:50 x is used as voltage here and as current above: make two ratings of it"}},
		{"default of the wrong sort", "kind: k\nratings: {x: 10 V}\n" + goodTerminals + "inside:\n  - fuse: {between: [in, out], rating: x}\n",
			[]string{"2:14 rating x 10 V is no current: A or mA"}},
		{"repeated, named by one that is not", "kind: k\nterminals:\n  +: {form: pin}\n  1..4: {form: pin}\ninside:\n" +
			"  - sense: {name: s, at: 1..4, to: +, above: 1 V}\n  - driver: {between: [+, 1], when: s}\n",
			[]string{"7:37 s is repeated (s1, s2…) and driver is not: which one is meant?"}},
		{"pole of two ports", "kind: k\nterminals:\n  a: {form: port, poles: [v, g]}\n  b: {form: port, poles: [v, g]}\ninside:\n  - link: {join: [v, a.g, b.g]}\n",
			[]string{"6:19 v is a pole of more than one port: write a.v or b.v"}},
		{"all in one run", "kind: k\nletter: w\nterminals:\n  in: {form: spad}\n  out: {form: pin}\ninside:\n  - fuse: {between: [in, aut], rating: 10}\n", []string{
			"2:9 letter is one or two capital letters, and not W, which is for wires",
			"4:14 no form spad: did you mean spade?. Forms: stud, screw, spade, clamp, pin, lead, port, joint",
			"7:26 no terminal, pole or hidden node aut: did you mean out?",
			"7:40 rating 10 has no unit: 10 A or 10 mA?"}},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			_, findings := Read(tree(t, test.text), nil)
			if diff := cmp.Diff(test.want, lines(findings)); diff != "" {
				t.Errorf("(-want +got)\n%s", diff)
			}
		})
	}
}

// A kind file is called like its kind.
func TestFileName(t *testing.T) {
	d := "kind: lamp\n" + goodTerminals
	for file, want := range map[string]int{"kinds/lamp.yaml": 0, "kinds/lamb.yaml": 1} {
		root := treeOf(t, file, d)
		if _, findings := Read(root, nil); len(findings) != want {
			t.Errorf("%s: %v", file, lines(findings))
		}
	}
}

// What a job says of a part of a kind that is in order.
func TestPartFaults(t *testing.T) {
	const fuse = "kind: fuse-blade\nratings: {rating: needed, volts: 32 V}\n" + goodTerminals +
		"inside:\n  - fuse: {between: [in, out], rating: rating, volts: volts}\n"
	const block = "kind: fuse-block\nratings: {channels: 4, fuses: {}}\nterminals:\n  +: {form: pin}\n  1..channels: {form: pin}\n" +
		"inside:\n  - fuse: {between: [+, 1..channels], rating: fuses}\n"
	const reducer = "kind: reducer\nratings: {works: 30 V to 64 V, starts: 40 V, efficiency: 90 %}\nterminals:\n" +
		"  in: {form: lead, colour: RD}\n  neg: {form: pin}\n  out: {form: lead}\n" +
		"inside:\n  - converter: {in: [in, neg], out: [out, neg], volts: 12 V, amps: 9 A, works: works, starts: starts, efficiency: efficiency}\n"
	const relay = "kind: relay\nratings: {pull-in: 8 V, drop-out: 2 V}\nterminals:\n  85: {form: pin}\n  86: {form: pin}\n" +
		"inside:\n  - coil: {between: [85, 86], ohms: 90 ohm, pull-in: pull-in, drop-out: drop-out}\n"
	tests := []struct {
		name, kind, part string
		want             []string
	}{
		{"needed", fuse, "", []string{"9:3 X1: a fuse-blade needs rating, for example rating: 10 A"}},
		{"no such rating", fuse, "{rating: 10 A, watts: 5 W}", []string{"1:16 X1: a fuse-blade has no rating watts: it has rating, volts"}},
		{"near a rating", fuse, "{ratign: 10 A}", []string{
			"9:3 X1: a fuse-blade needs rating, for example rating: 10 A",
			"1:2 X1: a fuse-blade has no rating ratign: it has rating, volts. Did you mean rating?"}},
		{"near a key of every part", fuse, "{rating: 10 A, plaec: dash}", []string{"1:16 X1: a fuse-blade has no rating plaec: it has rating, volts. Did you mean place?"}},
		{"unit", fuse, "{rating: 10}", []string{"1:10 rating 10 has no unit: 10 A or 10 mA?"}},
		{"nothing", fuse, "{rating: 0 A}", []string{"1:10 rating 0 A is nothing: it is above 0"}},
		{"a map", fuse, "{rating: {1: 5 A}}", []string{"1:10 X1: rating is one value, not a list or a map"}},
		{"auto", fuse, "{rating: auto}", nil},
		{"auto where it makes no sense", fuse, "{rating: 10 A, volts: auto}", []string{"1:23 volts auto is no voltage: a number and V or mV"}},
		{"channels", block, "{fuses: {1: 10 A, 3: none, 4: auto}}", nil},
		{"ranges of channels", block, "{fuses: {1..3: 10 A}}", nil},
		{"no map", block, "{fuses: 10 A}", []string{"1:9 X1: fuses is a map by channel number, such as fuses: {1: 10 A}"}},
		{"channel", block, "{fuses: {5: 10 A}}", []string{"1:10 X1: this fuse-block has no channel 5: it has 4"}},
		{"no channel number", block, "{fuses: {one: 10 A, 0: 5 A}}", []string{
			"1:10 X1: one is no channel number of fuses", "1:21 X1: 0 is no channel number of fuses"}},
		{"unit of a channel", block, "{fuses: {2: 10}}", []string{"1:13 fuses 2 10 has no unit: 10 A or 10 mA?"}},
		{"count with a unit", block, "{channels: 4 A}", []string{"1:12 channels 4 A is no count: write 4"}},
		{"no channels at all", block, "{channels: 0}", []string{"1:12 channels 0 is no number of anything: it is at least 1"}},
		{"lead", reducer, "{leads: {in: {color: GN, length: 20 in}}}", nil},
		{"no such lead", reducer, "{leads: {enable: {colour: GN}}}", []string{"1:10 X1 has no lead enable: it has in, out"}},
		{"key of a lead", reducer, "{leads: {in: {form: pin}}}", []string{"1:15 unknown key form in lead in. A lead has colour, size, length, lug"}},
		{"colour of a lead", reducer, "{leads: {in: {colour: RDX}}}", []string{"1:23 no colour RDX: did you mean RD?"}},
		{"starts outside", reducer, "{starts: 20 V}", []string{"1:10 X1.converter: it starts at 20 V, and works from 30 V to 64 V"}},
		{"share", reducer, "{efficiency: 110 %}", []string{"1:14 efficiency 110 % is too much: it is at most 100 %"}},
		{"drop-out above pull-in", relay, "{pull-in: 1 V}", []string{"1:11 X1.coil: it is released below 2 V and energised from 1 V up: drop-out is the lower of the two"}},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			_, _, findings := built(t, mustRead(t, test.kind), test.part)
			if diff := cmp.Diff(test.want, lines(findings)); diff != "" {
				t.Errorf("(-want +got)\n%s", diff)
			}
		})
	}
}
