package sparse

import (
	"cmp"
	"slices"
)

// Pattern is where a matrix, and its factors, can be other than zero. Rows and columns
// are eliminated in an order of its own; all that is exported counts them as the caller
// does.
type Pattern struct {
	n    int
	node []int32 // by step: the row and column that it eliminates
	step []int32 // the reverse

	// Entries of A below the diagonal, row by row in the order of steps, with those above
	// it as mirror images.
	aStart []int32
	aCol   []int32

	// Columns of L in the order of steps, row numbers ascending; the rows of U are their
	// mirror images. lRow lists for each row the columns that reach into it, ascending.
	start []int32
	row   []int32
	first []int32
	lRow  []int32

	entries []Entry // by pair
}

// Entry is the place of the two entries of a matrix that belong to a pair of rows.
type Entry int32

// NewPattern finds the pattern of an n by n matrix with entries other than zero on the
// diagonal and at the given pairs of rows. The pairs may repeat; the two of a pair differ
// and lie in [0, n).
func NewPattern(n int, pairs [][2]int32) *Pattern {
	unique, which := distinct(pairs)
	order, columns := eliminate(n, unique)
	p := &Pattern{n: n, node: order, step: make([]int32, n)}
	for k, v := range order {
		p.step[v] = int32(k)
	}
	p.setFactors(columns)
	p.setEntries(unique, which)
	return p
}

// distinct returns each pair once, smaller number first and sorted, and for each of the
// given pairs its place among them.
func distinct(pairs [][2]int32) (unique [][2]int32, which []int32) {
	unique = make([][2]int32, len(pairs))
	for i, p := range pairs {
		unique[i] = [2]int32{min(p[0], p[1]), max(p[0], p[1])}
	}
	slices.SortFunc(unique, comparePairs)
	unique = slices.Compact(unique)
	which = make([]int32, len(pairs))
	for i, p := range pairs {
		at, _ := slices.BinarySearchFunc(unique, [2]int32{min(p[0], p[1]), max(p[0], p[1])}, comparePairs)
		which[i] = int32(at)
	}
	return unique, which
}

func comparePairs(a, b [2]int32) int {
	return cmp.Or(cmp.Compare(a[0], b[0]), cmp.Compare(a[1], b[1]))
}

func (p *Pattern) setFactors(columns [][]int32) {
	p.start = make([]int32, p.n+1)
	inRow := make([]int32, p.n+1)
	for k, column := range columns {
		p.start[k+1] = p.start[k] + int32(len(column))
		from := len(p.row)
		for _, v := range column {
			p.row = append(p.row, p.step[v])
			inRow[p.step[v]+1]++
		}
		slices.Sort(p.row[from:])
	}
	for k := range p.n {
		inRow[k+1] += inRow[k]
	}
	p.first = inRow
	p.lRow = make([]int32, len(p.row))
	next := slices.Clone(p.first)
	for k := range p.n {
		for _, r := range p.row[p.start[k]:p.start[k+1]] {
			p.lRow[next[r]] = int32(k)
			next[r]++
		}
	}
}

// setEntries lays out the entries of A by rows, and says where each pair stands.
func (p *Pattern) setEntries(unique [][2]int32, which []int32) {
	p.aStart = make([]int32, p.n+1)
	for _, u := range unique {
		p.aStart[max(p.step[u[0]], p.step[u[1]])+1]++
	}
	for k := range p.n {
		p.aStart[k+1] += p.aStart[k]
	}
	p.aCol = make([]int32, len(unique))
	place := make([]Entry, len(unique))
	next := slices.Clone(p.aStart)
	for i, u := range unique {
		a, b := p.step[u[0]], p.step[u[1]]
		row, col := max(a, b), min(a, b)
		p.aCol[next[row]] = col
		place[i] = Entry(next[row])
		next[row]++
	}
	p.entries = make([]Entry, len(which))
	for i, w := range which {
		p.entries[i] = place[w]
	}
}

// Size is the number of rows.
func (p *Pattern) Size() int { return p.n }

// Fill is the number of entries of L below the diagonal: as many as the matrix has pairs,
// and those that elimination adds.
func (p *Pattern) Fill() int { return len(p.row) }

// Entry is the place of the k-th of the pairs that NewPattern was given.
func (p *Pattern) Entry(k int) Entry { return p.entries[k] }
