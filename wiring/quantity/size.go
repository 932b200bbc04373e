package quantity

// SizeSystem says which standard a conductor size is counted in.
type SizeSystem uint8

// AWG and SAE gauges of the same number are different amounts of copper.
const (
	NoSystem SizeSystem = iota
	AWG                 // American wire gauge, ASTM B258
	SAE                 // SAE J1127/J1128 gauge: 3 to 11 % less copper than AWG
	MM2                 // square millimetres, IEC 60228
	KCMIL               // thousand circular mils
)

// Size is a conductor size as it is marked on the wire. It is comparable; the zero Size
// means "not stated". The handbook says how much copper it is.
type Size struct {
	System SizeSystem
	Number float64 // AWG and SAE: the gauge number, 0 for 1/0, -1 for 2/0, -2 for 3/0, -3 for 4/0; MM2: mm2; KCMIL: kcmil
}

// Known reports whether a size was stated.
func (s Size) Known() bool { return s.System != NoSystem }
