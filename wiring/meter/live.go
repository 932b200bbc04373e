package meter

import "github.com/lugwright/lugwright/wiring/path"

// OffStates lists the names of the built-in states in which the main switch of a cart is
// off, key or tow switch, while its battery is on.
func OffStates() []string { return []string{"key off", "tow"} }

// Live is a place that has voltage, and what feeds it.
type Live struct {
	Spot
	Reading Reading
	Feed    path.Path
	Behind  []path.Path // see [Trace]
}

// Live lists every place on the cart that has voltage, by part. Asked of a sheet of one of
// the [OffStates] it says what stays live with the main switch off.
func (s *Sheet) Live() []Live {
	var all []Live
	for _, spot := range s.bench.Terminals() {
		t := s.Trace(spot.Node)
		if t.Verdict == Fed && present(t.Reading.Volts) {
			all = append(all, Live{Spot: spot, Reading: t.Reading, Feed: t.Feed, Behind: t.Behind})
		}
	}
	return all
}
