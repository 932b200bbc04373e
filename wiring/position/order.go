package position

import "math/bits"

// order numbers the positions of axes, fewest controls away from rest first.
type order struct {
	moves []int64   // by axis: positions that are not its rest
	ways  [][]int64 // ways[k][w]: positions of the axes from k on that move w of them
}

// newOrder counts positions from the last axis to the first. The numbers are the
// coefficients of the product of 1 + moves x.
func newOrder(axes []Axis) order {
	n := len(axes)
	o := order{moves: make([]int64, n), ways: make([][]int64, n+1)}
	o.ways[n] = []int64{1}
	for k := n - 1; k >= 0; k-- {
		o.moves[k] = int64(len(axes[k].Positions) - 1)
		o.ways[k] = make([]int64, n-k+1)
		for w := range o.ways[k] {
			o.ways[k][w] = add(o.rest(k, w), times(o.moves[k], o.moved(k, w)))
		}
	}
	return o
}

// rest counts the positions of the axes behind k that move w of them.
func (o order) rest(k, w int) int64 {
	if w >= len(o.ways[k+1]) {
		return 0
	}
	return o.ways[k+1][w]
}

// moved counts the positions of the axes behind k that move w less the one of k.
func (o order) moved(k, w int) int64 {
	if w == 0 {
		return 0
	}
	return o.ways[k+1][w-1]
}

func (o order) count() int64 {
	sum := int64(0)
	for _, n := range o.ways[0] {
		sum = add(sum, n)
	}
	return sum
}

// whole is how many axes the first n positions move at most in all ways: the largest such
// number, -1 if n is 0.
func (o order) whole(n int64) int {
	for w, count := range o.ways[0] {
		if n < count {
			return w - 1
		}
		n -= count
	}
	return len(o.moves)
}

// at tells which axes position i moves, and to which of their positions.
func (o order) at(i int64, move func(axis, position int)) {
	w := 0
	for i >= o.ways[0][w] {
		i -= o.ways[0][w]
		w++
	}
	for k := range o.moves {
		behind := o.moved(k, w)
		if all := times(o.moves[k], behind); i >= all {
			i -= all
			continue
		}
		move(k, 1+int(i/behind))
		i %= behind
		w--
	}
}

// add and times stop at many.
func add(a, b int64) int64 {
	if a > many-b {
		return many
	}
	return a + b
}

func times(a, b int64) int64 {
	hi, lo := bits.Mul64(uint64(a), uint64(b))
	if hi != 0 || lo > many {
		return many
	}
	return int64(lo)
}
