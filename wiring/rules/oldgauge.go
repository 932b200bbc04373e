package rules

import (
	"fmt"
	"math"
	"strings"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/handbook"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/rule"
)

func oldGauge() *rule.Rule {
	return &rule.Rule{
		ID:    "old-gauge",
		Title: "a gauge that reads charge from voltage is made for the chemistry that it hangs on",
		Level: diag.Warning,
		Why: "A rested lead-acid string of 48 V falls from 50.9 V full to 46.5 V at a tenth; a 16S LFP pack stays above 51 V until it is " +
			"nearly empty. The old gauge therefore shows full until a few minutes before the pack switches itself off, and the driver walks home.",
		Do: "Take the old gauge out and fit a meter that counts ampere-hours, or the pack's own display. A bare voltmeter is honest too: it claims nothing.",
		Source: "Rest voltages: LFP from memory (follow the maker), lead-acid of a public inverter manual; that the gauge misleads: common practice, " +
			"no published source.",
		Wrong: `parts:
  P11: {kind: meter-voltage, title: old gauge, place: dash}
wires:
  W101: {from: X13, to: P11.+, colour: YE, size: 18 AWG, length: 12 in}
  W102: {from: P11.-, to: X3.5, colour: BK, size: 18 AWG, length: 8 ft}
`,
		Right: `parts:
  P11: {kind: voltmeter, place: dash}
wires:
  W101: {from: X13, to: P11.+, colour: YE, size: 18 AWG, length: 12 in}
  W102: {from: P11.-, to: X3.5, colour: BK, size: 18 AWG, length: 8 ft}
`,
		Run: runOldGauge,
	}
}

func runOldGauge(p *rule.Pass) {
	for _, gauge := range elementsOf[*wiring.Load](p.Harness) {
		if gauge.Reads == "" {
			continue
		}
		s := batteryAt(p, gauge.A)
		if s == nil {
			continue
		}
		source := s.Element.(*wiring.Source)
		switch {
		case source.Chemistry == "":
			p.NotChecked(gauge.Part.Designation, fmt.Sprintf("%s does not say of what chemistry it is", source.Part.Designation), gauge.Part.At)
		case !strings.EqualFold(gauge.Reads, source.Chemistry):
			reportGauge(p, gauge, source)
		}
	}
}

// nearlyEmpty is the charge at which it is told what a gauge shows.
const nearlyEmpty = 0.2

func reportGauge(p *rule.Pass, gauge *wiring.Load, source *wiring.Source) {
	f := diag.Finding{
		Message:  fmt.Sprintf("%s reads the voltage of %s and hangs on %s, which is %s", titled(gauge.Part), gauge.Reads, source.Part.Designation, source.Chemistry),
		Advice:   "Take it out, and fit a meter that counts ampere-hours or comes with the pack.",
		At:       gauge.Part.At,
		Related:  defined(source.Part.Designation, source.Part.At),
		Subjects: []string{gauge.Part.Designation, source.Part.Designation},
	}
	if v, shown, ok := misread(p.Handbook, gauge.Reads, source); ok {
		f.Detail = fmt.Sprintf("With %v left %s rests at %s, which it shows as %.0f %%.", quantity.Ratio(nearlyEmpty), source.Part.Designation, volts(v), 100*float64(shown))
	}
	p.Report(f)
}

// misread is the rested voltage of a nearly empty pack, and what a gauge of another
// chemistry shows for it. false where the handbook lacks a chemistry.
func misread(t *handbook.Tables, reads string, source *wiring.Source) (v quantity.Volt, shown quantity.Ratio, ok bool) {
	pack, err := t.Pack(source.Chemistry, source.Cells)
	if err != nil {
		return 0, 0, false
	}
	one, err := t.Pack(reads, 1)
	if err != nil {
		return 0, 0, false
	}
	cells := float64(pack.Nominal()) / float64(one.Nominal())
	if strings.EqualFold(reads, "lead-acid") {
		cells = 6 * math.Round(cells/6/1.05) // gauges are made for 36, 48, 72 V; LFP packs of that name stand 0 to 7 % above
	}
	made, err := t.Pack(reads, int(math.Round(cells)))
	if err != nil {
		return 0, 0, false
	}
	v = pack.RestVolts(nearlyEmpty)
	return v, made.ChargeAt(v), true
}
