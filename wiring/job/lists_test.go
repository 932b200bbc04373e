package job_test

import (
	"bytes"
	"fmt"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/google/go-cmp/cmp"
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/job"
	"pgregory.net/rapid"
)

// listed is what of a wire a list must keep.
func listed(ws []*wiring.Wire) []string {
	lines := make([]string, len(ws))
	for i, w := range ws {
		lines[i] = fmt.Sprintf("%s %s; %v %v; %q %q %q; %v %v", w.Name(), wireLine(w), w.Insulation, w.Volts, w.Loom, w.For, w.Note, w.From.Stated, w.To.Stated)
	}
	return lines
}

// partsOnly is a job of the same parts without wires, in which a list is all there is.
const partsOnly = `job: L-1
use: [list.csv]
assume: {volts: 60 V}
looms: {main loom: {cover: tape}, "=SUM(A1)": {cover: tape}}
parts:
  A1: {kind: fuse-block}
  T2..T3: {kind: reducer}
  S6..S9: {kind: rocker}
  X5: {kind: splice}
  X1: {kind: inlet-ac}
  T1: {kind: charger-onboard}
`

// TestWriteCSVReadsBack draws wires of every shape, writes them as a list, reads the list
// and compares.
func TestWriteCSVReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		yaml := strings.Replace(partsOnly, "use: [list.csv]\n", "", 1) + "wires:\n" + drawWires(t)
		first, findings, err := job.Load("job.yaml", job.Options{FS: fstest.MapFS{"job.yaml": {Data: []byte(yaml)}}})
		if err != nil || first == nil {
			t.Fatalf("%v\n%s\n%s", err, listing(findings), yaml)
		}
		var list bytes.Buffer
		if err := job.WriteCSV(&list, first.Wires); err != nil {
			t.Fatal(err)
		}
		for _, line := range strings.Split(list.String(), "\n") {
			for _, cell := range strings.Split(line, ",") {
				if cell = strings.TrimPrefix(cell, `"`); cell != "" && strings.ContainsRune("=+-@\t", rune(cell[0])) {
					t.Fatalf("a spreadsheet would compute %s in\n%s", cell, line)
				}
			}
		}
		second, findings, err := job.Load("job.yaml", job.Options{FS: fstest.MapFS{
			"job.yaml": {Data: []byte(partsOnly)}, "list.csv": {Data: list.Bytes()},
		}})
		if err != nil || second == nil {
			t.Fatalf("%v\n%s\n%s", err, listing(findings), list.String())
		}
		if diff := cmp.Diff(listed(first.Wires), listed(second.Wires)); diff != "" {
			t.Fatalf("read back (-want +got):\n%s\n%s", diff, list.String())
		}
	})
}

// drawWires draws the wires of a job over partsOnly. Every lead and every spade is used at
// most once.
func drawWires(t *rapid.T) string {
	ends := []string{"A1.1", "A1.2", "A1.n", "A1.+", "S6.in", "S7.out", "S8.in", "S9.out", "X5", "T2.in+", "T2.in-", "T2.out", "T2.enable", "T3.memory", "T3.enable", "T1.lock-a", "T1.+"}
	isLead := func(ref string) bool { return strings.HasPrefix(ref, "T") }
	text := rapid.SampledFrom([]string{"", "=SUM(A1)", "+12", "-", "@x", "it's", "'quoted'", `14" of it`, "a, b", "a; b", "# no comment", "  x", "interlock", "née", "two  blanks"})
	var b strings.Builder
	order := rapid.Permutation(ends).Draw(t, "order")
	n := rapid.IntRange(0, 7).Draw(t, "wires")
	for i := 0; i < n; i++ {
		from, to := order[2*i], order[2*i+1]
		if rapid.IntRange(0, 4).Draw(t, "capped") == 0 {
			to = "capped"
		}
		lead := isLead(from) || isLead(to)
		number := fmt.Sprintf("W%d", 70+i)
		if isLead(from) && rapid.Bool().Draw(t, "unnumbered") {
			number = from
		}
		fmt.Fprintf(&b, "  %s: {to: %s", number, to)
		if number != from {
			fmt.Fprintf(&b, ", from: %s", from)
		}
		if capped := to == "capped" && lead; !capped && (!lead || rapid.Bool().Draw(t, "joined")) {
			b.WriteString(drawPiece(t, ", "))
		}
		drawExtend(t, &b)
		for _, key := range []string{"note", "for"} {
			if s := strings.TrimSpace(text.Draw(t, key)); s != "" {
				fmt.Fprintf(&b, ", %s: %q", key, s)
			}
		}
		for _, extra := range []string{"joint: solder", "insulation: 200 F", "insulation: 125 C", "volts: 600 V", "from-lug: ring M6", "to-lug: none", "loom: main loom", `loom: "=SUM(A1)"`} {
			key, _, _ := strings.Cut(extra, ":")
			if !strings.Contains(b.String()[strings.LastIndexByte(b.String(), '\n')+1:], key+":") && rapid.IntRange(0, 5).Draw(t, key) == 0 {
				b.WriteString(", " + extra)
			}
		}
		b.WriteString("}\n")
	}
	if rapid.Bool().Draw(t, "cord") {
		b.WriteString("  W90: {from: X1.ac, to: T1.ac, colour: BK, size: 14 AWG}\n")
	}
	if b.Len() == 0 {
		return "  X5.s: {to: capped}\n"[:0] + "  W99: {from: A1.5, to: A1.6}\n"
	}
	return b.String()
}

func drawPiece(t *rapid.T, before string) string {
	colour := rapid.SampledFrom([]string{"RD", "BK/YE", "GNYE", "LBU", "bare"}).Draw(t, "colour")
	size := rapid.SampledFrom([]string{"14 AWG", "2/0 AWG", "35 mm2", "10 SAE", "auto", "2.5 mm2"}).Draw(t, "size")
	s := fmt.Sprintf("%scolour: %s, size: %s", before, colour, size)
	if length := rapid.SampledFrom([]string{"", "14 in", "4 ft 6 in", "about 1.2 m", "1-1/8 in", "40 mm"}).Draw(t, "length"); length != "" {
		s += ", length: " + length
	}
	return s
}

func drawExtend(t *rapid.T, b *strings.Builder) {
	n := rapid.IntRange(0, 3).Draw(t, "pieces")
	if n == 0 {
		return
	}
	b.WriteString(", extend: [")
	for i := 0; i < n; i++ {
		if i > 0 {
			b.WriteString(", ")
		}
		b.WriteString("{" + drawPiece(t, ""))
		if at := rapid.SampledFrom([]string{"", "from", "to"}).Draw(t, "at"); at != "" {
			b.WriteString(", at: " + at)
		}
		b.WriteString("}")
	}
	b.WriteString("]")
}
