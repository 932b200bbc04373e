package catalog

import (
	"math"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/handbook"
)

// Shipped fuses are rated as their class in the handbook's table, which names its source
// for each: ISO 8820 parts 3, 5 and 6, UL 248-15, IEC 60269-6.
func TestFusesAgainstHandbook(t *testing.T) {
	tables := handbook.Default()
	for _, name := range []string{"fuse-blade", "fuse-sf30", "fuse-sf51", "fuse-class-t", "fuse-10x38", "fuse-single-bolt"} {
		_, p := build(t, name)
		f := p.Elements[0].(*wiring.Fuse)
		classes := tables.FuseClasses(f.Style)
		if len(classes) == 0 {
			t.Errorf("%s: the handbook knows no style %q", name, f.Style)
			continue
		}
		c := classes[0]
		if f.Breaks != c.Breaks {
			t.Errorf("%s breaks %v, its class %v", name, f.Breaks, c.Breaks)
		}
		// SF51 exists for 58 and 70 V too, as the table notes; the kind is the one for carts.
		if name != "fuse-sf51" && (f.Volts < c.Lowest() || f.Volts > c.Highest()) {
			t.Errorf("%s is for %v, its class for %v", name, f.Volts, c.Volts)
		}
	}
}

// Chemistries of the catalogue are those of the handbook.
func TestSourcesAgainstHandbook(t *testing.T) {
	for _, name := range []string{"pack-lfp", "battery-lead-acid", "battery-auxiliary"} {
		_, p := build(t, name)
		s := p.Elements[slices.IndexFunc(p.Elements, func(e wiring.Element) bool { return e.Type() == "source" })].(*wiring.Source)
		if _, err := handbook.Default().Pack(s.Chemistry, s.Cells); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// The figures of the four cart families that the kinds take as their defaults: invented,
// rounded, typical, and the same in the examples and in the reference circuits.
func TestFamilyFigures(t *testing.T) {
	type figures map[string]float64
	tests := []struct {
		kind string
		want figures
	}{
		{"solenoid", figures{"coil ohms": 150, "pull-in": 30, "drop-out": 10, "contact ohms": 0.0003}},
		{"solenoid-36v", figures{"coil ohms": 85, "pull-in": 22.5, "drop-out": 7.5, "contact ohms": 0.0003}},
		{"solenoid-12v", figures{"coil ohms": 10, "pull-in": 7.5, "drop-out": 2.5, "contact ohms": 0.0003}},
		{"controller-separately-excited", figures{"farads": 0.0047, "bleed": 10e3, "logic": 500}},
		{"controller-series", figures{"farads": 0.0033, "bleed": 10e3, "logic": 660}},
		{"controller-ac", figures{"farads": 0.010, "bleed": 10e3, "logic": 450}},
		{"controller-ac-12v", figures{"farads": 0.0068, "bleed": 10e3, "logic": 40}},
		{"reducer", figures{"volts": 12.5, "amps": 25, "low": 30, "high": 64, "enable on": 9, "enable off": 5, "enable ohms": 100e3, "off draw": 0.008}},
		{"pack-lfp", figures{"trips": 350, "discharge": 150, "own draw": 0.015}},
		{"charger-onboard", figures{"amps": 18, "end": 58.4, "bleed": 27e3}},
		{"brake-electric", figures{"load ohms": 96}},
	}
	for _, test := range tests {
		t.Run(test.kind, func(t *testing.T) {
			_, p := build(t, test.kind)
			got := figures{}
			for _, e := range p.Elements {
				collect(got, e)
			}
			for what := range got {
				if _, asked := test.want[what]; !asked {
					delete(got, what)
				}
			}
			near := cmp.Comparer(func(x, y float64) bool { return math.Abs(x-y) <= 1e-9*math.Abs(x) })
			if diff := cmp.Diff(test.want, got, near); diff != "" {
				t.Errorf("(-want +got)\n%s", diff)
			}
		})
	}
}

// collect notes the figures of an element that the families speak of.
func collect(f map[string]float64, e wiring.Element) {
	switch e := e.(type) {
	case *wiring.Coil:
		f["coil ohms"], f["pull-in"], f["drop-out"] = float64(e.Ohms), float64(e.PullIn), float64(e.DropOut)
	case *wiring.Contact:
		f["contact ohms"] = float64(e.Ohms)
	case *wiring.Capacitor:
		f["farads"] = float64(e.Farads)
	case *wiring.Resistor:
		f[e.Name] = float64(e.Ohms)
	case *wiring.Load:
		switch e.Name {
		case "logic":
			f["logic"] = float64(e.Ohms)
		case "protection":
			f["own draw"] = float64(e.Amps)
		default:
			f["load ohms"] = float64(e.Ohms)
		}
	case *wiring.Source:
		f["trips"], f["discharge"] = float64(e.Trips), float64(e.Discharge)
	case *wiring.Charger:
		f["amps"], f["end"] = float64(e.Amps), float64(e.End)
	case *wiring.Sense:
		if e.Name == "enable" {
			f["enable on"], f["enable off"], f["enable ohms"] = float64(e.Above), float64(e.Back), float64(e.Ohms)
		}
	case *wiring.Converter:
		switch e.Name {
		case "main":
			f["volts"], f["amps"], f["low"], f["high"] = float64(e.Volts), float64(e.Amps), float64(e.Works.Low), float64(e.Works.High)
			f["off draw"] += float64(e.Standby)
		case "memory":
			f["off draw"] += float64(e.Idle)
		}
	}
}
