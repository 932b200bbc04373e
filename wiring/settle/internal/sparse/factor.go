package sparse

// smallestPivot is the share of its diagonal entry below which what is left of a pivot is
// the rounding of what was subtracted, a few units of the last place.
const smallestPivot = 8 * 0x1p-53

// Factors are L, D and U of a matrix.
type Factors struct {
	pattern *Pattern
	lower   []float64 // columns of L without its unit diagonal
	upper   []float64 // rows of U without its unit diagonal, times D
	pivot   []float64 // D, by step
	filled  []int32   // by step: how far its column is computed
	left    []float64 // work: a row of L, by step
	top     []float64 // work: a column of U, by step
	x       []float64 // work: a right-hand side, by step
}

// NewFactors returns room for the factors of a matrix of this pattern.
func (p *Pattern) NewFactors() *Factors {
	return &Factors{
		pattern: p,
		lower:   make([]float64, len(p.row)),
		upper:   make([]float64, len(p.row)),
		pivot:   make([]float64, p.n),
		filled:  make([]int32, p.n),
		left:    make([]float64, p.n),
		top:     make([]float64, p.n),
		x:       make([]float64, p.n),
	}
}

// Factor computes the factors of m. If a pivot is not positive, it returns its row and
// false; the factors are then of no use.
//
// It works upwards in rows: row k of L solves l U = a with the rows before it, column k of
// U solves L u = a, and both have the same pattern (T. A. Davis, Direct Methods for Sparse
// Linear Systems, SIAM 2006, chapters 4 and 6, for the symmetric case).
func (f *Factors) Factor(m *Matrix) (row int32, ok bool) {
	p := f.pattern
	copy(f.filled, p.start[:p.n])
	for k := range p.n {
		node := p.node[k]
		for at := p.aStart[k]; at < p.aStart[k+1]; at++ {
			f.left[p.aCol[at]] = m.below[at]
			f.top[p.aCol[at]] = m.above[at]
		}
		whole := m.diagonal[node]
		d := whole
		for _, i := range p.lRow[p.first[k]:p.first[k+1]] {
			d -= f.step(i)
		}
		if !(d > smallestPivot*whole) {
			clear(f.left)
			clear(f.top)
			return node, false
		}
		f.pivot[k] = d
	}
	return 0, true
}

// step finishes entry i of the row and the column that are being computed, and returns
// what it takes off their pivot.
func (f *Factors) step(i int32) float64 {
	row := f.pattern.row
	l, u := f.left[i]/f.pivot[i], f.top[i]
	f.left[i], f.top[i] = 0, 0
	end := f.filled[i]
	for at := f.pattern.start[i]; at < end; at++ {
		f.left[row[at]] -= l * f.upper[at]
		f.top[row[at]] -= f.lower[at] * u
	}
	f.lower[end], f.upper[end] = l, u
	f.filled[i]++
	return l * u
}

// Solve replaces b by the solution x of A x = b.
func (f *Factors) Solve(b []float64) {
	p, x := f.pattern, f.x
	for k, node := range p.node {
		x[k] = b[node]
	}
	for k := range p.n {
		if x[k] == 0 {
			continue
		}
		for at := p.start[k]; at < p.start[k+1]; at++ {
			x[p.row[at]] -= f.lower[at] * x[k]
		}
	}
	for k := p.n - 1; k >= 0; k-- {
		sum := x[k]
		for at := p.start[k]; at < p.start[k+1]; at++ {
			sum -= f.upper[at] * x[p.row[at]]
		}
		x[k] = sum / f.pivot[k]
	}
	for k, node := range p.node {
		b[node] = x[k]
	}
}
