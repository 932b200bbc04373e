// Package settle finds the operating point of a harness in a state: what every node reads
// and every wire carries, which contacts have closed, what runs and what is on.
//
// The one-call door is [State]. To settle many settings of one harness, [Compile] it once
// and use [Network.Settle]; a [Network] serves many goroutines, and [Network.With] is the
// same cart with something wrong. The answer is a [Point], which is asked by node
// ([Point.Volts], [Point.Reading]), by wire ([Point.WireAmps]), by element
// ([Point.ElementAmps], [Point.Holds]) and by part ([Point.On]).
//
// Conventions that hold everywhere:
//
//   - a voltage is against [Point.ReferenceNode], pack negative, unless it says against what;
//   - a node that nothing joins to the reference floats: its voltage is 0 and means nothing;
//   - a current counts from the first node of an element to the second, and from From to To
//     of a wire: what a source delivers counts negative, what a load takes positive;
//   - whatever can go wrong with a circuit is an [Outcome], never an error or a panic.
//
// # How a state is settled
//
// A state sets the switches. Each element remembers one bit: a sense is true, a coil
// energised, a driver closed, a converter or charger running. With that memory fixed the
// network is solved; from its voltages the memory follows anew; and so on until nothing
// changes (rounds.go). Then the most overloaded fuse or source opens for good, if there is
// one, and all begins anew. A memory that comes back is a cycle: the elements then act one
// at a time, nearest to its threshold first, and if that ends, it was a race; if not, the
// state chatters (settling.go).
//
// With the memory fixed a network is still bent: a diode conducts or not, a regulated
// output holds its voltage or its current, a load holds its power or is too low to work.
// Each such bend stands on one piece of its characteristic; whatever lies outside its piece
// goes to the next, the farthest outside first (search.go, bend.go). A search that comes
// back to where it was has met a supply that cannot feed its loads: these become resistors,
// and the supply is reported as overloaded (overload.go).
//
// With the pieces fixed the network is linear but for constant powers, for which Newton's
// method comes down from the unloaded voltages, so that it finds the higher of two answers
// (newton.go). Voltages carry twice the digits of a float64, and currents are held to
// Kirchhoff's law at every node to a billionth of the largest there: 0.1 mohm of cable
// stands beside 10 Mohm of meter, eleven decades away. The linear algebra is in
// internal/sparse.
//
// # Where things are
//
// One file an element says what branches it has, what law each follows (law.go), and how
// its memory changes; list.go lists them. To add an element: its file, one line there.
// compile.go builds a Network; ohms.go has the resistance of wires, ac.go where there is
// alternating current, group.go what floats, defect.go what can be wrong, reading.go what a
// meter shows, capacitor.go how capacitors come to their voltage, history.go whether the
// state before matters.
package settle
