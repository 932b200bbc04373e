package meter_test

import (
	"context"
	"fmt"

	"github.com/lugwright/lugwright/wiring/job"
	"github.com/lugwright/lugwright/wiring/meter"
)

// What does the enable lead of the reducer read while driving, and with the key off?
func ExampleBench_Settle() {
	h, _, err := job.Load("../../examples/tern-point/jobs/tern-point-14.yaml", job.Options{})
	if err != nil {
		fmt.Println(err)
		return
	}
	bench := meter.New(h)
	for _, name := range []string{"driving", "key off"} {
		sheet, err := bench.Settle(context.Background(), h.State(name))
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Println(name, sheet.Read(h.Terminal("T2.enable")))
	}
	// Output:
	// driving 52.7 V
	// key off 0.0 V
}

// Why does the cart stay put with its cord in?
func ExampleSheet_Holds() {
	h, _, err := job.Load("../../examples/tern-point/jobs/tern-point-shuttle-3.yaml", job.Options{})
	if err != nil {
		fmt.Println(err)
		return
	}
	sheet, err := meter.New(h).Settle(context.Background(), h.State("drive-away"))
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, hold := range sheet.Holds() {
		for _, want := range hold.Wants {
			fmt.Println(want.Name, "sees", meter.Tenths(want.Sees), "V of", want.Above)
			fmt.Println("cut at", want.Break.Element.Base().Part.Designation, "at", want.Break.Stands, "needs", want.Break.Needs)
		}
	}
	// Output:
	// K1.coil sees 0.0 V of 22.5 V
	// cut at X1 at in needs [out]
}

// What feeds the lamp switch?
func ExampleSheet_Trace() {
	h, _, err := job.Load("../../examples/tern-point/jobs/tern-point-14.yaml", job.Options{})
	if err != nil {
		fmt.Println(err)
		return
	}
	sheet, err := meter.New(h).Settle(context.Background(), h.State("ready"))
	if err != nil {
		fmt.Println(err)
		return
	}
	trace := sheet.Trace(h.Terminal("S6.in").Node)
	fmt.Println(trace.Verdict, trace.Reading)
	fmt.Println(trace.Feed)
	fmt.Println(trace.Behind[0])
	// Output:
	// fed 12.5 V
	// T2.out - W64 - A1.fuse1 - W71 - S6.in
	// G1.+ - W59 - F3 - W60 - T2.in+
}
