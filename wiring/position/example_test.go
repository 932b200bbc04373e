package position_test

import (
	"context"
	"fmt"

	"github.com/lugwright/lugwright/wiring/job"
	"github.com/lugwright/lugwright/wiring/position"
)

func Example() {
	h, _, err := job.Load("../../examples/tern-point/jobs/tern-point-14.yaml", job.Options{})
	if err != nil {
		panic(err)
	}
	h.Wire("W37").To.Terminal = h.Terminal("F4.out") // the interlock lead, past the charger's lockout contact
	r, err := position.Check(context.Background(), position.NewCart(h, nil), position.NoDriveOnCharge(), position.CheckOptions{})
	if err != nil {
		panic(err)
	}
	fmt.Println(r.Property.Title, "-", r.Verdict)
	for _, x := range r.Counterexamples {
		fmt.Println(x.State.Name)
		fmt.Println(x.Says)
	}
	// Output:
	// the cart cannot be driven while it charges - broken
	// X1.plug in, S1.key on, S3.direction forward, S4.pedal down
	// M1 (Separately excited motor) moves the cart with the plug in: it takes 2.2 kW.
}
