package quantity

import "strings"

// unit is one unit of a dimension. A value in the dimension's own unit is the number as
// written, less zero, times factor.
type unit struct {
	name   string   // canonical
	also   []string // other spellings that are taken as they stand
	factor string   // exact, in decimals or as a ratio
	zero   string   // what the unit's zero is below the number: "32" for F; empty: 0
}

// dimension is what the parser knows of a Dimension.
type dimension struct {
	name   string
	units  []unit
	offer  []string            // units named when another dimension was written
	bare   []string            // units named when none was written
	traps  map[string][]string // other spellings, in small letters, and the units they could mean
	most   float64             // above this a value is a slip of the pen
	least  float64             // below this too; 0 for all but temperature
	signed bool
}

// Exact conversion factors: the inch and the pound are defined in metric units since
// 1959; the pound-force is the pound times standard gravity, 9.80665 m/s2 (1901).
const (
	inchMetre     = "0.0254"
	footMetre     = "0.3048"
	poundKilogram = "0.45359237"
	inchPound     = "0.1129848290276167" // N m: 0.45359237 x 9.80665 x 0.0254
	footPound     = "1.3558179483314004" // N m: twelve times that
)

// dimensions is indexed by Dimension. The largest values are our own: far above anything
// on a cart, low enough to catch a number with a key stuck.
var dimensions = [...]dimension{
	NoDimension: {name: "quantity"},
	Voltage: {name: "voltage", most: 1e5,
		units: []unit{
			{name: "V", also: []string{"volt", "volts"}, factor: "1"},
			{name: "mV", also: []string{"millivolt", "millivolts"}, factor: "1e-3"},
		},
		offer: []string{"V", "mV"}, bare: []string{"V"},
		traps: map[string][]string{"vdc": {"V"}, "v dc": {"V"}, "vac": {"V"}, "v ac": {"V"}}},
	Current: {name: "current", most: 1e6,
		units: []unit{
			{name: "A", also: []string{"amp", "amps", "ampere", "amperes"}, factor: "1"},
			{name: "mA", also: []string{"milliamp", "milliamps"}, factor: "1e-3"},
			{name: "uA", also: []string{"µA"}, factor: "1e-6"},
			{name: "kA", factor: "1e3"},
		},
		offer: []string{"A", "mA"}, bare: []string{"A", "mA"}},
	Resistance: {name: "resistance", most: 1e12,
		units: []unit{
			{name: "mohm", also: []string{"mOhm", "mohms", "mΩ", "milliohm", "milliohms"}, factor: "1e-3"},
			{name: "ohm", also: []string{"ohms", "Ω"}, factor: "1"},
			{name: "kohm", also: []string{"kOhm", "kohms", "kΩ", "kilohm", "kilohms"}, factor: "1e3"},
			{name: "Mohm", also: []string{"MOhm", "Mohms", "MΩ", "megohm", "megohms"}, factor: "1e6"},
		},
		offer: []string{"mohm", "ohm", "kohm", "Mohm"}, bare: []string{"mohm", "ohm", "kohm"},
		traps: map[string][]string{
			"mohm": {"mohm", "Mohm"}, "mohms": {"mohm", "Mohm"}, "m": {"mohm", "Mohm"},
			"k": {"kohm"}, "r": {"ohm"},
		}},
	Power: {name: "power", most: 1e7,
		units: []unit{
			{name: "W", also: []string{"watt", "watts"}, factor: "1"},
			{name: "kW", also: []string{"kilowatt", "kilowatts"}, factor: "1e3"},
			{name: "mW", also: []string{"milliwatt", "milliwatts"}, factor: "1e-3"},
		},
		offer: []string{"W", "kW"}, bare: []string{"W", "kW"}},
	Capacitance: {name: "capacitance", most: 1e3,
		units: []unit{
			{name: "uF", also: []string{"µF", "microfarad", "microfarads"}, factor: "1e-6"},
			{name: "mF", also: []string{"millifarad", "millifarads"}, factor: "1e-3"},
			{name: "F", also: []string{"farad", "farads"}, factor: "1"},
		},
		offer: []string{"uF", "mF"}, bare: []string{"uF", "mF"},
		traps: map[string][]string{"mf": {"uF", "mF"}, "mfd": {"uF", "mF"}}},
	Charge: {name: "charge", most: 1e6,
		units: []unit{
			{name: "Ah", also: []string{"amp hours", "amp-hours"}, factor: "1"},
			{name: "mAh", factor: "1e-3"},
		},
		offer: []string{"Ah", "mAh"}, bare: []string{"Ah", "mAh"}},
	Energy: {name: "energy", most: 1e9,
		units: []unit{
			{name: "Wh", also: []string{"watt hours", "watt-hours"}, factor: "1"},
			{name: "kWh", factor: "1e3"},
		},
		offer: []string{"Wh", "kWh"}, bare: []string{"Wh", "kWh"}},
	Length: {name: "length", most: 1e4,
		units: []unit{
			{name: "in", also: []string{`"`, "inch", "inches"}, factor: inchMetre},
			{name: "ft", also: []string{"'", "foot", "feet"}, factor: footMetre},
			{name: "mm", also: []string{"millimetre", "millimetres", "millimeter", "millimeters"}, factor: "1e-3"},
			{name: "cm", also: []string{"centimetre", "centimetres", "centimeter", "centimeters"}, factor: "1e-2"},
			{name: "m", also: []string{"metre", "metres", "meter", "meters"}, factor: "1"},
		},
		offer: []string{"in", "ft", "mm", "cm", "m"}, bare: []string{"in", "mm", "cm"}},
	Temperature: {name: "temperature", most: 3000, least: -273.15, signed: true,
		units: []unit{
			{name: "C", also: []string{"°C", "degC", "deg C", "Celsius"}, factor: "1"},
			{name: "F", also: []string{"°F", "degF", "deg F", "Fahrenheit"}, factor: "5/9", zero: "32"},
		},
		offer: []string{"C", "F"}, bare: []string{"C", "F"},
		traps: map[string][]string{"°": {"C", "F"}, "deg": {"C", "F"}}},
	Time: {name: "time", most: 1e9,
		units: []unit{
			{name: "s", also: []string{"sec", "secs", "second", "seconds"}, factor: "1"},
			{name: "ms", also: []string{"millisecond", "milliseconds"}, factor: "1e-3"},
			{name: "min", also: []string{"mins", "minute", "minutes"}, factor: "60"},
			{name: "h", also: []string{"hr", "hrs", "hour", "hours"}, factor: "3600"},
		},
		offer: []string{"s", "min", "h"}, bare: []string{"s", "min", "h"}},
	Torque: {name: "torque", most: 1e5,
		units: []unit{
			{name: "Nm", also: []string{"N m", "N·m", "N-m", "N.m"}, factor: "1"},
			{name: "in lb", also: []string{"in-lb", "in·lb", "in lbs", "in-lbs", "in lbf", "lb in", "inch pounds"}, factor: inchPound},
			{name: "ft lb", also: []string{"ft-lb", "ft·lb", "ft lbs", "ft-lbs", "ft lbf", "lb ft", "foot pounds"}, factor: footPound},
		},
		offer: []string{"Nm", "in lb", "ft lb"}, bare: []string{"Nm", "in lb", "ft lb"},
		traps: map[string][]string{"lb": {"in lb", "ft lb"}, "lbs": {"in lb", "ft lb"}}},
	Mass: {name: "mass", most: 1e5,
		units: []unit{
			{name: "kg", also: []string{"kilogram", "kilograms"}, factor: "1"},
			{name: "lb", also: []string{"lbs", "pound", "pounds"}, factor: poundKilogram},
		},
		offer: []string{"kg", "lb"}, bare: []string{"kg", "lb"}},
	Share: {name: "share", most: 100,
		units: []unit{
			{name: "%", also: []string{"percent", "per cent"}, factor: "1e-2"},
		},
		offer: []string{"%"}, bare: []string{"%"}},
}

// facts returns what the parser knows of d.
func (d Dimension) facts() *dimension {
	if int(d) >= len(dimensions) {
		return &dimensions[NoDimension]
	}
	return &dimensions[d]
}

// String returns the dimension's everyday name: "voltage", "share".
func (d Dimension) String() string { return d.facts().name }

// Units lists the units that the parser reads for d, in their canonical spelling.
func (d Dimension) Units() []string {
	names := make([]string, len(d.facts().units))
	for i, u := range d.facts().units {
		names[i] = u.name
	}
	return names
}

// AllDimensions lists the dimensions that the parser knows.
func AllDimensions() []Dimension {
	all := make([]Dimension, 0, len(dimensions)-1)
	for d := Voltage; int(d) < len(dimensions); d++ {
		all = append(all, d)
	}
	return all
}

// exactly finds the unit that has this very spelling.
func (d *dimension) exactly(spelling string) *unit {
	for i := range d.units {
		u := &d.units[i]
		if u.name == spelling {
			return u
		}
		for _, also := range u.also {
			if also == spelling {
				return u
			}
		}
	}
	return nil
}

// loosely finds the units that have this spelling if case does not count.
func (d *dimension) loosely(spelling string) []*unit {
	var found []*unit
	for i := range d.units {
		u := &d.units[i]
		for _, s := range append([]string{u.name}, u.also...) {
			if strings.EqualFold(s, spelling) {
				found = append(found, u)
				break
			}
		}
	}
	return found
}

// has reports whether a spelling is a unit of the dimension, case forgiven.
func (d *dimension) has(spelling string) bool {
	return spelling != "" && (d.exactly(spelling) != nil || len(d.loosely(spelling)) > 0)
}
