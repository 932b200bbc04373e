// Package fault lists what can be wrong with a cart, one thing at a time: a wire open, a lug
// loose, a wire on the neighbouring terminal, a fuse blown, a contact welded.
//
// A [Mode] is one way to fail, with how often it happens; it finds the [Fault]s of its sort
// on a [Cart]. A fault is data: defects of the network, and controls that do not follow the
// hand. [Cart.Settle] settles a state with faults; [Cart.Look] does so and keeps what an
// owner or a meter can see.
//
//	cart := fault.NewCart(h)
//	for _, f := range cart.Faults(fault.Modes()) {
//		seen, err := cart.Look(ctx, h.States, f)
//		fmt.Println(f.Name, seen, err)
//	}
//
// To add a mode: one file with its function and one line in modes.go.
package fault
