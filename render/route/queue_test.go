package route

import (
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// As long as prices do not run ahead by more than the ring is long, they come out in order.
func TestQueueGivesThePricesInOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		prices := rapid.SliceOfN(rapid.IntRange(0, ringSize-1), 1, 50).Draw(t, "prices")
		var q queue
		for _, p := range prices {
			q.push(p, int32(p))
		}
		slices.Sort(prices)
		for _, want := range prices {
			if got := q.pop(); int(got) != want {
				t.Fatalf("got %d, want %d", got, want)
			}
		}
		if q.n != 0 {
			t.Fatalf("%d are left", q.n)
		}
	})
}

func TestQueueResetForgets(t *testing.T) {
	var q queue
	q.push(7, 1)
	q.push(900, 2)
	q.reset()
	q.push(3, 3)
	if got := q.pop(); got != 3 || q.n != 0 {
		t.Errorf("got %d, %d left", got, q.n)
	}
}
