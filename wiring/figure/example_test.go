package figure_test

import (
	"context"
	"fmt"
	"os"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/figure"
	"github.com/lugwright/lugwright/wiring/handbook"
	"github.com/lugwright/lugwright/wiring/job"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// cart loads one of the example jobs, an invented cart.
func cart(name string) (*wiring.Harness, *figure.Cart) {
	h, _, err := job.Load("jobs/"+name+".yaml", job.Options{FS: os.DirFS("../../examples/tern-point")})
	if err != nil {
		panic(err)
	}
	return h, figure.New(h, nil)
}

// What must the fuses of the reducer and of the lights be able to break?
func ExampleCart_FuseFaults() {
	h, c := cart("tern-point-14")
	faults, err := c.FuseFaults(context.Background(), h.State("ready"), 0)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, f := range faults {
		switch f.Fuse.Ref() {
		case "F3.fuse":
			fmt.Printf("%s breaks %v, and its maker says it can %v\n", f.Fuse.Ref(), f.Through, f.Fuse.Breaks)
		case "A1.fuse1":
			o := c.FuseOpening(f.Fuse, f.Short.Limit)
			fmt.Printf("%s gets %v at most from %s, %.2f times its rating, and it %v\n", f.Fuse.Ref(),
				f.Short.Limit, f.Short.LeftOut[0].Base().Ref(), o.Multiple, o.Class)
		}
	}
	// Output:
	// A1.fuse1 gets 25 A at most from T2.main, 2.50 times its rating, and it opens within seconds
	// F3.fuse breaks 2.65 kA, and its maker says it can 30 kA
}

// What does a bolted short circuit across the controller draw, and what was assumed?
func ExampleCart_ShortCircuit() {
	h, c := cart("tern-point-14")
	sc, err := c.ShortCircuit(context.Background(), h.State("ready"), h.Terminal("U1.B+").Node, h.Terminal("U1.B-").Node, 0)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(sc.Amps, "through", sc.Fuses[0].Ref(), "from", sc.From[0].Source.Part.Designation)
	for _, a := range sc.Assumes {
		fmt.Println("-", a)
	}
	// Output:
	// 4.65 kA through F1.fuse from G1
	// - the pack's electronic protection (BMS) is ignored, and no fuse opens (common practice, no published source)
	// - coils, loads, senses and capacitors are left out (circuit theory)
	// - converters and chargers are left out, for their electronics limit what they give (common practice, no published source)
	// - switches, contacts and drivers stand as in the state "ready" (the settled state)
	// - every source stands at a state of charge of 100 %, rested (the voltage curves of the handbook)
	// - wires have their resistance at 20 C; lugs and joints have none (the job's assumed conductor temperature)
}

// How are the controller's capacitors charged, and what if the solenoid closes meanwhile?
func ExampleCart_Precharge() {
	h, c := cart("tern-point-14")
	for _, e := range h.Part("U1").Elements {
		capacitor, ok := e.(*wiring.Capacitor)
		if !ok {
			continue
		}
		p, err := c.Precharge(context.Background(), capacitor, h.State("ready"), 0.5)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("first %v, time constant %v, 95 %% of %v after %v\n", p.First, p.Tau, p.Reaches, p.To95)
		heat := p.Heats[0]
		fmt.Printf("%s: %v in all, %v for ever if the controller is shorted, rated %v\n", heat.Resistor.Part.Designation, heat.Energy, heat.Fault, heat.Rated)
		fmt.Printf("%s closes after %v at %v (%v) with %v\n", p.Closes.Contact.Base().Ref(), p.Closes.After, p.Closes.At, p.Closes.Share, p.Closes.Step)

		r, err := c.RunDown(context.Background(), capacitor, h.State("ready"), h.State("pack off"))
		if err != nil {
			fmt.Println(err)
			return
		}
		after, _ := r.Until(5)
		fmt.Printf("under 5 V %v after the pack is off\n", after)
	}
	// Output:
	// first 0.111 A, time constant 2.1 s, 95 % of 49.47 V after 6.29 s
	// R1: 6.63 J in all, 7.08 W for ever if the controller is shorted, rated 10 W
	// K1.contact closes after 2.73 s at 36 V (68.2 %) with 1.43 kA
	// under 5 V 100 s after the pack is off
}

// How long may the cart stand, and what empties it?
func ExampleCart_Parked() {
	_, c := cart("tern-point-14")
	l, err := c.Parked(context.Background())
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.0f days from %v to %v: %v\n", l.Days(), l.From, l.To, l.Amps)
	for _, d := range l.Draws {
		fmt.Println(d.Part.Designation, d.Amps)
	}
	// Output:
	// 82 days from 80 % to 0 %: 44.4 mA
	// G1 17 mA
	// P2 9.38 mA
	// T2 8 mA
	// U1 7.99 mA
	// T1 1.97 mA
}

// How long do the lights of a parked truck burn on half a charge?
func ExampleCart_Lasting() {
	h, c := cart("tern-point-truck-1")
	l, err := c.Lasting(context.Background(), h.State("night work"), 0.5, 0.1)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.1f hours for %v\n", l.Hours(), l.Used)
	// Output:
	// 8.8 hours for 64 Ah
}

// How long does the charge take?
func ExampleCart_ChargeTime() {
	h, c := cart("tern-point-14")
	t, err := c.ChargeTime(context.Background(), h.State("charging"), 0.4)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%v at %v, then %v of taper\n", t.Constant, t.Amps, t.Tapering)
	// Output:
	// 3.37 h at 18 A, then 31.3 min of taper
}

// What may still be added to the reducer and its fuse block?
func ExampleCart_ReducerRooms() {
	h, c := cart("tern-point-14")
	s := h.State("everything on")
	rooms, err := c.ReducerRooms(context.Background(), s, 0)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, r := range rooms {
		if left, ok := r.Left(); ok && r.Converter.Ref() == "T2.main" {
			peak, _ := r.LeftAtPeak()
			fmt.Printf("T2 gives %v for ever and %v at worst: %v and %v are left\n", r.Continuous, r.Peak, left, peak)
		}
	}
	blocks, err := c.BlockRooms(context.Background(), s, 0)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("A1 has %d free channels\n", len(blocks[0].Free()))
	// Output:
	// T2 gives 13.1 A for ever and 17.1 A at worst: 11.9 A and 7.9 A are left
	// A1 has 4 free channels
}

// Can a reducer of 30 A open the fuses behind it?
func ExampleFuseOpening() {
	for _, rating := range []quantity.Ampere{25, 20, 15} {
		o := figure.FuseOpening(handbook.Default(), "blade", rating, 30)
		fmt.Printf("%v: %v\n", rating, o.Class)
	}
	// Output:
	// 25 A: may open, or never
	// 20 A: opens within minutes
	// 15 A: opens within seconds
}
