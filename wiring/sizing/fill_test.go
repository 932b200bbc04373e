package sizing_test

import (
	"context"
	"os"
	"regexp"
	"slices"
	"testing"
	"testing/fstest"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/catalog"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/job"
	"github.com/lugwright/lugwright/wiring/rule"
	"github.com/lugwright/lugwright/wiring/rules"
)

const examples = "../../examples/tern-point/"

// load reads a job text beside the shop's file, and the layers that it is given.
func load(t *testing.T, text string, layers fstest.MapFS) *wiring.Harness {
	t.Helper()
	files := fstest.MapFS{"job.yaml": {Data: []byte(text)}, "shop.yaml": {Data: []byte("shop: T\nassume: {insulation: 105 C}\n")}}
	for name, file := range layers {
		files[name] = file
	}
	h, findings, err := job.Load("job.yaml", job.Options{FS: files})
	if err != nil || h == nil {
		t.Fatal(err, findings)
	}
	return h
}

var (
	sizeWritten   = regexp.MustCompile(`size: [0-9/]+ AWG`)
	ratingWritten = regexp.MustCompile(`rating: [0-9.]+ A`)
	fuseWritten   = regexp.MustCompile(`([1-9]): [0-9.]+ A\b`)
)

// everythingAuto leaves every size and rating of the shipped layers and of a job to the
// program.
func everythingAuto(t *testing.T, name string) *wiring.Harness {
	t.Helper()
	layers := fstest.MapFS{}
	auto := func(text []byte) string {
		text = sizeWritten.ReplaceAll(text, []byte("size: auto"))
		return string(ratingWritten.ReplaceAll(text, []byte("rating: auto")))
	}
	for _, l := range catalog.Layers("") {
		layers[l.Sort+"s/"+l.Name+".yaml"] = &fstest.MapFile{Data: []byte(auto(l.Text))}
	}
	text, err := os.ReadFile(examples + "jobs/" + name + ".yaml")
	if err != nil {
		t.Fatal(err)
	}
	return load(t, fuseWritten.ReplaceAllString(auto(text), "$1: auto"), layers)
}

// Whatever is left to the program is filled so that the rules on fuses, conductors and
// returns find nothing, on carts of which no size and no rating is stated at all.
func TestFilledCartsAreInOrder(t *testing.T) {
	judged := []string{"fuse-protects-wire", "fused-consumer", "return-complete"}
	for _, name := range []string{"tern-point-14", "tern-point-shuttle-3"} {
		h := everythingAuto(t, name)
		filled := 0
		for _, w := range h.Wires {
			for _, p := range w.Pieces {
				if p.Auto {
					filled++
					if !p.Size.Known() {
						t.Errorf("%s: %s has no size", name, w.Name())
					}
				}
			}
		}
		if filled < 40 {
			t.Errorf("%s: %d pieces were left to the program, which is no test", name, filled)
		}
		result, err := rule.Run(context.Background(), h, rules.All(), rule.Options{})
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range result.Open(diag.Warning) {
			if slices.Contains(judged, f.Rule) {
				t.Errorf("%s: %s:%d: %s\n%s", name, f.At.File, f.At.Line, f.Message, f.Detail)
			}
		}
	}
}

// What is computed by hand, from the tables: a light bar of 60 W takes 4.8 A at the 12.5 V
// of its reducer, so its fuse is 7.5 A (80 % of 5 A is too little); a main fuse of class T
// holds 110 % for hours, so 200 A would just hold the motor's 220 A, and 225 A holds the
// rest of the cart too; the return of 40 ft may lose 3 %, less what W65 and leads lose:
// 0.28 V at 4.8 A, which 12 AWG (0.31 V) does not keep and 10 AWG (0.19 V) does.
func TestFill(t *testing.T) {
	h := load(t, `job: A-1
use: [48v-separately-excited, 16s-onboard-charger]
parts:
  A1: {fuses: {1: auto, 2: auto}}
  F1: {rating: auto}
  E1: {kind: light-bar, power: 60 W, place: front}
  S6: {kind: rocker, place: dash}
wires:
  W51: {size: auto}
  W71: {from: A1.1, to: S6.in, colour: OG, size: auto, length: 18 in}
  W72: {from: S6.out, to: E1.+, colour: OG, size: auto, length: 4 ft}
  W73: {from: E1.-, to: A1.n, colour: BK, size: auto, length: 40 ft}
`, nil)
	for ref, want := range map[string]string{"A1.fuse1": "7.5 A", "F1.fuse": "225 A", "A1.fuse2": "0 A"} {
		if got := fuse(t, h, ref); got.Rating.String() != want || !got.Auto {
			t.Errorf("%s is rated %v, want %s", ref, got.Rating, want)
		}
	}
	for name, want := range map[string]string{"W51": "1 AWG", "W71": "16 AWG", "W72": "16 AWG", "W73": "10 AWG"} {
		for _, p := range h.Wire(name).Pieces {
			if p.Kind == wiring.CutPiece && (p.Size.String() != want || !p.Auto) {
				t.Errorf("%s is %v, want %s", name, p.Size, want)
			}
		}
	}
}

func fuse(t *testing.T, h *wiring.Harness, ref string) *wiring.Fuse {
	t.Helper()
	for _, p := range h.Parts {
		for _, e := range p.Elements {
			if f, ok := e.(*wiring.Fuse); ok && f.Ref() == ref {
				return f
			}
		}
	}
	t.Fatal("no fuse " + ref)
	return nil
}
