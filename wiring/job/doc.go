// Package job reads jobs, the layers that they stand on and CSV wire lists into a
// [wiring.Harness], and writes wire lists back.
//
// Reading goes in four steps, one way:
//
//	gather   files, lowest layer first                       gather.go, use.go, store.go
//	parts    merged key by key, removed, replaced; built     parts.go, remove.go, build.go
//	wires    laid, moved and removed layer by layer          wires.go, leads.go, ends.go, move.go
//	finish   pieces, lugs, looms, stacks, states             finish.go and what it calls
//
// Parts come before wires because a wire's end can only be told from another spelling of
// the same end ("A1.n", "A1.neg") once the device that it lands on is known, while nothing
// about a part depends on a wire.
//
// Every fault of every file is found in one run: whatever could not be understood is left
// out, and what hangs on it keeps silent.
package job
