package rules_test

import (
	"fmt"
	"regexp"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/catalog"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/job"
	"github.com/lugwright/lugwright/wiring/rule"
)

const examples = "../../examples/tern-point"

// TestExamplesAreInOrder holds the carts that ship to their word: nothing on them is an
// error, and nothing is left unjudged.
func TestExamplesAreInOrder(t *testing.T) {
	base := tree(t, examples)
	for name := range base {
		if !strings.HasPrefix(name, "jobs/") {
			continue
		}
		t.Run(name, func(t *testing.T) {
			result := check(t, base, name, string(base[name].Data))
			for _, f := range result.Open(diag.Warning) {
				t.Errorf("%s:%d: %v: %s (%s)\n%s", f.At.File, f.At.Line, f.Level, f.Message, f.Rule, f.Detail)
			}
			for _, n := range result.NotChecked {
				if n.What != "positions of the hand switches" { // twelve switches have more than are settled
					t.Errorf("not checked: %s: %v", n.Rule, n)
				}
			}
		})
	}
}

// mistake is one thing that goes wrong on a real cart, laid over one of the examples.
type mistake struct {
	name, use, body string
	rule            string
	level           diag.Level
	line            string // what stands on the line that the finding points at
	text            string // regular expression on message, detail and advice
	subjects        []string
}

var mistakes = []mistake{
	{name: "enable lead on the battery side of the solenoid", use: "tern-point-14", body: "wires:\n  W69: {to: K1.in}\n",
		rule: "off-means-off", level: diag.Error, line: "W69: {to: K1.in}",
		text: "enable lead of T2 .* always live.*52.8 V.*Move W69 from K1.in to this platform's switched point, K1.out", subjects: []string{"W69", "K1.in", "T2", "T2.enable"}},
	{name: "interlock lead on the controller side", use: "tern-point-14", body: "wires:\n  W37: {to: K1.out}\n  T1.lock-b: {to: capped}\n",
		rule: "interlock-landed", level: diag.Error, line: "W37: {to: K1.out}",
		text: "W37 on K1.out does not reach pack positive.*through K1.*U1.interlock reads 5[0-9].[0-9] V and the cart drives all the same.*Land W37 on T1.lock-b", subjects: []string{"W37", "K1.out", "U1.interlock"}},
	{name: "interlock lead on pack negative", use: "tern-point-14", body: "wires:\n  W37: {to: G1.-}\n  T1.lock-b: {to: capped}\n",
		rule: "interlock-landed", level: diag.Error, line: "W37: {to: G1.-}", text: "W37 on G1.- does not reach pack positive", subjects: []string{"W37", "G1.-"}},
	{name: "interlock lead on 12 V", use: "tern-point-14", body: "wires:\n  W37: {to: A1.6}\n  T1.lock-b: {to: capped}\n",
		rule: "interlock-landed", level: diag.Error, line: "W37: {to: A1.6}", text: "W37 on A1.6 does not reach pack positive", subjects: []string{"W37", "A1.6"}},
	{name: "interlock lead capped", use: "tern-point-14", body: "wires:\n  W37: {to: capped}\n  T1.lock-b: {to: capped}\n",
		rule: "interlock-landed", level: diag.Error, line: "W37: {to: capped}", text: "the interlock lead W37 is capped.*does not move", subjects: []string{"W37"}},
	{name: "key feed of the shuttle left where the old inlet was", use: "tern-point-shuttle-3", body: "wires:\n  W14: {to: K1.out}\n",
		rule: "interlock-landed", level: diag.Error, line: "W14: {to: K1.out}", text: "W14 on K1.out does not reach pack positive.*through K1", subjects: []string{"W14", "K1.out"}},
	{name: "lockout loop of the truck open", use: "tern-point-truck-1", body: "wires:\n  W58: {to: capped}\n",
		rule: "interlock-landed", level: diag.Error, text: "loop from U1.inhibit to U1.common is open", subjects: []string{"U1.inhibit", "U1.common"}},
	{name: "pack positive on the lockout loop of the truck", use: "tern-point-truck-1", body: "wires:\n  W58: {to: K1.in}\n",
		rule: "interlock-landed", level: diag.Error, text: "loop from U1.inhibit to U1.common is on 58.4 V.*destroys", subjects: []string{"U1.inhibit"}},
	{name: "light bar straight on the pack", use: "tern-point-14", body: "wires:\n  W71: {from: G1.+}\n",
		rule: "fused-consumer", level: diag.Error, line: "W71: {from: G1.+}", text: "W71 leaves G1.\\+ without a fuse and feeds E1.*5.84 kA", subjects: []string{"W71", "G1.+", "E1"}},
	{name: "light bar straight on the pack, its voltage", use: "tern-point-14", body: "wires:\n  W71: {from: G1.+}\n",
		rule: "bus-voltage", level: diag.Error, line: "W71: {from: G1.+}", text: "W71 puts 57.[0-9] V on E1 .*stands 32 V.*G1.\\+ - W71 - S6 - W72 - E1.\\+.*A1.", subjects: []string{"W71", "G1.+", "E1"}},
	{name: "USB on the feed stud, past its channel", use: "tern-point-14", body: "wires:\n  W77: {from: A1.+}\n",
		rule: "fused-consumer", level: diag.Error, line: "W77: {from: A1.+}", text: "W77 leaves A1.\\+ without a fuse and feeds X5", subjects: []string{"W77", "A1.+", "X5"}},
	{name: "horn on the feed stud: its wire stands it, the horn may not", use: "tern-point-14", body: "wires:\n  W74: {from: A1.+}\n",
		rule: "fused-consumer", level: diag.Warning, line: "W74: {from: A1.+}", text: "W74 leaves A1.\\+ without a fuse and feeds P3", subjects: []string{"W74", "A1.+", "P3"}},
	{name: "channel bridged by a piece of wire", use: "tern-point-14", body: "wires:\n  W201: {from: A1.+, to: A1.3, colour: RD, size: 16 AWG, length: 8 in}\n",
		rule: "fused-consumer", level: diag.Error, line: "W201:", text: "W201 leaves A1.\\+ without a fuse and feeds X5", subjects: []string{"W201", "A1.+"}},
	{name: "reducer's fuse bypassed", use: "tern-point-14",
		body: "remove: [W60]\nparts:\n  X9: {kind: bus-bar, place: seat box}\nwires:\n  W201: {from: F3.out, to: X9.1}\n  W202: {from: X9.2, to: T2.in+}\n  W203: {from: F1.in, to: X9.3, colour: RD, size: 12 AWG, length: 14 in}\n",
		rule: "fused-consumer", level: diag.Error, line: "W203:", text: "W203 leaves F1.in without a fuse and feeds T2", subjects: []string{"W203", "F1.in", "T2"}},
	{name: "factory harness ground capped and forgotten", use: "tern-point-14", body: "wires:\n  W38: {to: capped}\n",
		rule: "return-complete", level: diag.Error, line: "W38: {to: capped}", text: "P1 has no return.*W38 ends capped.*Land W38 on G1.-", subjects: []string{"W38", "P1"}},
	{name: "factory harness ground taken out", use: "tern-point-14", body: "remove: [W38]\n",
		rule: "return-complete", level: diag.Error, text: "P1 has no return", subjects: []string{"P1", "W29"}},
	{name: "USB negative forgotten", use: "tern-point-14", body: "wires:\n  W78: {to: capped}\n",
		rule: "return-complete", level: diag.Error, line: "W78: {to: capped}", text: "X5 has no return.*Land W78 on A1.n", subjects: []string{"W78", "X5"}},
	{name: "negative of the whole fuse block forgotten", use: "tern-point-14", body: "wires:\n  W65: {to: capped}\n",
		rule: "return-complete", level: diag.Error, text: "E1, P3, .* and X5 have no return", subjects: []string{"W65", "E1", "X5"}},
	{name: "socket negative of the shuttle forgotten", use: "tern-point-shuttle-3", body: "wires:\n  W44: {to: capped}\n",
		rule: "return-complete", level: diag.Error, line: "W44: {to: capped}", text: "X14 has no return", subjects: []string{"W44", "X14"}},
	{name: "coil negative of the shuttle forgotten", use: "tern-point-shuttle-3", body: "wires:\n  W19: {to: capped}\n",
		rule: "return-complete", level: diag.Error, line: "W19: {to: capped}", text: "K1 has no return", subjects: []string{"W19", "K1"}},
	{name: "48 V from the key on a 12 V channel", use: "tern-point-14", body: "wires:\n  W201: {from: X13, to: A1.6, colour: PK, size: 16 AWG, length: 2 ft}\nparts:\n  A1: {fuses: {6: 5 A}}\n",
		rule: "buses-apart", level: diag.Error, line: "W201:", text: "W201 joins G1.\\+ .* and T2.out", subjects: []string{"W201", "A1.6"}},
	{name: "pack of twice the cells", use: "tern-point-14", body: "parts:\n  G1: {cells: 32}\n",
		rule: "bus-voltage", level: diag.Error, text: "on U1 .*, which stands 63 V|U1 .* sees 11[0-9].[0-9] V", subjects: []string{"U1"}},
	{name: "reducer of 58 V on a pack of 58.4 V", use: "tern-point-14", body: "parts:\n  T2: {works: 30 V to 58 V, most: 58 V}\n",
		rule: "bus-voltage", level: diag.Error, text: "58.[0-9] V on T2 .*, which stands 58 V", subjects: []string{"T2"}},
	{name: "pack turned round", use: "tern-point-14",
		body: "wires:\n  W51: {from: G1.-}\n  W53: {from: G1.-}\n  W59: {from: G1.-}\n  W66: {from: G1.-}\n  W7: {from: G1.+}\n  W38: {to: G1.+}\n  W52: {from: G1.+}\n",
		rule: "polarity", level: diag.Error, text: "T2 .* has its supply the wrong way round.*T2.in\\+ is on the negative of G1", subjects: []string{"T2", "W60", "W61"}},
	{name: "negatives of all accessories on a splice that goes nowhere", use: "tern-point-14",
		body: "parts:\n  X9: {kind: splice}\nwires:\n  W73: {to: X9}\n  W78: {to: X9}\n",
		rule: "return-complete", level: diag.Error, text: "E1 and X5 have no return", subjects: []string{"E1", "X5"}},
	{name: "two lugs too many on the pack's negative", use: "tern-point-14",
		body: "parts:\n  X9: {kind: bus-bar}\nwires:\n  W201: {from: X9.1, to: G1.-, colour: BK, size: 10 AWG, length: 1 ft}\n  W202: {from: X9.2, to: G1.-, colour: BK, size: 10 AWG, length: 1 ft}\n",
		rule: "stack-count", level: diag.Warning, line: "W202:", text: "G1.- holds 5 and takes 4", subjects: []string{"G1.-", "W202"}},
	{name: "blade fuse for the interlock lead", use: "tern-point-14", body: "parts:\n  F4: {kind: fuse-blade, replaces: fuse-10x38, rating: 2 A}\n",
		rule: "fuse-voltage", level: diag.Error, line: "F4:", text: "F4 is rated 32 V and opens against 54.4 V", subjects: []string{"F4"}},
	{name: "fuse block taken out, its wires left", use: "tern-point-14", body: "remove: [A1]\n",
		rule: "lead-ended", level: diag.Error, text: "W64 is left on nothing: A1.\\+ was taken out", subjects: []string{"W64"}},
	{name: "30 A in the USB channel", use: "tern-point-14", body: "parts:\n  A1: {fuses: {3: 40 A}}\n  T2: {amps: 60 A}\n",
		rule: "fuse-protects-wire", level: diag.Error, text: "A1.fuse3 of 40 A protects W77", subjects: []string{"W77", "A1"}},
	{name: "light bar turned round", use: "tern-point-14", body: "wires:\n  W72: {to: E1.-}\n  W73: {from: E1.+}\n",
		rule: "polarity", level: diag.Error, text: "E1 .* is the wrong way round", subjects: []string{"E1", "W72", "W73"}},
}

func TestMistakes(t *testing.T) {
	base := tree(t, examples)
	for _, m := range mistakes {
		t.Run(m.name, func(t *testing.T) {
			text := fmt.Sprintf("job: M-1\nuse: [%s.yaml]\n%s", m.use, m.body)
			m.expect(t, base, text)
		})
	}
}

// TestAcrossTwin is the main example on the platform whose pre-charge lies across the
// solenoid, with its enable lead where it is right on the other platform, and where it is
// right on this one.
func TestAcrossTwin(t *testing.T) {
	base := tree(t, examples)
	text := strings.Replace(string(base["jobs/tern-point-14.yaml"].Data), "[48v-separately-excited,", "[48v-separately-excited-across,", 1)
	if text == string(base["jobs/tern-point-14.yaml"].Data) {
		t.Fatal("the example does not stand on the platform that this test changes")
	}
	reaching := strings.Replace(text, "wires:\n", "wires:\n  W69: {extend: {colour: RD, size: 18 AWG, length: 6 ft}}\n", 1)
	right := check(t, base, "jobs/mutant.yaml", reaching)
	for _, f := range right.Open(diag.Warning) {
		t.Errorf("on the key's output: %v: %s (%s)", f.Level, f.Message, f.Rule)
	}
	wrong := strings.Replace(text, "wires:\n", "wires:\n  W69: {to: K1.out}\n", 1)
	mistake{
		rule: "off-means-off", level: diag.Error, line: "W69: {to: K1.out}",
		text: "enable lead of T2 .* always live.*50.2 V.*R1.*Move W69 from K1.out to this platform's switched point, X13", subjects: []string{"W69", "K1.out", "T2"},
	}.expect(t, base, wrong)
}

// expect checks that a job has the finding, at its line, with all that it must name.
func (m mistake) expect(t *testing.T, base fstest.MapFS, text string) {
	t.Helper()
	result := check(t, base, "jobs/mutant.yaml", text)
	pattern := regexp.MustCompile(m.text)
	var others []string
	for _, f := range result.Open(diag.Warning) {
		if f.Rule != m.rule || !pattern.MatchString(f.Message+" "+f.Detail+" "+f.Advice) {
			others = append(others, fmt.Sprintf("%v: %s | %s | %s (%s)", f.Level, f.Message, f.Detail, f.Advice, f.Rule))
			continue
		}
		m.complete(t, f, text)
		return
	}
	t.Errorf("%s does not say %q. It says:\n%s", m.rule, m.text, strings.Join(others, "\n"))
}

func (m mistake) complete(t *testing.T, f diag.Finding, text string) {
	t.Helper()
	if f.Level != m.level {
		t.Errorf("level %v, want %v: %s", f.Level, m.level, f.Message)
	}
	if m.line != "" {
		lines := strings.Split(text, "\n")
		if f.At.File != "jobs/mutant.yaml" || f.At.Line > len(lines) || !strings.Contains(lines[f.At.Line-1], m.line) {
			t.Errorf("it points at %s:%d, not at the line with %q", f.At.File, f.At.Line, m.line)
		}
	}
	for _, want := range m.subjects {
		if !contains(f.Subjects, want) {
			t.Errorf("it does not name %s: %v", want, f.Subjects)
		}
	}
}

func contains(words []string, word string) bool {
	for _, w := range words {
		if w == word {
			return true
		}
	}
	return false
}

// TestEveryAccessoryOnThePack lands the feed of each accessory of the main example, one
// after the other, on the pack's positive: each time it is said that the consumer has no
// fuse and too much voltage, with the wire and the post.
func TestEveryAccessoryOnThePack(t *testing.T) {
	base := tree(t, examples)
	for _, w := range fromChannels(t, base) {
		t.Run(w, func(t *testing.T) {
			body := fmt.Sprintf("job: M-1\nuse: [tern-point-14.yaml]\nwires:\n  %s: {from: G1.+}\n", w)
			for _, id := range []string{"fused-consumer", "bus-voltage"} {
				m := mistake{rule: id, level: diag.Error, line: w + ": {from: G1.+}", text: w, subjects: []string{w, "G1.+"}}
				m.expect(t, base, body)
			}
		})
	}
}

// fromChannels lists the wires of the main example that leave a channel of its fuse block.
func fromChannels(t *testing.T, base fstest.MapFS) []string {
	t.Helper()
	h, _, err := job.Load("jobs/tern-point-14.yaml", job.Options{FS: base})
	if err != nil || h == nil {
		t.Fatalf("the example does not load: %v", err)
	}
	var wires []string
	for _, w := range h.Wires {
		if from := w.From.Terminal; from != nil && from.Part.Designation == "A1" && from.Form.Type == wiring.Spade {
			wires = append(wires, w.Name())
		}
	}
	if len(wires) < 4 {
		t.Fatalf("only %v leave the fuse block", wires)
	}
	return wires
}

// TestEveryNegativeCapped takes each wire that lands on a negative of each example off it,
// one after the other, and caps its end. Each time something lacks its return.
func TestEveryNegativeCapped(t *testing.T) {
	base := tree(t, examples)
	for _, name := range []string{"tern-point-14", "tern-point-shuttle-3", "tern-point-truck-1"} {
		h, _, err := job.Load("jobs/"+name+".yaml", job.Options{FS: base})
		if err != nil || h == nil {
			t.Fatalf("%s does not load: %v", name, err)
		}
		for _, w := range h.Wires {
			end, ok := onNegative(h, w)
			if !ok {
				continue
			}
			t.Run(name+"/"+w.Name(), func(t *testing.T) {
				body := fmt.Sprintf("job: M-1\nuse: [%s.yaml]\nwires:\n  %s: {%s: capped}\n", name, w.Name(), end)
				result := check(t, base, "jobs/mutant.yaml", body)
				if found := errorsOf(result, "return-complete"); len(found) == 0 {
					t.Errorf("nothing lacks a return without %s, %v to %v", w.Name(), w.From, w.To)
				}
			})
		}
	}
}

// onNegative tells which end of a wire lands on the pack's negative, on the bus bar beside
// it or on the negative of the fuse block.
func onNegative(h *wiring.Harness, w *wiring.Wire) (end string, ok bool) {
	for i, e := range w.Ends() {
		if e.Terminal == nil || w.Cord() {
			continue
		}
		switch ref := e.Terminal.Ref(); {
		case ref == "G1.-", ref == "A1.n", strings.HasPrefix(ref, "X3."):
			return []string{"from", "to"}[i], true
		}
	}
	return "", false
}

func errorsOf(result rule.Result, id string) []diag.Finding {
	var found []diag.Finding
	for _, f := range result.Open(diag.Error) {
		if f.Rule == id {
			found = append(found, f)
		}
	}
	return found
}

// TestForgottenTap converts the shuttle without a word about the 12 V tap of its old
// string: the wire that hung on two of six batteries is left on nothing.
func TestForgottenTap(t *testing.T) {
	mistake{
		rule: "lead-ended", level: diag.Warning, text: "W32 is left on nothing: G12.\\+ was taken out.*12 V tap", subjects: []string{"W32"},
	}.expect(t, tree(t, examples), "job: M-1\nuse: [36v-series, 12s-inlet]\n")
}

// TestPlatformsAloneAreAtMostWarnings looks at carts as they were before any work.
func TestPlatformsAloneAreAtMostWarnings(t *testing.T) {
	for _, l := range catalog.Layers("platform") {
		t.Run(l.Name, func(t *testing.T) {
			result := check(t, nil, "platforms/"+l.Name+".yaml", string(l.Text))
			for _, f := range result.Open(diag.Error) {
				t.Errorf("%s:%d: %s (%s)", f.At.File, f.At.Line, f.Message, f.Rule)
			}
			if len(result.Open(diag.Warning)) == 0 {
				t.Error("nothing at all is found on a cart without a main fuse")
			}
		})
	}
}
