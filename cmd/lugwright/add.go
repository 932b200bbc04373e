package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"

	"github.com/spf13/pflag"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/accessory"
	"github.com/lugwright/lugwright/wiring/job"
	"github.com/lugwright/lugwright/wiring/quantity"
)

type addOptions struct {
	title, place, control, controlPlace, root string
	amps, watts, length, controlLength        quantity.Amount
	channel                                   int
	critical, dry                             bool
}

func addCommand() *command {
	var o addOptions
	return &command{
		name:     "add",
		operands: operands{name: "JOB KIND", least: 2, most: 2},
		short:    "put an accessory on the next free fused channel",
		long: `Puts a device of a kind on a job: on the next free fused channel, with a switch, its wires, its
return, its fuse and numbers. Fuse and wire sizes are computed as by "size". The lines are
put into the job file; every other byte of it stays.

Nothing is written if the cart has no room for it: no free channel or negative, a reducer, a
block or a pack that would be asked for too much, or anything that a rule calls an error. The
exit code is then 1, and the numbers are told.`,
		examples: []string{
			"lugwright add examples/tern-point/jobs/tern-point-14.yaml lamp --power '21 W'",
			"lugwright add examples/tern-point/jobs/tern-point-14.yaml usb-outlet --dry-run",
		},
		flags: func(set *pflag.FlagSet) {
			set.StringVar(&o.title, "title", "", "`words` for what it is on this cart")
			set.StringVar(&o.place, "place", "", "`place` where it sits")
			flagAmount(set, &o.amps, "amps", "", "5 A", "its current, instead of its kind's", quantity.Current)
			flagAmount(set, &o.watts, "power", "", "60 W", "its power, instead of its kind's", quantity.Power)
			flagAmount(set, &o.length, "length", "", "10 ft", "wire from the switch, or the block, to it; the return is as long; else to be measured", quantity.Length)
			set.StringVar(&o.control, "switch", "", "`kind` of its switch, or none; else a rocker, unless it has one itself")
			set.StringVar(&o.controlPlace, "switch-place", "", "`place` of the switch; else the dash")
			flagAmount(set, &o.controlLength, "switch-length", "", "18 in", "wire from the block to the switch", quantity.Length)
			set.IntVar(&o.channel, "channel", 0, "`number` of the channel; else the next free one")
			set.BoolVar(&o.critical, "critical", false, "hold it to the smaller limit of voltage drop")
			set.BoolVar(&o.dry, "dry-run", false, "print the changed job and write nothing")
			flagRoot(set, &o.root)
		},
		run: func(c *call) exit { return runAdd(c, o) },
	}
}

func (o addOptions) request(kind string) accessory.Request {
	return accessory.Request{
		Kind: kind, Title: o.title, Place: o.place, Amps: o.amps.Amperes(), Watts: o.watts.Watts(),
		Switch: o.control, SwitchPlace: o.controlPlace, Length: o.length, SwitchLength: o.controlLength,
		Channel: o.channel, Critical: o.critical,
	}
}

func runAdd(c *call, o addOptions) exit {
	file := c.args[0]
	if h, found := c.load(file, o.root); h == nil {
		return c.unusableInput(found)
	}
	text, err := c.read(filepath.ToSlash(file))
	if err != nil {
		return c.refuse("%v", err)
	}
	load := accessory.Loader(file, job.Options{FS: c.files, Root: o.root})
	plan, err := accessory.Add(context.Background(), text, load, o.request(c.args[1]))
	if err != nil {
		return c.noRoom(err)
	}
	if o.dry {
		// A write error is remembered by the stream.
		_, _ = c.stdout.Write(plan.Text)
		return clean
	}
	if err := replaceFile(file, plan.Text); err != nil {
		c.complain("%v", err)
		return unwritten
	}
	tellAdded(c, file, plan)
	return clean
}

// noRoom says why nothing is added.
func (c *call) noRoom(err error) exit {
	c.complain("%v\nnothing was written", err)
	var refusal *accessory.Refusal
	if errors.As(err, &refusal) {
		return findings
	}
	return unusable
}

// tellAdded says what was put into the job.
func tellAdded(c *call, file string, p *accessory.Plan) {
	fmt.Fprintf(c.stdout, "%s: %s %s behind %s, %v\n", filepath.ToSlash(file), p.Part.Designation, p.Part.Name(), p.Fuse.Ref(), p.Fuse.Rating)
	if p.Switch != nil {
		fmt.Fprintf(c.stdout, "  %s  %s\n", p.Switch.Designation, p.Switch.Name())
	}
	for _, w := range p.Wires {
		fmt.Fprintf(c.stdout, "  %s  %v to %v, %s\n", w.Name(), w.From, w.To, cutWords(w))
	}
	if p.Reducer != "" {
		fmt.Fprintf(c.stdout, "%.1f A are left on %s\n", float64(p.Left), p.Reducer)
	}
	for _, f := range p.Open {
		fmt.Fprintf(c.stdout, "%v: %s (%s)\n", f.Level, f.Message, f.Rule)
	}
}

// cutWords is the wire that is cut: "OG 14 AWG, 4 ft".
func cutWords(w *wiring.Wire) string {
	for _, p := range w.Pieces {
		if p.Kind != wiring.CutPiece {
			continue
		}
		length := "measure its length"
		if p.Length.Known() && !p.Reckoned {
			length = p.Length.String()
		} else if p.Length.Known() {
			length = "measure: " + p.Length.String()
		}
		return fmt.Sprintf("%v %v, %s", p.Colour, p.Size, length)
	}
	return "its lead"
}

// replaceFile puts a text in the place of a file, whole or not at all: it is written beside
// it and then takes its name and mode.
func replaceFile(name string, text []byte) error {
	info, err := os.Stat(name)
	if err != nil {
		return err
	}
	if name, err = filepath.EvalSymlinks(name); err != nil {
		return err
	}
	beside, err := os.CreateTemp(filepath.Dir(name), ".lugwright-*")
	if err != nil {
		return err
	}
	defer os.Remove(beside.Name()) // gone already if all went well
	_, err = beside.Write(text)
	err = errors.Join(err, beside.Sync(), beside.Close())
	if err == nil {
		err = os.Chmod(beside.Name(), info.Mode().Perm())
	}
	if err == nil {
		err = os.Rename(beside.Name(), name)
	}
	return err
}
