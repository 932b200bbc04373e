package job

import (
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/source"
)

// defaultLimits are common practice in this trade; the drop limits are those of ABYC E-11
// and the distance that of 33 CFR 183.460, both from memory.
func defaultLimits() wiring.Limits {
	return wiring.Limits{
		Drop: 0.03, DropOther: 0.10, FuseDistance: quantity.Inches(7), KeyOff: 0.030, Lugs: 4,
	}
}

// defaultAssume holds values of our own choice: an under-seat box is warmer than the 30 C
// of the ampacity tables, and insulation that nobody stated is not assumed to be good.
func defaultAssume() wiring.Assume {
	return wiring.Assume{
		Ambient: 40, Volts: 60, Slack: quantity.Inches(12), SOC: 0.80, Conductor: 20,
	}
}

// limitsAndAssume merges both, key by key, over what holds where nothing is said.
func (r *reading) limitsAndAssume() {
	r.h.Limits, r.h.Assume = defaultLimits(), defaultAssume()
	for _, l := range r.layers {
		if n := l.get("limits"); n != nil {
			r.readLimits(r.fields(n, limitKeys, "in limits"))
		}
		if n := l.get("assume"); n != nil {
			r.readAssume(r.fields(n, assumeKeys, "in assume"))
		}
	}
}

func (r *reading) readLimits(f map[string]source.Entry) {
	limits := &r.h.Limits
	put(r, f, "drop", quantity.Share, &limits.Drop)
	put(r, f, "drop-other", quantity.Share, &limits.DropOther)
	put(r, f, "fuse-distance", quantity.Length, &limits.FuseDistance)
	put(r, f, "key-off", quantity.Current, &limits.KeyOff)
	if e, ok := f["lugs"]; ok {
		if n := r.whole(e.Value, "lugs"); n > 0 {
			limits.Lugs = n
		}
	}
}

func (r *reading) readAssume(f map[string]source.Entry) {
	assume := &r.h.Assume
	put(r, f, "ambient", quantity.Temperature, &assume.Ambient)
	put(r, f, "insulation", quantity.Temperature, &assume.Insulation)
	put(r, f, "volts", quantity.Voltage, &assume.Volts)
	put(r, f, "slack", quantity.Length, &assume.Slack)
	put(r, f, "soc", quantity.Share, &assume.SOC)
	put(r, f, "conductor", quantity.Temperature, &assume.Conductor)
}

// put reads a quantity into a typed field, if the key is there.
func put[T ~float64](r *reading, f map[string]source.Entry, key string, d quantity.Dimension, field *T) {
	e, ok := f[key]
	if !ok {
		return
	}
	if a := r.amount(e.Value, key, d); a.Known() {
		*field = T(a.Value)
	}
}
