package job_test

import (
	"strings"
	"testing"
	"testing/fstest"

	"github.com/lugwright/lugwright/wiring/job"
)

const planned = `job: T
use: [48v-separately-excited, 16s-onboard-charger]
parts:
  E1: {kind: light-bar, power: 60 W}
wires:
  W71: {from: A1.1, to: E1.+, colour: OG, size: 14 AWG, length: 4 ft}
  W72: {from: E1.-, to: A1.n, colour: BK, size: 14 AWG, length: 4 ft}
`

// A cart is as it was built, and each wire that is not as planned remembers its plan.
func TestAsBuilt(t *testing.T) {
	files := fstest.MapFS{"job.yaml": {Data: []byte(planned + "as-built:\n  W71: {colour: BU, length: 3 ft}\n  W72: {to: X3.4}\n  T2.memory: {note: tied to the loom}\n")}}
	h, findings, err := job.Load("job.yaml", job.Options{FS: files})
	if err != nil || h == nil {
		t.Fatal(err, listing(findings))
	}
	cut := len(h.Wire("W71").Pieces) - 2 // the light bar's own lead is the last
	is, was := h.Wire("W71").Pieces[cut], h.Wire("W71").Planned.Pieces[cut]
	if is.Colour.String() != "BU" || is.Length.String() != "3 ft" || was.Colour.String() != "OG" || was.Length.String() != "4 ft" || is.Size != was.Size {
		t.Errorf("built %v %v, planned %v %v", is.Colour, is.Length, was.Colour, was.Length)
	}
	if w := h.Wire("W72"); w.To.String() != "X3.4" || w.Planned.To.String() != "A1.n" {
		t.Errorf("W72 is on %v, planned on %v", w.To, w.Planned.To)
	}
	if h.Wire("W64").Planned != nil {
		t.Error("W64 is as planned")
	}
	if w := h.Wire("W63"); w == nil || w.Planned == nil || w.Note == "" || w.Planned.Note != "" {
		t.Errorf("the lead T2.memory: %+v", w)
	}
}

func TestAsBuiltFaults(t *testing.T) {
	for text, want := range map[string]string{
		"as-built:\n  W99: {colour: BU}\n":                      "as-built: no wire W99",
		"as-built:\n  W71: {lenght: 3 ft}\n":                    "unknown key lenght in wire W71: did you mean length?",
		"as-built:\n  W71: {colour: BU}\n  w71: {colour: RD}\n": "w71",
	} {
		files := fstest.MapFS{"job.yaml": {Data: []byte(planned + text)}}
		h, findings, err := job.Load("job.yaml", job.Options{FS: files})
		if err != nil || h != nil || !strings.Contains(listing(findings), want) {
			t.Errorf("%s: %v, want %s", text, listing(findings), want)
		}
	}
}
