package handbook

import "github.com/lugwright/lugwright/wiring/quantity"

// HighestFuse returns the highest rating that may protect a conductor of some ampacity in
// a circuit of a nominal voltage: 150 % of the ampacity below 50 V; from 50 V up the
// ampacity itself or, where the series lacks that rating, the next rating up, but never
// over 150 %.
//
// Source: 33 CFR 183.455(c); read. Heat does not know 48.0 from 51.2 V: rules that want
// the stricter clause at every voltage pass the fuse line, [Tables.FuseLine].
func (t *Tables) HighestFuse(ampacity quantity.Ampere, nominal quantity.Volt, series FuseSeries) quantity.Ampere {
	if nominal < t.FuseLine() {
		return t.share("fuse-share-low", ampacity)
	}
	limit := t.share("fuse-share-high", ampacity)
	if next, ok := series.AtLeast(limit); ok && next <= t.share("fuse-share-most", ampacity) {
		return next
	}
	return limit
}

func (t *Tables) share(limit string, amps quantity.Ampere) quantity.Ampere {
	return quantity.Ampere(float64(t.limit(limit).Amount.Ratio()) * float64(amps))
}

// LargestContinuous returns the continuous current (over ten minutes) that a fuse should
// be given at an ambient: 80 % of its rating, 72 % above 45 C. Common practice, no
// published source.
func (t *Tables) LargestContinuous(rating quantity.Ampere, ambient quantity.Celsius) quantity.Ampere {
	if ambient > t.limit("fuse-hot-line").Amount.Celsius() {
		return t.share("fuse-load-hot", rating)
	}
	return t.share("fuse-load", rating)
}
