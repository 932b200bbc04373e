// Package meter says what a person with a meter in hand finds on a cart: what each terminal
// reads in each operating state, against which black probe, and what that reading proves;
// what feeds a terminal, or where the way to it is cut; what keeps a main contact open; and
// what stays live with the main switch off.
//
// A [Bench] is made once for a harness. It settles states into sheets, and a [Sheet]
// answers everything about one of them:
//
//	sheet, err := meter.New(h).Settle(ctx, h.State("driving"))
//	fmt.Println(sheet.Read(h.Terminal("T2.out")))
//
// The figures are those of package settle, the ways those of package path; nothing is
// computed twice. A bench and its sheets do not change once made, and may be read by many
// goroutines.
package meter
