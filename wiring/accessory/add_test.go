package accessory_test

import (
	"bytes"
	"context"
	"errors"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/accessory"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/job"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/rule"
	"github.com/lugwright/lugwright/wiring/rules"
)

const examples = "../../examples/tern-point"

func example(t *testing.T, name string) (string, []byte) {
	t.Helper()
	file := "jobs/" + name + ".yaml"
	text, err := os.ReadFile(examples + "/" + file)
	if err != nil {
		t.Fatal(err)
	}
	return file, text
}

func loader(file string) accessory.Load {
	return accessory.Loader(file, job.Options{FS: os.DirFS(examples)})
}

func feet(t *testing.T, text string) quantity.Amount {
	t.Helper()
	a, err := quantity.Parse(text, quantity.Length)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// errorsOf counts the errors of a job.
func errorsOf(t *testing.T, load accessory.Load, text []byte) int {
	t.Helper()
	h, findings, err := load(text)
	if err != nil || h == nil {
		t.Fatalf("%v %v\n%s", err, findings, text)
	}
	result, err := rule.Run(context.Background(), h, rules.All(), rule.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return len(result.Open(diag.Error))
}

// onlyInserted reports whether before is what is left of after when some bytes go.
func onlyInserted(before, after []byte) bool {
	for _, b := range after {
		if len(before) > 0 && before[0] == b {
			before = before[1:]
		}
	}
	return len(before) == 0
}

// Twelve accessories, one after the other, on each example: each lands or is refused with
// the reason, never is there an error that was not there before, and every byte of the file
// stays. By the thirteenth every one of these carts is full.
func TestTwelveInARow(t *testing.T) {
	kinds := []string{"light-bar", "usb-outlet", "fan", "lamp-led"}
	for _, name := range []string{"tern-point-14", "tern-point-shuttle-3", "tern-point-truck-1"} {
		t.Run(name, func(t *testing.T) {
			file, first := example(t, name)
			first = bytes.ReplaceAll(first, []byte("\n"), []byte("\r\n")) // its line ends must stay too
			load := loader(file)
			text, was, landed := first, errorsOf(t, load, first), 0
			var last error
			for i := range 13 {
				r := accessory.Request{Kind: kinds[i%len(kinds)], Watts: 12, Length: feet(t, "6 ft"), SwitchLength: feet(t, "18 in")}
				p, err := accessory.Add(context.Background(), text, load, r)
				last = err
				var refusal *accessory.Refusal
				switch {
				case errors.As(err, &refusal):
					continue
				case err != nil:
					t.Fatal(err)
				}
				landed++
				if !onlyInserted(text, p.Text) || bytes.Count(p.Text, []byte("\n")) != bytes.Count(p.Text, []byte("\r\n")) {
					t.Fatalf("more than bytes were inserted:\n%s", p.Text)
				}
				if p.Fuse.Rating == 0 || len(p.Wires) < 2 || p.Part == nil {
					t.Errorf("%+v", p)
				}
				text = p.Text
			}
			if is := errorsOf(t, load, text); is > was {
				t.Errorf("%d errors became %d", was, is)
			}
			if landed == 0 {
				t.Error("nothing landed")
			}
			if last == nil || !strings.Contains(last.Error(), "channels of A1 are taken") && !strings.Contains(last.Error(), "no room") && !strings.Contains(last.Error(), "no negative is free") {
				t.Errorf("the thirteenth: %v", last)
			}
			t.Logf("%d landed; the thirteenth: %v", landed, last)
		})
	}
}

// What stands in the file, and what is computed: 60 W at 12.5 V are 4.8 A, a fuse of 7.5 A.
func TestAdd(t *testing.T) {
	file, text := example(t, "tern-point-14")
	p, err := accessory.Add(context.Background(), text, loader(file), accessory.Request{
		Kind: "light-bar", Title: "bed light", Place: "rear", Watts: 60, Length: feet(t, "10 ft"),
	})
	if err != nil {
		t.Fatal(err)
	}
	for _, line := range []string{
		`  A1: {fuses: {1: 10 A, 2: 10 A, 3: 5 A, 4: 10 A, 5: 7.5 A}}`,
		`  E2: {kind: light-bar, power: 60 W, title: bed light, place: rear}`,
		`  S5: {kind: rocker, title: bed light, place: dash}`,
		`  W70: {from: A1.5, to: S5.in, colour: BU, size: 16 AWG}`,
		`  W81: {from: S5.out, to: E2.+, colour: BU, size: 16 AWG, length: 10 ft}`,
		`  W82: {from: E2.-, to: A1.n, colour: BK, size: 14 AWG, length: 10 ft}`,
	} {
		if !slices.Contains(strings.Split(string(p.Text), "\n"), line) {
			t.Errorf("no line %q in\n%s", line, p.Text)
		}
	}
	if p.Fuse.Rating != 7.5 || p.Part.Designation != "E2" || p.Switch.Designation != "S5" || p.Reducer != "T2.main" {
		t.Errorf("%+v", p)
	}
}

func TestRefusals(t *testing.T) {
	file, text := example(t, "tern-point-14")
	for want, r := range map[string]accessory.Request{
		"T2.main has no room: with it everything takes": {Kind: "light-bar", Watts: 200},
		"blade fuses end at 40 A":                       {Kind: "light-bar", Watts: 900},
		"channel 1 is taken or not there":               {Kind: "light-bar", Channel: 1},
		"channel 9 is taken or not there":               {Kind: "light-bar", Channel: 9},
		"a splice is no accessory: it has no consumer":  {Kind: "splice"},
		"no kind ligth-bar: did you mean light-bar?":    {Kind: "ligth-bar"},
		"Wer da": {Kind: "light-bar", Place: "Wer da"},
	} {
		_, err := accessory.Add(context.Background(), text, loader(file), r)
		var refusal *accessory.Refusal
		if !errors.As(err, &refusal) || !strings.Contains(err.Error(), want) {
			t.Errorf("%+v: %v, want %s", r, err, want)
		}
	}
	kit := []byte("kit: no cart\nparts:\n  A1: {kind: fuse-block}\n")
	if _, err := accessory.Add(context.Background(), kit, loader(file), accessory.Request{Kind: "lamp"}); err == nil || err.Error() != "this is a kit: an accessory is added to a job" {
		t.Error(err)
	}
}

// The harness that Add tried is the one that its text gives.
func TestPlanIsWhatTheTextSays(t *testing.T) {
	file, text := example(t, "tern-point-truck-1")
	p, err := accessory.Add(context.Background(), text, loader(file), accessory.Request{Kind: "usb-outlet", Place: "dash"})
	if err != nil {
		t.Fatal(err)
	}
	h, _, err := loader(file)(p.Text)
	if err != nil || h == nil {
		t.Fatal(err)
	}
	part := h.Part(p.Part.Designation)
	if part == nil || part.Kind.Name != "usb-outlet" || wiring.Fold(part.Place) != "dash" {
		t.Errorf("%+v", part)
	}
}
