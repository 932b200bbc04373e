package job_test

import (
	"fmt"
	"maps"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/job"
	"github.com/rogpeppe/go-internal/txtar"
)

// TestLayers reads every archive of testdata/layers, laid over base.txtar. `want` holds how
// the harness differs from that of the platform and the kit alone: lines that are new, and
// lines that are no more behind a minus. The case plain holds all of that one itself.
func TestLayers(t *testing.T) {
	base, err := txtar.ParseFile("testdata/layers/base.txtar")
	if err != nil {
		t.Fatal(err)
	}
	names, err := filepath.Glob("testdata/layers/*.txtar")
	if err != nil || len(names) < 2 {
		t.Fatalf("no cases: %v", err)
	}
	for _, name := range names {
		if filepath.Base(name) == "base.txtar" {
			continue
		}
		t.Run(strings.TrimSuffix(filepath.Base(name), ".txtar"), func(t *testing.T) {
			t.Parallel()
			testLayers(t, name, base)
		})
	}
}

func testLayers(t *testing.T, name string, base *txtar.Archive) {
	a, err := txtar.ParseFile(name)
	if err != nil {
		t.Fatal(err)
	}
	files := archiveFS(base, a)
	want := ""
	if f, ok := files["want"]; ok {
		want = string(f.Data)
		delete(files, "want")
	}
	h, findings, err := job.Load("job.yaml", job.Options{FS: files})
	if err != nil || h == nil {
		t.Fatalf("%v\n%s", err, listing(findings))
	}
	checkHarness(t, h)
	got := dump(h) + listing(findings)
	if !strings.HasSuffix(name, "plain.txtar") {
		plain := load(t, archiveFS(base, &txtar.Archive{Files: []txtar.File{{Name: "job.yaml", Data: []byte("job: T-1\nuse: [cart, kit]\n")}}}), "job.yaml")
		got = difference(dump(plain), got)
	}
	if *update {
		rewriteWant(t, name, a, got)
		return
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}

// dump writes what layers decide of a harness. Parts and wires that are as the platform
// had them are left out.
func dump(h *wiring.Harness) string {
	var b strings.Builder
	for _, p := range h.Parts {
		if p.Origin.Kind == wiring.PlatformLayer && len(p.Changed) == 0 {
			continue
		}
		fmt.Fprintf(&b, "part %s: %s", p.Designation, p.Kind.Name)
		for _, s := range []string{p.Title, p.Place, p.Note, p.Serial, p.AlwaysOn} {
			if s != "" {
				fmt.Fprintf(&b, ", %s", s)
			}
		}
		if p.Critical {
			b.WriteString(", critical")
		}
		for _, name := range slices.Sorted(maps.Keys(p.Ratings)) {
			if rating := p.Ratings[name]; rating.At.Known() {
				fmt.Fprintf(&b, ", %s %s", name, ratingText(rating))
			}
		}
		fmt.Fprintf(&b, "; %s\n", layerPath(p.Origin, p.Changed))
	}
	for _, w := range h.Wires {
		if w.Untouched() && !w.Interlock {
			continue
		}
		fmt.Fprintf(&b, "wire %s: %s; %s", w.Name(), wireLine(w), layerPath(w.Origin, w.Changed))
		for _, m := range w.Moved {
			side := "from"
			if m.To {
				side = "to"
			}
			fmt.Fprintf(&b, "; %s was %s until line %d of %s", side, m.Was, m.At.Line, m.By.File)
		}
		if w.Loom != "" {
			fmt.Fprintf(&b, "; loom %s", w.Loom)
		}
		if w.Interlock {
			b.WriteString("; interlock")
		}
		b.WriteString("\n")
	}
	for _, p := range h.Points {
		at := "none"
		if p.Terminal != nil {
			at = p.Terminal.Ref()
		}
		fmt.Fprintf(&b, "point %s: %s\n", p.Name, at)
	}
	for _, s := range h.Stacks {
		fmt.Fprintf(&b, "stack %s:", s.Terminal.Ref())
		for _, w := range s.Wires {
			b.WriteString(" " + w.Name())
		}
		b.WriteString("\n")
	}
	for _, s := range h.States {
		if !s.Stock {
			b.WriteString(dumpState(h, s))
		}
	}
	for _, terminal := range h.TestPoints {
		fmt.Fprintf(&b, "test point %s\n", terminal.Ref())
	}
	for _, w := range h.Waivers {
		fmt.Fprintf(&b, "waiver of %s at %s: %s\n", w.Rule, w.At, w.Reason)
	}
	for _, rev := range h.Identity.History {
		fmt.Fprintf(&b, "revision %s %s %s %s\n", rev.Index, rev.Date, rev.By, rev.Note)
	}
	fmt.Fprintf(&b, "identity %s: %s\n", h.Identity.Number, h.Identity.Title)
	for _, r := range h.Before {
		fmt.Fprintf(&b, "removed %s by %s, line %d", r.Part.Designation, r.By.File, r.At.Line)
		for _, w := range r.Wires {
			b.WriteString(" " + w.Name())
		}
		b.WriteString("\n")
	}
	for _, r := range h.BeforeWires {
		fmt.Fprintf(&b, "removed %s by %s, line %d: %s\n", r.Wire.Name(), r.By.File, r.At.Line, wireLine(r.Wire))
	}
	if il := h.Interlock; il != nil {
		fmt.Fprintf(&b, "interlock %s:", il.Kind)
		for _, w := range il.Wires {
			b.WriteString(" " + w.Name())
		}
		for _, terminal := range il.Terminals {
			b.WriteString(" " + terminal.Ref())
		}
		b.WriteString("\n")
	}
	return b.String()
}

func ratingText(r wiring.Rating) string {
	if r.Channel == nil {
		return r.Word
	}
	var words []string
	for _, n := range slices.Sorted(maps.Keys(r.Channel)) {
		words = append(words, fmt.Sprintf("%d: %s", n, r.Channel[n]))
	}
	return "{" + strings.Join(words, ", ") + "}"
}

func dumpState(h *wiring.Harness, s *wiring.State) string {
	var b strings.Builder
	fmt.Fprintf(&b, "state %s:", s.Name)
	for _, p := range h.Parts {
		for _, c := range p.Controls {
			if position, ok := s.Set[c]; ok {
				fmt.Fprintf(&b, " %s.%s %s", p.Designation, c.Name, position)
			}
		}
	}
	for _, e := range s.Expect {
		name := "traction"
		if e.Part != nil {
			name = e.Part.Designation
		}
		fmt.Fprintf(&b, "; expects %s %v", name, e.On)
	}
	if s.SOC != 0 {
		fmt.Fprintf(&b, "; soc %v", s.SOC)
	}
	if s.After != "" {
		fmt.Fprintf(&b, "; after %s", s.After)
	}
	return b.String() + "\n"
}

// difference lists the lines of b that a lacks, and those of a that b lacks behind a minus.
func difference(a, b string) string {
	in := func(text string) map[string]bool {
		lines := map[string]bool{}
		for _, line := range strings.SplitAfter(text, "\n") {
			lines[line] = true
		}
		return lines
	}
	inA, inB := in(a), in(b)
	var out strings.Builder
	for _, line := range strings.SplitAfter(a, "\n") {
		if !inB[line] {
			out.WriteString("- " + line)
		}
	}
	for _, line := range strings.SplitAfter(b, "\n") {
		if !inA[line] {
			out.WriteString(line)
		}
	}
	return out.String()
}

func layerPath(origin *wiring.Layer, changed []*wiring.Layer) string {
	path := origin.File
	for _, l := range changed {
		path += ", " + l.File
	}
	return path
}
