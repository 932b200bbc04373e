package sparse

// Matrix holds the values of a matrix of a certain [Pattern].
type Matrix struct {
	pattern  *Pattern
	diagonal []float64 // by row, as the caller counts
	below    []float64 // by Entry: where the row is eliminated after the column
	above    []float64 // their mirror images
}

// NewMatrix returns a matrix of zeros.
func (p *Pattern) NewMatrix() *Matrix {
	return &Matrix{
		pattern:  p,
		diagonal: make([]float64, p.n),
		below:    make([]float64, len(p.aCol)),
		above:    make([]float64, len(p.aCol)),
	}
}

// Zero sets all entries to zero.
func (m *Matrix) Zero() {
	clear(m.diagonal)
	clear(m.below)
	clear(m.above)
}

// AddDiagonal adds to the entry of row i and column i.
func (m *Matrix) AddDiagonal(i int32, value float64) { m.diagonal[i] += value }

// AddPair adds the same to both entries of a pair of rows.
func (m *Matrix) AddPair(e Entry, value float64) {
	m.below[e] += value
	m.above[e] += value
}

// Add adds to one of the two entries of a pair: the one in the given row and column.
func (m *Matrix) Add(e Entry, row, column int32, value float64) {
	if m.pattern.step[row] > m.pattern.step[column] {
		m.below[e] += value
	} else {
		m.above[e] += value
	}
}

// Multiply sets y to A x.
func (m *Matrix) Multiply(y, x []float64) {
	p := m.pattern
	for i, d := range m.diagonal {
		y[i] = d * x[i]
	}
	for k := range p.n {
		row := p.node[k]
		for at := p.aStart[k]; at < p.aStart[k+1]; at++ {
			column := p.node[p.aCol[at]]
			y[row] += m.below[at] * x[column]
			y[column] += m.above[at] * x[row]
		}
	}
}
