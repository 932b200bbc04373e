// Package position looks at every position of the hand-operated controls of a harness, so
// that something can be proved of all of them, or the position shown that breaks it.
//
// A [Space] is the positions of some controls; [Sweep] settles each of them, in parallel,
// and visits the points in a fixed order: fewest controls away from rest first. The first
// position of that order that breaks something therefore needs every one of its controls.
// A [Property] is a thing that must hold; [Check] proves it or finds a [Counterexample].
//
// # What may be left out
//
// A sweep over the product of all controls is always right. Three reductions give the same
// verdict with fewer positions, and the same counterexamples.
//
// Positions that read alike ([Space.Distinct]). A control acts through what reads it: the
// switches that it works and the conditions that ask for it. Of positions in which all of
// them do the same, one is enough, and a control that nothing reads stays at rest. The
// equations of such positions are the same, so this is exact for every property.
//
// The premise of a property. What speaks of the key being off needs the positions with the
// key off ([Space.Fix]).
//
// Independence ([Cart.Independent]), for properties of joining alone. Such a property asks
// whether two nodes a and b are ever joined by things that conduct. Let H be the graph of
// all that could ever conduct. A path from a to b that visits no node twice lies in that
// block of H with an edge a-b added which holds the added edge; and since between its ends
// it meets neither a nor b, it lies in one component of what is left of that block
// without a and b. Call the components C1, C2, and so on, and K1, K2, … the
// controls of their switches. Whether a path through Ci exists depends on Ki and nothing
// else, provided that no contact and no driver lies in Ci: those follow coils and senses,
// and so voltages, and so everything. Joined(x) is thus the disjunction of fi(x restricted
// to Ki), and is true somewhere if and only if some fi is. So it is enough to vary each
// Ki by itself with all else at rest: a sum in place of a product. A position that joins a
// and b with the fewest controls moved moves those of one Ki only, and is among them. Where
// a component holds a contact or a driver, the whole product is swept, save positions in
// which a and b are apart even with every contact and driver closed. Two accessory
// switches behind their own fuses are independent in this sense.
//
// They are not independent for amounts. Two loads on one supply share its limit, its feed
// and its return; either of them may pull the other, a coil or a sense below its
// threshold. What depends on whether something is on, energised or true is therefore
// never pruned by independence: it is swept over the whole product.
//
// # What a verdict rests on
//
// Positions are settled from cold, each by itself: a self-holding relay that an earlier
// position would have left closed is open. Nothing is handed on from one position to the
// next, since a memory that is handed on can change the outcome. A position that does not
// settle, or in which elements race, is counted as a [Doubt]: without an answer of its own
// it proves nothing.
package position
