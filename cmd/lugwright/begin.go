package main

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"

	"github.com/spf13/pflag"

	"github.com/lugwright/lugwright/wiring/accessory"
	"github.com/lugwright/lugwright/wiring/begin"
	"github.com/lugwright/lugwright/wiring/catalog"
	"github.com/lugwright/lugwright/wiring/job"
	"github.com/lugwright/lugwright/wiring/quantity"
)

type beginOptions struct {
	begin.Request
	accessories, lengths []string
	root                 string
}

func beginCommand() *command {
	var o beginOptions
	return &command{
		name:     "begin",
		operands: operands{name: "JOB", least: 1, most: 1},
		short:    "write a new job file",
		long: `Writes a new job: a platform (the cart before the work), a kit, accessories, and the lengths
of wires as far as they are known. What is not known is left out, and shows as a box to
measure. A job that is begun can be checked and drawn at once.

On a terminal it asks for what the flags do not say; elsewhere it never asks. A file that is
there is never replaced. lugwright layers lists the platforms and kits that ship.`,
		examples: []string{
			"lugwright begin tp-20.yaml --number TP-20 --platform 48v-ac --kit 16s-inlet-loop",
			"lugwright begin tp-21.yaml --number 21 --platform 36v-series --kit 12s-inlet --with horn@front",
		},
		flags: func(set *pflag.FlagSet) { flagsOfBegin(set, &o) },
		run:   func(c *call) exit { return runBegin(c, o) },
	}
}

func flagsOfBegin(set *pflag.FlagSet, o *beginOptions) {
	set.StringVar(&o.Platform, "platform", "", "`name` of the platform")
	set.StringVar(&o.Kit, "kit", "", "`name` of the kit")
	set.StringVar(&o.Number, "number", "", "the job's `number`")
	set.StringVar(&o.Title, "title", "", "`words` for what is done")
	set.StringVar(&o.Cart, "cart", "", "`words` for the vehicle")
	set.StringVar(&o.Customer, "customer", "", "`name` of whose cart it is")
	set.StringVar(&o.By, "by", "", "`name` of who writes the job")
	set.StringVar(&o.Date, "date", "", "`day` of the first issue: 2026-03-02")
	set.StringArrayVar(&o.accessories, "with", nil, "`KIND@PLACE` of an accessory; may be given again")
	set.StringArrayVar(&o.lengths, "length", nil, "`WIRE=LENGTH` of a wire of the kit; may be given again")
	flagAmount(set, &o.Insulation, "insulation", "", "105 C", "rating of the wire's insulation, as printed on it; else the shop's", quantity.Temperature)
	flagRoot(set, &o.root)
}

func runBegin(c *call, o beginOptions) exit {
	file := c.args[0]
	if _, err := os.Lstat(file); err == nil {
		return c.refuse("%s is there already: begin never replaces a file", filepath.ToSlash(file))
	}
	load := accessory.Loader(file, job.Options{FS: c.files, Root: o.root})
	if code := o.ask(c, load); code != clean {
		return code
	}
	if fault := o.readLists(); fault != "" {
		return badCall(c, fault)
	}
	b, err := begin.Job(context.Background(), load, o.Request)
	if err != nil {
		var refusal *accessory.Refusal
		c.complain("%v\nnothing was written", err)
		if errors.As(err, &refusal) {
			return findings
		}
		return unusable
	}
	if err := createFile(file, b.Text); err != nil {
		c.complain("%v", err)
		return unwritten
	}
	fmt.Fprintf(c.stdout, "%s\n", filepath.ToSlash(file))
	for _, w := range b.Taps {
		fmt.Fprintf(c.stdout, "%s hung on a part of the old string of batteries: it is on a fused 12 V channel now\n", w)
	}
	fmt.Fprintf(c.stdout, "next: lugwright check %s\n", filepath.ToSlash(file))
	return clean
}

// missing lists the flags without which there is no job.
func (o *beginOptions) missing() []string {
	var all []string
	for _, f := range []struct{ flag, value string }{{"--platform", o.Platform}, {"--kit", o.Kit}, {"--number", o.Number}} {
		if f.value == "" {
			all = append(all, f.flag)
		}
	}
	return all
}

// ask asks for what is missing, on a terminal alone; elsewhere it says what is missing.
func (o *beginOptions) ask(c *call, load accessory.Load) exit {
	missing := o.missing()
	if len(missing) == 0 {
		return clean
	}
	if !c.stdin.terminal || !c.stdout.terminal {
		return badCall(c, fmt.Sprintf("say %s\nplatforms: %s\nkits: %s", strings.Join(missing, ", "),
			strings.Join(layerNames("platform", o.root), ", "), strings.Join(layerNames("kit", o.root), ", ")))
	}
	q := asking{call: c, in: bufio.NewScanner(c.stdin)}
	if o.Platform == "" {
		o.Platform = q.choose("Platform, the cart before the work", layerNames("platform", o.root))
	}
	if o.Kit == "" && o.Platform != "" {
		kits := slices.DeleteFunc(layerNames("kit", o.root), func(k string) bool { return !begin.Fits(load, o.Platform, k) })
		o.Kit = q.choose("Kit that fits it", kits)
	}
	for _, f := range []struct {
		to   *string
		text string
	}{{&o.Number, "Job number"}, {&o.Title, "Title, or nothing"}, {&o.Cart, "Cart, or nothing"}, {&o.By, "Your name, or nothing"}} {
		if *f.to == "" {
			*f.to = q.line(f.text)
		}
	}
	if len(o.accessories) == 0 {
		o.accessories = strings.Fields(q.line("Accessories, as light-bar@front usb-outlet@dash, or nothing"))
	}
	if missing = o.missing(); len(missing) > 0 {
		return c.refuse("no answer for %s", strings.Join(missing, ", "))
	}
	return clean
}

// asking puts questions on a terminal.
type asking struct {
	*call
	in *bufio.Scanner
}

// line asks for one line; the end of the input is an empty answer.
func (q asking) line(text string) string {
	fmt.Fprintf(q.stdout, "%s: ", text)
	if !q.in.Scan() {
		return ""
	}
	return strings.TrimSpace(q.in.Text())
}

// choose asks for one of a list, by number or name.
func (q asking) choose(text string, list []string) string {
	fmt.Fprintf(q.stdout, "%s:\n", text)
	for i, name := range list {
		fmt.Fprintf(q.stdout, "  %d  %s\n", i+1, name)
	}
	answer := q.line("number or name")
	if n, err := strconv.Atoi(answer); err == nil && n >= 1 && n <= len(list) {
		return list[n-1]
	}
	return answer
}

// readLists reads --with and --length.
func (o *beginOptions) readLists() string {
	for _, text := range o.accessories {
		kind, place, _ := strings.Cut(text, "@")
		o.Accessories = append(o.Accessories, accessory.Request{Kind: kind, Place: place})
	}
	for _, text := range o.lengths {
		wire, length, ok := strings.Cut(text, "=")
		if !ok {
			return fmt.Sprintf("--length takes WIRE=LENGTH, such as 'W64=5 ft', not %q", text)
		}
		a, err := quantity.Parse(length, quantity.Length)
		if err != nil {
			return "--length " + wire + ": " + err.Error()
		}
		o.Lengths = append(o.Lengths, begin.Length{Wire: strings.TrimSpace(wire), Length: a})
	}
	return ""
}

// layerNames lists the layers of a sort: those of the root, then those that ship.
func layerNames(sort, root string) []string {
	var names []string
	if root == "" {
		root = "."
	}
	own, _ := fs.Glob(os.DirFS(root), sort+"s/*.yaml") // no folder: none
	for _, name := range own {
		names = append(names, strings.TrimSuffix(filepath.Base(name), ".yaml"))
	}
	for _, l := range catalog.Layers(sort) {
		if !slices.Contains(names, l.Name) {
			names = append(names, l.Name)
		}
	}
	return names
}

// createFile writes a file that is not there yet. One that cannot be written whole is taken
// away again.
func createFile(name string, text []byte) error {
	file, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	if err != nil {
		return err
	}
	_, err = file.Write(text)
	if err = errors.Join(err, file.Close()); err != nil {
		os.Remove(name)
	}
	return err
}
