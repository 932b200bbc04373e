package main

import (
	"context"

	"github.com/spf13/pflag"

	"github.com/lugwright/lugwright/render/report"
	"github.com/lugwright/lugwright/wiring/headroom"
)

type headroomOptions struct{ output, root string }

func headroomCommand() *command {
	var o headroomOptions
	return &command{
		name:     "headroom",
		operands: operands{name: "JOB", least: 1, most: 1},
		short:    "say what may still be added to a cart",
		long: `Says what is left on the reducer, on each channel and feed of the fuse blocks, on the negative
screws and on the pack, with everything switched on at once; and for how many hours the cart
stands so, for how many days it may be parked, and how long it charges.`,
		examples: []string{
			"lugwright headroom examples/tern-point/jobs/tern-point-14.yaml",
			"lugwright headroom --output json examples/tern-point/jobs/tern-point-truck-1.yaml",
		},
		flags: func(set *pflag.FlagSet) {
			flagChoice(set, &o.output, "output", "form of the answer", "text", "json")
			flagRoot(set, &o.root)
		},
		run: func(c *call) exit { return runHeadroom(c, o) },
	}
}

func runHeadroom(c *call, o headroomOptions) exit {
	h, found := c.load(c.args[0], o.root)
	if h == nil {
		return c.unusableInput(found)
	}
	// The only error is that of a context that ends, which this one does not.
	room, _ := headroom.Of(context.Background(), h)
	r := report.Headroom{Version: version, File: found.File, Room: room}
	// A write error is remembered by the stream.
	if o.output == "json" {
		_ = report.HeadroomJSON(c.stdout, r)
	} else {
		_ = report.HeadroomText(c.stdout, r, c.textOptions(c.stdout))
	}
	return clean
}
