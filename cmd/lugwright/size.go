package main

import (
	"github.com/spf13/pflag"

	"github.com/lugwright/lugwright/render/report"
	"github.com/lugwright/lugwright/wiring/handbook"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/sizing"
)

type sizeOptions struct {
	amps, watts, length, loop, volts, drop quantity.Amount
	insulation, ambient, conductor, rating quantity.Amount
	size                                   quantity.Size
	bundle                                 int
	sheathed, cord                         bool
	copper, style, output                  string
}

func sizeCommand() *command {
	var o sizeOptions
	return &command{
		name:  "size",
		short: "choose the conductor and the fuse of a run",
		long: `Says which conductor and which fuse a current needs: the thinnest stocked size that the fuse
protects, that loses no more than it may on the way out and back, and that is not thinner
than the smallest that is run; and which row of which table decided. A job that says
"size: auto" or "rating: auto" is filled by the same choice.

With --size or --rating it judges what is there: exit code 1 if that does not do. With
--cord it looks up the extension cord of a charger instead.

Boat and aircraft rules do not bind a cart: they are yardsticks. Follow the maker and local
code where they ask for more.`,
		examples: []string{
			"lugwright size --amps '10 A' --length '12 ft' --volts '12 V'",
			"lugwright size --amps '25 A' --length '6 ft' --drop '3 %' --ambient '50 C' --bundle 4",
			"lugwright size --amps '20 A' --loop '50 ft' --volts '28 V' --drop '3.5 %' --copper aircraft",
			"lugwright size --cord --amps '9.7 A' --length '50 ft'",
		},
		flags: func(set *pflag.FlagSet) { flagsOfSize(set, &o) },
		run:   func(c *call) exit { return runSize(c, o) },
	}
}

func flagsOfSize(set *pflag.FlagSet, o *sizeOptions) {
	flagAmount(set, &o.amps, "amps", "", "10 A", "current, for as long as it is on", quantity.Current)
	flagAmount(set, &o.watts, "watts", "", "60 W", "power instead of a current", quantity.Power)
	flagAmount(set, &o.volts, "volts", "12 V", "51.2 V", "nominal voltage of the circuit", quantity.Voltage)
	flagAmount(set, &o.length, "length", "", "4 ft 6 in", "length of the run one way; the return is counted as long", quantity.Length)
	flagAmount(set, &o.loop, "loop", "", "21 ft", "length there and back instead", quantity.Length)
	flagAmount(set, &o.drop, "drop", "10 %", "3 %", "share of the voltage that may be lost", quantity.Share)
	flagAmount(set, &o.insulation, "insulation", "", "105 C", "rating of the insulation, as printed on the wire; else 75 C is taken", quantity.Temperature)
	flagAmount(set, &o.ambient, "ambient", "40 C", "50 C", "how hot it gets where the run lies", quantity.Temperature)
	set.IntVar(&o.bundle, "bundle", 1, "`conductors` in its bundle that carry current")
	set.BoolVar(&o.sheathed, "sheathed", false, "it runs inside a sheath")
	set.StringVar(&o.style, "style", "", "`class` of the fuse: blade, 10x38, class T, ...; else by voltage and current")
	set.Var(sizeFlag{&o.size}, "size", "conductor that is there already, to be judged")
	flagAmount(set, &o.rating, "rating", "", "15 A", "fuse that is there already", quantity.Current)
	flagChoice(set, &o.copper, "copper", "figures for its resistance: annealed copper, AC 43.13-1B Table 11-9, K 10.75, K 12.9",
		"annealed", "aircraft", "boat", "trade")
	flagAmount(set, &o.conductor, "conductor", "20 C", "75 C", "temperature of annealed copper", quantity.Temperature)
	set.BoolVar(&o.cord, "cord", false, "the extension cord of a charger, by its AC input current")
	flagChoice(set, &o.output, "output", "form of the answer", "text", "json")
}

func runSize(c *call, o sizeOptions) exit {
	amps, fault := o.current()
	if fault != "" {
		return badCall(c, fault)
	}
	if o.cord {
		return runCord(c, o, amps)
	}
	choice, err := sizing.Choose(nil, o.run(amps))
	if err != nil {
		return c.refuse("%v", err)
	}
	// A write error is remembered by the stream.
	if o.output == "json" {
		_ = report.ChoiceJSON(c.stdout, report.Choice{Version: version, Choice: choice})
	} else {
		_ = report.ChoiceText(c.stdout, report.Choice{Version: version, Choice: choice}, c.textOptions(c.stdout))
	}
	if len(choice.Faults) > 0 {
		return findings
	}
	return clean
}

// current is what the run carries, or what is wrong with the call.
func (o sizeOptions) current() (quantity.Ampere, string) {
	switch {
	case o.amps.Known() && o.watts.Known():
		return 0, "give --amps or --watts, not both"
	case o.length.Known() && o.loop.Known():
		return 0, "give --length or --loop, not both"
	case o.amps.Known():
		return o.amps.Amperes(), ""
	case o.watts.Known() && o.volts.Value > 0:
		return handbook.InputCurrent(o.watts.Watts(), o.volts.Volts()), ""
	}
	return 0, "say what it carries: --amps '10 A' or --watts '60 W'"
}

// run is the run that the flags describe.
func (o sizeOptions) run(amps quantity.Ampere) sizing.Run {
	r := sizing.Run{
		Amps: amps, Loop: 2 * o.length.Metres(), Volts: o.volts.Volts(), Drop: o.drop.Ratio(),
		Insulation: o.insulation.Celsius(), Ambient: o.ambient.Celsius(), Bundle: o.bundle, Sheathed: o.sheathed,
		Style: o.style, Fuse: o.rating.Amperes(), Size: o.size,
	}
	if o.loop.Known() {
		r.Loop = o.loop.Metres()
	}
	switch o.copper {
	case "aircraft":
		r.Copper.Aircraft = true
	case "boat":
		r.Copper.K = 10.75
	case "trade":
		r.Copper.K = 12.9
	default:
		r.Copper.At = o.conductor.Celsius()
	}
	return r
}

// runCord answers for an extension cord.
func runCord(c *call, o sizeOptions, amps quantity.Ampere) exit {
	length := o.length.Metres()
	if length == 0 {
		return badCall(c, "say how long the cord is: --length '50 ft'")
	}
	size, err := handbook.Default().ChargerCord(amps, length)
	if err != nil {
		return c.refuse("%v", err)
	}
	cord := report.Cord{Version: version, Amps: amps, Length: length, Size: size}
	if o.output == "json" {
		_ = report.CordJSON(c.stdout, cord)
	} else {
		_ = report.CordText(c.stdout, cord)
	}
	return clean
}
