package job_test

import (
	"fmt"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/google/go-cmp/cmp"
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/job"
	"pgregory.net/rapid"
)

// mustLoad reads files that must be without faults.
func mustLoad(t *rapid.T, files map[string]string) *wiring.Harness {
	t.Helper()
	fsys := fstest.MapFS{}
	for name, text := range files {
		fsys[name] = &fstest.MapFile{Data: []byte(text)}
	}
	h, findings, err := job.Load("job.yaml", job.Options{FS: fsys})
	if err != nil || h == nil {
		t.Fatalf("%v\n%s\n%v", err, listing(findings), files)
	}
	checkHarness(t, h)
	return h
}

// propertyParts are the parts that the properties wire up.
const propertyParts = `parts:
  A1: {kind: fuse-block}
  S1..S4: {kind: rocker}
  E1..E4: {kind: lamp}
  X1..X2: {kind: splice}
`

// Later layers win key by key: of each key the last layer that gives it decides, whatever
// the layers below say and whichever other keys they give.
func TestLaterLayersWin(t *testing.T) {
	values := map[string][]string{
		"colour": {"RD", "BK", "GNYE", "unknown"},
		"size":   {"14 AWG", "2.5 mm2", "auto"},
		"length": {"14 in", "about 3 ft", "unknown"},
		"note":   {"one", "two", "three"},
		"loom":   {"l1", "l2", "none"},
		"volts":  {"60 V", "600 V"},
	}
	keys := []string{"colour", "size", "length", "note", "loom", "volts"}
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 6).Draw(t, "layers")
		files := map[string]string{"kits/k0.yaml": "kit: base\nlooms: {l1: {cover: tape}, l2: {cover: tape}}\n" + propertyParts}
		last := map[string]string{}
		var given []string
		use := "k0"
		for i := 1; i <= n; i++ {
			var pairs []string
			if i == 1 {
				pairs = []string{"from: A1.1", "to: S1.in"}
			}
			for _, key := range keys {
				if rapid.Bool().Draw(t, key) {
					last[key] = rapid.SampledFrom(values[key]).Draw(t, "value")
					pairs = append(pairs, key+": "+last[key])
				}
			}
			given = append(given, strings.Join(pairs, ", "))
			files[fmt.Sprintf("kits/k%d.yaml", i)] = fmt.Sprintf("kit: k%d\nwires:\n  W1: {%s}\n", i, strings.Join(pairs, ", "))
			use += fmt.Sprintf(", k%d", i)
		}
		files["job.yaml"] = "job: layered\nuse: [" + use + "]\n"
		layered := mustLoad(t, files)
		var flat []string
		for _, key := range keys {
			if v, ok := last[key]; ok {
				flat = append(flat, key+": "+v)
			}
		}
		once := mustLoad(t, map[string]string{
			"kits/k0.yaml": files["kits/k0.yaml"],
			"job.yaml":     "job: flat\nuse: [k0]\nwires:\n  W1: {" + strings.Join(append([]string{"from: A1.1", "to: S1.in"}, flat...), ", ") + "}\n",
		})
		if diff := cmp.Diff(listed(once.Wires), listed(layered.Wires)); diff != "" {
			t.Fatalf("layers %q (-at once +layered):\n%s", given, diff)
		}
	})
}

// It does not matter over how many layers the wires of a cart are spread, nor in which
// order layers stand that do not speak of the same wire.
func TestLayersOfDifferentWires(t *testing.T) {
	lines := []string{
		"W1: {from: A1.1, to: S1.in, colour: OG, size: 14 AWG, length: 1 ft}",
		"W2: {from: S1.out, to: E1.+, colour: OG, size: 14 AWG}",
		"W3: {from: E1.-, to: X1}",
		"W4..W5: {from: A1.2..3, to: S2..S3.in, colour: RD, size: 16 AWG}",
		"W6: {from: X1, to: A1.n, colour: BK, size: 14 AWG, length: about 2 ft}",
		"W7: {from: X2, to: capped}",
		"W8: {from: E2.-, to: X1, note: last}",
	}
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 4).Draw(t, "layers")
		texts := make([]string, n)
		for _, line := range rapid.Permutation(lines).Draw(t, "order") {
			i := rapid.IntRange(0, n-1).Draw(t, "layer")
			texts[i] += "  " + line + "\n"
		}
		files := map[string]string{"kits/k.yaml": "kit: parts\n" + propertyParts}
		use := "k"
		for i, text := range texts {
			files[fmt.Sprintf("addons/a%d.yaml", i)] = "addon: one\n" + strings.Replace("wires:\n"+text, "wires:\n", "wires:\n", min(1, len(text)))
			if text == "" {
				files[fmt.Sprintf("addons/a%d.yaml", i)] = "addon: empty\n"
			}
			use += fmt.Sprintf(", a%d", i)
		}
		files["job.yaml"] = "job: T\nuse: [" + use + "]\n"
		spread := mustLoad(t, files)
		whole := mustLoad(t, map[string]string{"job.yaml": "job: T\n" + propertyParts + "wires:\n  " + strings.Join(lines, "\n  ") + "\n"})
		if diff := cmp.Diff(listed(whole.Wires), listed(spread.Wires)); diff != "" {
			t.Fatalf("(-whole +spread):\n%s", diff)
		}
	})
}

// A layer with a suffix is the layer whose own names have it.
func TestSuffixIsARenaming(t *testing.T) {
	const addon = `addon: light
needs: {channel: a fused channel}
looms: {C1%[1]s: {cover: tape}}
parts:
  E11%[1]s..E12%[1]s: {kind: light-bar}
  S11%[1]s: {kind: rocker}
wires:
  W101%[1]s: {from: channel, to: S11%[1]s.in, colour: OG, size: 14 AWG, loom: C1%[1]s}
  W102%[1]s: {from: S11%[1]s.out, to: E11%[1]s.+, colour: OG, size: 14 AWG, length: 1 ft}
  E11%[1]s.-: {to: X1}
  E12%[1]s.-: {to: X1}
  E12%[1]s.+: {to: capped}
`
	rapid.Check(t, func(t *rapid.T) {
		suffix := rapid.SampledFrom([]string{"A", "F", "R", "z"}).Draw(t, "suffix")
		channel := rapid.IntRange(1, 8).Draw(t, "channel")
		with := mustLoad(t, map[string]string{
			"kits/k.yaml":       "kit: parts\n" + propertyParts,
			"addons/light.yaml": fmt.Sprintf(addon, ""),
			"job.yaml":          fmt.Sprintf("job: T\nuse: [k, {layer: light, suffix: %s, points: {channel: A1.%d}}]\n", suffix, channel),
		})
		renamed := strings.ReplaceAll(fmt.Sprintf(addon, suffix), "E11"+suffix+"..E12"+suffix+": {kind: light-bar}", "E11"+suffix+": {kind: light-bar}\n  E12"+suffix+": {kind: light-bar}")
		without := mustLoad(t, map[string]string{
			"kits/k.yaml":       "kit: parts\n" + propertyParts,
			"addons/light.yaml": renamed,
			"job.yaml":          fmt.Sprintf("job: T\nuse: [k, {layer: light, points: {channel: A1.%d}}]\n", channel),
		})
		if diff := cmp.Diff(listed(without.Wires), listed(with.Wires)); diff != "" {
			t.Fatalf("(-renamed +suffix):\n%s", diff)
		}
	})
}

// Whatever a layer removes and moves: every wire below it is there afterwards or is listed
// as removed; a wire goes only if it was named, if it was on removed parts alone, or if it
// was nothing but the lead of one.
func TestNoWireIsLost(t *testing.T) {
	const below = `platform: cart
parts:
  A1: {kind: fuse-block}
  S1..S4: {kind: rocker}
  E1..E2: {kind: light-bar}
  X1..X2: {kind: splice}
wires:
  W1..W4: {from: A1.1..4, to: S1..S4.in, colour: OG, size: 14 AWG}
  W5: {from: S1.out, to: E1.+}
  W6: {from: S2.out, to: E2.+, colour: RD, size: 16 AWG}
  W7: {from: E1.-, to: X1}
  W8: {from: E2.-, to: X1, colour: BK, size: 16 AWG}
  W9: {from: X1, to: X2, colour: BK, size: 14 AWG}
  W10: {from: X2, to: A1.n, colour: BK, size: 14 AWG}
  W11: {from: S3.out, to: S4.out, colour: BK, size: 14 AWG}
points: {one: X1, two: A1.n}
`
	parts := []string{"S1", "S2", "S3", "S4", "E1", "E2", "X1", "X2"}
	rapid.Check(t, func(t *rapid.T) {
		removed := map[string]bool{}
		var names []string
		for _, p := range parts {
			if rapid.IntRange(0, 2).Draw(t, p) == 0 {
				removed[p] = true
				names = append(names, p)
			}
		}
		named := rapid.SampledFrom([]string{"", "W1", "W7", "W11"}).Draw(t, "wire")
		if named != "" {
			names = append(names, named)
		}
		text := "job: T\nuse: [cart]\nremove: [" + strings.Join(names, ", ") + "]\n"
		if rapid.Bool().Draw(t, "move") {
			text += "move: {one: A1.-}\n"
		}
		h := mustLoad(t, map[string]string{"platforms/cart.yaml": below, "job.yaml": text})
		was := mustLoad(t, map[string]string{"job.yaml": strings.Replace(below, "platform: cart", "job: T", 1)})
		gone := map[string]int{}
		for _, r := range h.BeforeWires {
			gone[r.Wire.Name()]++
		}
		for _, w := range was.Wires {
			is := h.Wire(w.Name()) != nil
			if is == (gone[w.Name()] == 1) || gone[w.Name()] > 1 {
				t.Fatalf("%s is there: %v, is listed as removed %d times", w.Name(), is, gone[w.Name()])
			}
			if is == mayGo(w, removed, named) {
				t.Fatalf("%s (%s) is there: %v; removed are %v", w.Name(), wireLine(w), is, names)
			}
		}
	})
}

// mayGo says what must become of a wire when parts are removed, from the words of the
// format.
func mayGo(w *wiring.Wire, removed map[string]bool, named string) bool {
	from, to := w.From.Terminal, w.To.Terminal
	fromGone, toGone := removed[from.Part.Designation], removed[to.Part.Designation]
	onlyLead := len(w.Pieces) == 1 && w.Pieces[0].Kind == wiring.LeadPiece
	isLead := func(t *wiring.Terminal) bool { return t.Form.Type == wiring.Lead }
	return w.Name() == named || fromGone && toGone ||
		onlyLead && (fromGone && isLead(from) || toGone && isLead(to))
}
