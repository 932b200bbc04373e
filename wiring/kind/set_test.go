package kind

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"github.com/lugwright/lugwright/wiring/source"
)

const lamp = `
title: Lamp
letter: E
ratings: {power: 18 W, works: 10 V to 15 V}
terminals:
  +: {form: spade 6.3}
  "-": {form: spade 6.3}
inside:
  - load: {between: [+, "-"], watts: power, works: works}
`

// addNamed adds a kind as a layer's `kinds` does.
func addNamed(t *testing.T, s *Set, name, body string) []string {
	t.Helper()
	key := tree(t, name+": x\n").Entries[0].Key
	return lines(s.AddNamed(key, tree(t, body)))
}

func TestSetLike(t *testing.T) {
	s := NewSet(nil)
	addNamed(t, s, "work-light", "like: Light-Bar\ntitle: Work light\nratings: {power: 48 W}\n")
	addNamed(t, s, "light-bar", "like: lamp\nratings: {power: 72 W, most: 32 V}\nterminals:\n  +: {form: lead, colour: RD}\n")
	addNamed(t, s, "lamp", lamp)
	if got := lines(s.Findings()); got != nil {
		t.Fatal(got)
	}
	d, ok := s.Get("WORK-light")
	if !ok {
		t.Fatal("not found")
	}
	h, p, findings := built(t, d)
	if len(findings) > 0 {
		t.Fatal(lines(findings))
	}
	want := []string{"+: lead , holds 1 at +", "-: spade 6.3, holds 2 at -", "load load"}
	if diff := cmp.Diff(want, sketch(h, p)); diff != "" {
		t.Error(diff)
	}
	if d.Title != "Work light" || d.Letter != "E" || p.Ratings["power"].Amount.Watts() != 48 || p.Ratings["most"].Amount.Volts() != 32 {
		t.Errorf("%+v %+v", d.Kind, p.Ratings)
	}
	if diff := cmp.Diff([]string{"power", "works", "most"}, d.RatingNames()); diff != "" {
		t.Error(diff)
	}
	if base, _ := s.Get("lamp"); len(base.RatingNames()) != 2 {
		t.Error("a copy has changed what it was copied from")
	}
	if diff := cmp.Diff([]string{"lamp", "light-bar", "work-light"}, s.Names()); diff != "" {
		t.Error(diff)
	}
}

func TestSetFaults(t *testing.T) {
	below := func(name string) (*Definition, bool) {
		if name == "relay" {
			return &Definition{}, true
		}
		return nil, false
	}
	s := NewSet(below)
	addNamed(t, s, "lamp", lamp)
	checks := []struct{ name, body, want string }{
		{"lamp", lamp, "1:1 the kind lamp is found twice. Give one of them another name"},
		{"LAMP", lamp, "1:1 the kind LAMP is found twice. Give one of them another name"},
		{"relay", lamp, "1:1 the kind relay is built in already. Give yours another name; it may say like: "},
	}
	for _, c := range checks {
		if diff := cmp.Diff([]string{c.want}, addNamed(t, s, c.name, c.body)); diff != "" {
			t.Error(diff)
		}
	}

	addNamed(t, s, "a", "like: b\n")
	addNamed(t, s, "b", "like: c\n")
	addNamed(t, s, "c", "like: a\n")
	addNamed(t, s, "orphan", "like: nobody\n")
	want := []string{
		"1:1 the kind a is like itself in the end",
		"1:7 no kind nobody to be like. Kinds: lugwright kinds",
	}
	for range 2 { // asking again says the same
		if diff := cmp.Diff(want, lines(s.Findings())); diff != "" {
			t.Error(diff)
		}
	}
	if _, ok := s.Get("b"); ok {
		t.Error("a kind that is like itself was found")
	}
}

// What is wrong in a kind is said once, not again for each kind that is like it.
func TestSetSaysOnce(t *testing.T) {
	s := NewSet(nil)
	addNamed(t, s, "base", "terminals:\n  a: {form: pin}\n  b: {form: pin}\ninside:\n  - resistor: {between: [a, b], ohms: 9}\n")
	addNamed(t, s, "one", "like: base\ntitle: One\n")
	addNamed(t, s, "two", "like: one\ntitle: Two\n")
	want := []string{"5:39 ohms 9 has no unit: 9 mohm, 9 ohm or 9 kohm?"}
	if diff := cmp.Diff(want, lines(s.Findings())); diff != "" {
		t.Error(diff)
	}
}

// A kind whose `inside` no longer fits after its terminals were changed says so.
func TestSetLikeMisfit(t *testing.T) {
	s := NewSet(nil)
	addNamed(t, s, "charger", "terminals:\n  ac: {form: port, poles: [L, N]}\n  a: {form: pin}\n  b: {form: pin}\n"+
		"inside:\n  - charger: {ac: [L, N], out: [a, b], amps: 9 A, end: 50 V}\n")
	addNamed(t, s, "variant", "like: charger\nterminals:\n  ac: {form: port, poles: [hot, cold]}\n")
	want := []string{"6:20 no terminal, pole or hidden node L", "6:23 no terminal, pole or hidden node N"}
	if diff := cmp.Diff(want, lines(s.Findings())); diff != "" {
		t.Error(diff)
	}
}

func TestSetFile(t *testing.T) {
	s := NewSet(nil)
	name, findings := s.AddFile(tree(t, "kind: lamp\n"+lamp))
	if name != "lamp" || findings != nil || s.Findings() != nil {
		t.Errorf("%q %v %v", name, findings, s.Findings())
	}
	if _, findings := s.AddFile(tree(t, "title: x\n")); len(findings) != 1 {
		t.Errorf("no header: %v", findings)
	}
	if _, findings := s.AddFile((*source.Node)(nil)); len(findings) != 1 {
		t.Errorf("no file: %v", findings)
	}
}
