package sizing

import (
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// share is the part of the voltage that one wire may lose.
type share struct {
	perMetre float64        // volts a metre; 0: none is left
	length   quantity.Metre // of its pieces that are left to the program
	volts    quantity.Volt
}

// shareDrop divides what each consumer may lose, less what the stated wires and the
// switches of its way lose, among the lengths that are left to the program: once for the
// whole way, once for its return, which may lose no more than the smaller limit, since what
// is lost there shifts the negative of everything that shares it. A wire takes the least
// that any of its consumers leaves it; so no consumer loses more than it may.
func (f *filling) shareDrop(wires []*wiring.Wire) {
	f.drop = map[*wiring.Wire]share{}
	lengths := map[*wiring.Wire]quantity.Metre{}
	for _, w := range wires {
		if l, ok := autoLength(w); ok {
			lengths[w] = l
		}
	}
	limits := f.harness.Limits
	for _, c := range f.demand.circle {
		whole := limits.DropOther
		if c.critical {
			whole = limits.Drop
		}
		f.divide(c, whole, lengths, c.there, c.home)
		f.divide(c, min(whole, limits.Drop), lengths, c.home)
	}
}

// divide shares a limit among the open lengths of some legs of a consumer's way.
func (f *filling) divide(c circle, limit quantity.Ratio, lengths map[*wiring.Wire]quantity.Metre, legs ...leg) {
	if c.amps <= 0 || c.volts <= 0 {
		return
	}
	rest, total := float64(limit)*float64(c.volts), quantity.Metre(0)
	for _, l := range legs {
		rest -= float64(l.ohms) * float64(c.amps)
		for _, w := range l.wires {
			rest -= f.stated(w)
			total += lengths[w]
		}
	}
	for _, l := range legs {
		for _, w := range l.wires {

			if lengths[w] > 0 {
				f.least(w, share{perMetre: max(0, rest) / float64(total), length: lengths[w], volts: c.volts})
			}
		}
	}
}

// stated is what the pieces of a wire lose that state size and length.
func (f *filling) stated(w *wiring.Wire) float64 {
	volts := 0.0
	for _, p := range w.Pieces {
		if p.Auto || !p.Size.Known() || !p.Length.Known() {
			continue
		}
		if ohms, err := f.tables.Resistance(p.Size, p.Length.Metres(), f.harness.Assume.Conductor); err == nil {
			volts += float64(ohms) * float64(f.demand.wires[w])
		}
	}
	return volts
}

func (f *filling) least(w *wiring.Wire, s share) {
	if before, ok := f.drop[w]; !ok || s.perMetre < before.perMetre {
		f.drop[w] = s
	}
}

// autoLength is the length of a wire's pieces that are left to the program; false if one
// of them states none.
func autoLength(w *wiring.Wire) (total quantity.Metre, known bool) {
	for _, p := range w.Pieces {
		if !p.Auto {
			continue
		}
		if !p.Length.Known() {
			return 0, false
		}
		total += p.Length.Metres()
	}
	return total, total > 0
}
