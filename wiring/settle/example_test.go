package settle_test

import (
	"context"
	"fmt"
	"testing/fstest"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/job"
	"github.com/lugwright/lugwright/wiring/settle"
)

// bench is a lamp on a 12 V pack, behind a fuse and a switch. All of it is invented.
const bench = `
job: EX-1
title: A lamp on the bench
parts:
  G1: {kind: pack-lfp, cells: 4, ohms: 20 mohm}
  F1: {kind: fuse-blade, rating: 10 A}
  S1: {kind: rocker, title: lights}
  E1: {kind: lamp, power: 35 W at 12.8 V}
wires:
  W70: {from: G1.+, to: F1.in}
  W71: {from: F1.out, to: S1.in, colour: RD, size: 16 AWG, length: 3 ft}
  W72: {from: S1.out, to: E1.+, colour: RD, size: 16 AWG, length: 6 ft}
  W73: {from: E1.-, to: G1.-, colour: BK, size: 16 AWG, length: 9 ft}
states:
  dark: {S1: off}
  lit: {S1: on}
`

// read loads a job that is one text.
func read(text string) *wiring.Harness {
	h, findings, err := job.Load("bench.yaml", job.Options{FS: fstest.MapFS{"bench.yaml": {Data: []byte(text)}}})
	if err != nil || h == nil {
		panic(fmt.Sprint(err, findings))
	}
	return h
}

// Does the lamp burn, and what does it get?
func ExampleState() {
	h := read(bench)
	p, err := settle.State(context.Background(), h, h.State("lit"), settle.Options{})
	if err != nil {
		fmt.Println(err)
		return
	}
	lamp := h.Part("E1")
	fmt.Println(p.Outcome, "- on:", p.On(lamp))
	fmt.Println("across the lamp:", p.ElementVolts(lamp.Elements[0]))
	fmt.Println("through W72:", p.WireAmps(h.Wire("W72"), 0))
	fmt.Println("lost in W72:", p.WireDrop(h.Wire("W72"), 0))
	// Output:
	// settled - on: true
	// across the lamp: 13.02 V
	// through W72: 2.78 A
	// lost in W72: 67.03 mV
}

// What happens in each position of the switch? A network is compiled once and then
// settled in any setting of its controls.
func ExampleNetwork_Settle() {
	h := read(bench)
	n := settle.Compile(h)
	control := h.Part("S1").Controls[0]
	for _, position := range control.Positions {
		setting := &wiring.State{Set: map[*wiring.Control]string{control: position}}
		p, err := n.Settle(context.Background(), setting, settle.Options{})
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Println(position, p.Volts(h.Terminal("S1.out").Node), p.On(h.Part("E1")))
	}
	// Output:
	// off 0 V false
	// on 13.19 V true
}

// What would a meter show if a wire were broken?
func ExampleNetwork_With() {
	h := read(bench)
	broken := settle.Compile(h).With(settle.OpenWire(h.Wire("W73")))
	p, err := broken.Settle(context.Background(), h.State("lit"), settle.Options{})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, ref := range []string{"S1.out", "E1.-", "G1.+"} {
		fmt.Println(ref, p.Reading(h.Terminal(ref).Node))
	}
	// Output:
	// S1.out 13.32 V
	// E1.- 13.32 V
	// G1.+ 13.32 V
}

// reducer is a 48-to-12 V reducer whose enable lead was forgotten.
const reducer = `
job: EX-2
title: A reducer on the bench
parts:
  G1: {kind: pack-lfp, cells: 16}
  T2: {kind: reducer}
wires:
  W60: {from: G1.+, to: T2.in+}
  W61: {from: G1.-, to: T2.in-}
  W62: {from: T2.enable, to: capped}
states:
  on: {soc: 50 %}
`

// Why is there no 12 V?
func ExamplePoint_Waits() {
	h := read(reducer)
	p, err := settle.State(context.Background(), h, h.State("on"), settle.Options{})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, e := range h.Part("T2").Elements {
		for _, unmet := range p.Waits(e) {
			fmt.Printf("%s waits for %s, which sees %v\n", e.Base().Ref(), unmet.Name, unmet.Volts)
		}
	}
	// Output:
	// T2.main waits for T2.enable, which sees 0 V
}
