package job_test

import (
	"os"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/job"
)

func examples() job.Options { return job.Options{FS: os.DirFS("testdata/format-examples")} }

func example(t testing.TB, name string) *wiring.Harness {
	t.Helper()
	return load(t, examples().FS, "jobs/"+name+".yaml")
}

func before(t testing.TB, name string) *wiring.Harness {
	t.Helper()
	h, findings, err := job.LoadBefore("jobs/"+name+".yaml", examples())
	if err != nil || h == nil {
		t.Fatalf("%s cannot be read as it was before: %v\n%s", name, err, listing(findings))
	}
	return h
}

// The numbers of parts and wires before and after the work come from the design of the
// format, where another reader counted them.
func TestExamplesCount(t *testing.T) {
	tests := []struct {
		name                     string
		partsBefore, partsAfter  int
		wiresBefore, wiresAfter  int
		platform, number         string
		removedParts, interlocks int
	}{
		{"tern-point-14", 21, 31, 40, 60, "48 V separately excited, six 8 V batteries", "TP-14", 8, 1},
		{"tern-point-shuttle-3", 28, 39, 47, 67, "36 V series, six 6 V batteries", "TP-S3", 7, 1},
		{"tern-point-truck-1", 20, 39, 37, 72, "48 V AC drive, six 8 V batteries, charger with a lockout contact", "TP-U1", 10, 0},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			was, is := before(t, tt.name), example(t, tt.name)
			type count struct{ Parts, Wires int }
			if diff := cmp.Diff(count{tt.partsBefore, tt.wiresBefore}, count{len(was.Parts), len(was.Wires)}); diff != "" {
				t.Errorf("before (-want +got):\n%s", diff)
			}
			if diff := cmp.Diff(count{tt.partsAfter, tt.wiresAfter}, count{len(is.Parts), len(is.Wires)}); diff != "" {
				t.Errorf("after (-want +got):\n%s", diff)
			}
			if was.Identity.Title != tt.platform || is.Identity.Number != tt.number {
				t.Errorf("identities: %q, %q", was.Identity.Title, is.Identity.Number)
			}
			if len(is.Before) != tt.removedParts {
				t.Errorf("%d parts were removed, want %d", len(is.Before), tt.removedParts)
			}
			if is.Interlock == nil || len(is.Interlock.Wires) != tt.interlocks {
				t.Errorf("interlock: %+v, want %d leads", is.Interlock, tt.interlocks)
			}
		})
	}
}

// Every wire of the platform is there afterwards or was removed: none is lost.
func TestExamplesLoseNoWire(t *testing.T) {
	for _, name := range []string{"tern-point-14", "tern-point-shuttle-3", "tern-point-truck-1"} {
		was, is := before(t, name), example(t, name)
		gone := map[string]bool{}
		for _, r := range is.BeforeWires {
			gone[r.Wire.Name()] = true
		}
		for _, w := range was.Wires {
			if (is.Wire(w.Name()) == nil) != gone[w.Name()] {
				t.Errorf("%s: %s is there: %v, was removed: %v", name, w.Name(), is.Wire(w.Name()) != nil, gone[w.Name()])
			}
		}
	}
}

// wireLine is a wire in one line: ends, pieces, lugs.
func wireLine(w *wiring.Wire) string {
	var b strings.Builder
	b.WriteString(w.From.String())
	for _, p := range w.Pieces {
		b.WriteString(" | ")
		if p.Joint != "" {
			b.WriteString(p.Joint + ": ")
		}
		b.WriteString(string(p.Kind))
		for _, s := range []string{p.Colour.String(), p.Size.String(), p.Length.String()} {
			if s != "" {
				b.WriteString(" " + s)
			}
		}
	}
	b.WriteString(" | " + w.To.String())
	if w.From.Lug != "" || w.To.Lug != "" {
		b.WriteString(" (" + w.From.Lug + "; " + w.To.Lug + ")")
	}
	return b.String()
}

func TestExampleWires(t *testing.T) {
	tests := []struct{ job, wire, want string }{
		{"tern-point-14", "W6", "F1.out | wire RD 2 AWG 30 in | K1.in (ring M8; ring 5/16 in)"},
		{"tern-point-14", "W37", "U1.interlock | wire GN 18 AWG 3 ft | butt: extend GN/WH 18 AWG 14 in | butt: lead RD 10 AWG 6 in | F4.out (pin; )"},
		{"tern-point-14", "T2.enable", "T2.enable | lead WH 18 AWG 30 in | butt: wire RD 18 AWG 4 ft | K1.out (; ring 5/16 in)"},
		{"tern-point-14", "W62", "T2.enable | lead WH 18 AWG 30 in | butt: wire RD 18 AWG 4 ft | K1.out (; ring 5/16 in)"},
		{"tern-point-14", "P4.memory", "P4.memory | lead RD 20 AWG 40 in | capped"},
		{"tern-point-14", "W57", "T1.lock-a | lead GY 18 AWG 24 in | capped"},
		{"tern-point-14", "W56", "X1 | cord BK 14 AWG 3 ft | T1.ac"},
		{"tern-point-14", "W64", "T2.out | lead YE 10 AWG 24 in | butt: wire YE 10 AWG about 4 ft | A1.+ (; ring M5)"},
		{"tern-point-shuttle-3", "W32", "A1.1 | extend RD/WH 12 AWG 8 ft | butt: wire RD 12 AWG 12 in | butt: lead RD 12 AWG 6 in | F12.in (spade 6.3; )"},
		{"tern-point-shuttle-3", "W63", "T2.memory | lead BU 16 AWG 24 in | butt: lead RD 12 AWG 6 in | F5.in"},
		{"tern-point-truck-1", "W1R", "A1.2 | wire OG/WH 14 AWG 18 in | S1R.in (spade 6.3; spade 6.3)"},
	}
	for _, tt := range tests {
		t.Run(tt.job+" "+tt.wire, func(t *testing.T) {
			w := example(t, tt.job).Wire(tt.wire)
			if tt.wire == "T2.enable" {
				if w != nil {
					t.Fatalf("the lead has the number %s", w.Number)
				}
				return
			}
			if w == nil {
				t.Fatal("no such wire")
			}
			if diff := cmp.Diff(tt.want, wireLine(w)); diff != "" {
				t.Errorf("(-want +got):\n%s", diff)
			}
		})
	}
}

func TestExampleHistory(t *testing.T) {
	h := example(t, "tern-point-14")
	w := h.Wire("W37")
	if len(w.Moved) != 1 {
		t.Fatalf("W37 was moved %d times, want once: %+v", len(w.Moved), w.Moved)
	}
	m := w.Moved[0]
	type history struct {
		Origin, MovedBy string
		Changed         []string
		To              bool
		Was             string
		Interlock       bool
		EndLine         int
		ExtendLine      int
	}
	var changed []string
	for _, l := range w.Changed {
		changed = append(changed, l.File)
	}
	want := history{
		Origin: "platforms/48v-separately-excited.yaml", MovedBy: "kits/16s-onboard-charger.yaml",
		Changed: []string{"kits/16s-onboard-charger.yaml", "jobs/tern-point-14.yaml"},
		To:      true, Was: "X11.lock", Interlock: true, EndLine: 11, ExtendLine: 22,
	}
	got := history{w.Origin.File, m.By.File, changed, m.To, m.Was, w.Interlock, w.To.At.Line, w.Span("extend").Line}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
	if h.Wire("W6").Untouched() || !h.Wire("W8").Untouched() {
		t.Error("W6 was moved and W8 is as the platform had it")
	}
	if at := h.Wire("W71").To.At; at.File != "jobs/tern-point-14.yaml" || at.Line != 24 {
		t.Errorf("the end `to` of W71 stands at %v", at)
	}
}

func TestExampleRest(t *testing.T) {
	h := example(t, "tern-point-truck-1")
	var states []string
	for _, s := range h.States {
		states = append(states, s.Name)
	}
	want := []string{"pack off", "tow", "key off", "ready", "driving", "reversing", "braking", "everything on", "charging", "drive-away", "night work"}
	if diff := cmp.Diff(want, states); diff != "" {
		t.Errorf("states (-want +got):\n%s", diff)
	}
	if s := h.State("night work"); s.Position(h.Part("S1F").Controls[0]) != "on" || s.Position(h.Part("S1").Controls[0]) != "on" {
		t.Error("night work has the key and the front work light on")
	}
	if s := h.State("night work"); s.Moves() != -1 || len(s.Expect) != 3 {
		t.Errorf("night work expects %+v", s.Expect)
	}
	var looms []string
	for _, l := range h.Looms {
		looms = append(looms, l.Name)
	}
	if diff := cmp.Diff([]string{"main loom", "C1F", "C1R"}, looms); diff != "" {
		t.Errorf("looms (-want +got):\n%s", diff)
	}
	if w := h.Wire("W2R"); w.Loom != "C1R" || w.Insulation != 105 || w.Volts != 60 {
		t.Errorf("W2R: loom %q, %v, %v", w.Loom, w.Insulation, w.Volts)
	}
	if len(h.Waivers) != 1 || h.Waivers[0].At != "W83" {
		t.Errorf("waivers: %+v", h.Waivers)
	}
	if h.Interlock.Kind != wiring.NoInterlock {
		t.Errorf("interlock: %+v", h.Interlock)
	}
	if h.Shop.Name != "Quay Lane Carts" || h.Assume.Ambient != 35 || h.Limits.Lugs != 4 {
		t.Errorf("shop %+v, assume %+v, limits %+v", h.Shop, h.Assume, h.Limits)
	}
	h = example(t, "tern-point-14")
	if len(h.Stacks) != 1 || len(h.Stacks[0].Wires) != 3 {
		t.Errorf("stacks: %+v", h.Stacks)
	}
	if len(h.TestPoints) == 0 || h.TestPoints[0].Ref() != "K1.in" {
		t.Errorf("test points: %v", h.TestPoints)
	}
	if p, ok := h.Point("pack+"); !ok || p.Terminal.Ref() != "F1.out" {
		t.Errorf("pack+ is %+v", p)
	}
	if p, ok := h.Point("lockout"); !ok || p.Terminal != nil {
		t.Errorf("lockout is %+v", p)
	}
}

// The examples that ship are read without any finding that is an error.
func TestShippedExamples(t *testing.T) {
	for _, name := range []string{"tern-point-14", "tern-point-shuttle-3", "tern-point-truck-1"} {
		file := "../../examples/tern-point/jobs/" + name + ".yaml"
		h, findings, err := job.Load(file, job.Options{})
		if err != nil || h == nil {
			t.Errorf("%s: %v\n%s", name, err, listing(findings))
		}
	}
}
