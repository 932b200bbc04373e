package route

// queue is a bucket queue: a ring of stacks, one for each price above the lowest open one.
// It holds prices that grow by less than its size at a step, which every step of a path does.
type queue struct {
	ring [ringSize][]int32
	low  int // price of the current bucket
	high int // highest price that was pushed
	n    int
}

const ringSize = 4096 // a power of two above the dearest single step

func (q *queue) reset() {
	for p := q.low; q.n > 0 && p <= q.high; p++ {
		b := &q.ring[p&(ringSize-1)]
		q.n -= len(*b)
		*b = (*b)[:0]
	}
	q.low, q.high, q.n = 0, 0, 0
}

// push adds a state. A price below the current one, which an estimate that is not quite
// monotone may ask for, counts as the current one.
func (q *queue) push(price int, state int32) {
	price = min(max(price, q.low), q.low+ringSize-1)
	b := &q.ring[price&(ringSize-1)]
	*b = append(*b, state)
	q.high = max(q.high, price)
	q.n++
}

// pop returns a state of the lowest price; the queue must not be empty.
func (q *queue) pop() int32 {
	for len(q.ring[q.low&(ringSize-1)]) == 0 {
		q.low++
	}
	b := &q.ring[q.low&(ringSize-1)]
	s := (*b)[len(*b)-1]
	*b = (*b)[:len(*b)-1]
	q.n--
	return s
}
