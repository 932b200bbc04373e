package rules

import (
	"fmt"
	"math"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/handbook"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/rule"
	"github.com/lugwright/lugwright/wiring/settle"
)

func wireCarriesLoad() *rule.Rule {
	return &rule.Rule{
		ID:    "wire-carries-load",
		Title: "no wire carries more than its ampacity, for long or for the time of a peak",
		Level: diag.Error,
		Why: "A fuse protects a wire against a short, not against a load that is a little too large for years: 16 AWG of 75 C insulation may carry some 13 A at 40 C, and 20 A " +
			"through it under a seat cook the insulation within a season. Motor cables are sized by the motor's current, which at low speed is a multiple of the battery's.",
		Do: "Lay a larger wire, or one whose insulation stands more, or keep it out of the hot bundle.",
		Source: "Ampacity: 33 CFR 183.425 Table 5, by insulation, ambient and bundle. Peaks of t seconds: I / sqrt(1 - exp(-t / tau)), tau from the heat of the copper alone " +
			"over a rise of 75 K; computed.",
		Wrong: `parts:
  A1: {fuses: {4: 30 A}}
  X6: {kind: power-socket, amps: 20 A, place: dash}
wires:
  W91: {from: A1.4, to: X6.+, colour: RD, size: 16 AWG, length: 2 ft}
  W92: {from: X6.-, to: A1.n, colour: BK, size: 10 AWG, length: 2 ft}
`,
		Right: `parts:
  A1: {fuses: {4: 30 A}}
  X6: {kind: power-socket, amps: 20 A, place: dash}
wires:
  W91: {from: A1.4, to: X6.+, colour: RD, size: 10 AWG, length: 2 ft}
  W92: {from: X6.-, to: A1.n, colour: BK, size: 10 AWG, length: 2 ft}
`,
		Run: runWireCarriesLoad,
	}
}

// worthChecking is the current below which a wire of unknown size is let pass: any wire that
// is sold carries it. Our own choice.
const worthChecking = quantity.Ampere(1)

func runWireCarriesLoad(p *rule.Pass) {
	loads := make([]wireLoad, len(p.Harness.Wires))
	motors := motorPeaks(p)
	p.SweepSteady(func(s *wiring.State, c rule.Charge, at *settle.Point) {
		circuits := motorCircuits(p, motors, s, at)
		for i, w := range p.Harness.Wires {
			if !w.Cord() {
				loads[i].see(w, s, c, at, circuits)
			}
		}
	})
	bundled := bundles(p)
	for i, w := range p.Harness.Wires {
		loads[i].judge(p, w, bundled[w.Loom])
	}
}

// wireLoad is what one wire carries for long, and at the peak of a motor.
type wireLoad struct {
	steady carried
	peak   carried
	lasts  quantity.Second
	motor  string
}

func (l *wireLoad) see(w *wiring.Wire, s *wiring.State, c rule.Charge, at *settle.Point, circuits []motorCircuit) {
	amps := at.WireAmps(w, 0)
	l.steady.note(amps, s, c)
	for _, m := range circuits {
		if !m.wires[w] {
			continue
		}
		if peak := m.through(amps, m.taken(at), leadsTo(w, m.motor)); peak > l.peak.amps {
			l.peak.note(peak, s, c)
			l.lasts, l.motor = m.lasts, m.motor.Designation
		}
	}
}

// leadsTo reports whether a wire lands on a part.
func leadsTo(w *wiring.Wire, part *wiring.Part) bool {
	for _, e := range w.Ends() {
		if e.Terminal != nil && e.Terminal.Part == part {
			return true
		}
	}
	return false
}

func (l *wireLoad) judge(p *rule.Pass, w *wiring.Wire, bundled int) {
	if l.steady.amps < worthChecking && l.peak.amps < worthChecking {
		return
	}
	for _, piece := range w.Pieces {
		if piece.Auto {
			continue
		}
		if !piece.Size.Known() {
			p.NotChecked(w.Name(), fmt.Sprintf("it has no size, and carries %s", tenth(l.steady.amps)), w.Span("size"))
			return
		}
		c, err := pieceCarries(p, w, piece.Size, bundled)
		if err != nil {
			p.NotChecked(w.Name(), err.Error(), pieceSpan(w, piece))
			return
		}
		if l.weigh(p, w, piece, c) {
			return
		}
	}
}

// weigh reports a piece that carries too much, for long or at a peak.
func (l *wireLoad) weigh(p *rule.Pass, w *wiring.Wire, piece wiring.Piece, c carries) bool {
	if float64(l.steady.amps) > nearly*float64(c.amps) {
		l.report(p, w, piece, c, l.steady, c.amps, "for long")
		return true
	}
	tau, err := p.Handbook.HeatingTime(piece.Size)
	if l.peak.amps <= 0 || l.lasts <= 0 || err != nil {
		return false
	}
	if most := handbook.ShortTime(c.amps, tau, l.lasts); float64(l.peak.amps) > nearly*float64(most) {
		l.report(p, w, piece, c, l.peak, most, fmt.Sprintf("for %v at the peak of %s", l.lasts, l.motor))
		return true
	}
	return false
}

// nearly is the share of what a wire may carry from which it is worth a note.
const nearly = 0.9

func (l *wireLoad) report(p *rule.Pass, w *wiring.Wire, piece wiring.Piece, c carries, load carried, most quantity.Ampere, long string) {
	f := diag.Finding{
		Message: fmt.Sprintf("%s carries %s %s, and may carry %s", w.Name(), tenth(load.amps), long, tenth(most)),
		Detail:  fmt.Sprintf("Its %s is %v: %s for ever (%s). Worst %s.", pieceWord(piece), piece.Size, tenth(c.amps), c.basis, load.where),
		Advice:  "Lay a larger wire.", At: pieceSpan(w, piece), Related: defined(w.Name(), w.At),
		Subjects: subjects([]string{w.Name(), w.From.String(), w.To.String()}), States: []string{load.state},
	}
	if float64(load.amps) <= rounded*float64(most) {
		f.Level = diag.Note
		f.Message = fmt.Sprintf("%s carries %s %s, within a tenth of the %s that it may", w.Name(), tenth(load.amps), long, tenth(most))
		f.Advice = "Nothing need be done; the next load on it is too much."
	}
	if size, ok := largerFor(p, w, load.amps/most*c.amps); ok && f.Level == 0 {
		f.Advice = fmt.Sprintf("Lay %v or larger.", size)
	}
	f.Subjects = knownSubjects(p, f.Subjects)
	p.Report(f)
}

// largerFor is the thinnest standard size that may carry a current where a wire lies.
func largerFor(p *rule.Pass, w *wiring.Wire, amps quantity.Ampere) (quantity.Size, bool) {
	for _, size := range handbook.StandardSizes() {
		if c, err := pieceCarries(p, w, size, 0); err == nil && !c.thin && !math.Signbit(float64(c.amps-amps)) {
			return size, true
		}
	}
	return quantity.Size{}, false
}

// knownSubjects keeps what is a wire, a part or a terminal: an end may be capped.
func knownSubjects(p *rule.Pass, names []string) []string {
	var known []string
	for _, n := range names {
		if p.Harness.Wire(n) != nil || p.Harness.Part(n) != nil || p.Harness.Terminal(n) != nil {
			known = append(known, n)
		}
	}
	return known
}
