package arrange

// random is a small generator of chances with a fixed beginning (xorshift64*, Vigna 2016):
// the standard library's may change its sequence between releases, and a drawing must not.
type random uint64

func newRandom(seed uint64) random { return random(seed*0x9e3779b97f4a7c15 + 0x2545f4914f6cdd1d) }

func (r *random) next() uint64 {
	x := uint64(*r)
	x ^= x >> 12
	x ^= x << 25
	x ^= x >> 27
	*r = random(x)
	return x * 0x2545f4914f6cdd1d
}

// n returns a whole number from 0 to n-1; n must be above 0.
func (r *random) n(n int) int { return int((r.next() >> 33) % uint64(n)) }

// unit returns a number from 0 to below 1.
func (r *random) unit() float64 { return float64(r.next()>>11) / (1 << 53) }
