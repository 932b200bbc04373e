package sparse

import (
	"math"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"pgregory.net/rapid"
)

// system is a matrix in both forms.
type system struct {
	matrix *Matrix
	dense  [][]float64
}

func newSystem(n int, pairs [][2]int32) *system {
	s := &system{matrix: NewPattern(n, pairs).NewMatrix(), dense: make([][]float64, n)}
	for i := range s.dense {
		s.dense[i] = make([]float64, n)
	}
	return s
}

func (s *system) diagonal(i int32, v float64) {
	s.matrix.AddDiagonal(i, v)
	s.dense[i][i] += v
}

// branch adds a conductance between a and b, and beside it a transfer from b to a's row
// that makes the matrix unsymmetric.
func (s *system) branch(k int, a, b int32, siemens, transfer float64) {
	e := s.matrix.pattern.Entry(k)
	s.diagonal(a, siemens)
	s.diagonal(b, siemens)
	s.matrix.AddPair(e, -siemens)
	s.matrix.Add(e, a, b, -transfer)
	s.dense[a][b] -= siemens + transfer
	s.dense[b][a] -= siemens
	s.diagonal(a, transfer)
}

func drawPairs(t *rapid.T, n int) [][2]int32 {
	var pairs [][2]int32
	for range rapid.IntRange(0, 3*n).Draw(t, "branches") {
		a := rapid.Int32Range(0, int32(n-1)).Draw(t, "a")
		b := rapid.Int32Range(0, int32(n-1)).Draw(t, "b")
		if a != b {
			pairs = append(pairs, [2]int32{a, b})
		}
	}
	return pairs
}

func TestSolutionAgreesWithDenseElimination(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 30).Draw(t, "n")
		pairs := drawPairs(t, n)
		s := newSystem(n, pairs)
		for k, p := range pairs {
			siemens := math.Pow(10, rapid.Float64Range(-2, 2).Draw(t, "siemens"))
			s.branch(k, p[0], p[1], siemens, siemens*rapid.Float64Range(0, 1).Draw(t, "transfer"))
		}
		b := make([]float64, n)
		for i := range b {
			s.diagonal(int32(i), rapid.Float64Range(0.1, 1).Draw(t, "to ground"))
			b[i] = rapid.Float64Range(-10, 10).Draw(t, "b")
		}
		want := solveDense(s.dense, b)

		f := s.matrix.pattern.NewFactors()
		for range 2 { // a second time with the same room
			if row, ok := f.Factor(s.matrix); !ok {
				t.Fatalf("pivot of row %d is not positive", row)
			}
		}
		got := slices.Clone(b)
		f.Solve(got)
		if d := cmp.Diff(want, got, cmpopts.EquateApprox(1e-9, 1e-9)); d != "" {
			t.Fatal(d)
		}
		back := make([]float64, n)
		s.matrix.Multiply(back, got)
		if d := cmp.Diff(b, back, cmpopts.EquateApprox(1e-8, 1e-8)); d != "" {
			t.Fatalf("A x is not b: %s", d)
		}
	})
}

// A tree is eliminated from its leaves and fills nothing in; a ring of n nodes fills in
// n-3 chords, whatever the order (a cycle is made chordal by n-3 chords at least).
func TestFill(t *testing.T) {
	for _, c := range []struct {
		name  string
		n     int
		next  func(i int32) int32 // node that node i is joined to
		edges int
		want  int
	}{
		{"chain", 1000, func(i int32) int32 { return i - 1 }, 999, 999},
		{"star", 1000, func(i int32) int32 { return 0 }, 999, 999},
		{"binary tree", 1023, func(i int32) int32 { return (i - 1) / 2 }, 1022, 1022},
		{"ring", 1000, func(i int32) int32 { return i - 1 }, 1000, 1000 + 997},
	} {
		t.Run(c.name, func(t *testing.T) {
			var pairs [][2]int32
			for i := int32(1); i < int32(c.n); i++ {
				pairs = append(pairs, [2]int32{i, c.next(i)})
			}
			if len(pairs) < c.edges {
				pairs = append(pairs, [2]int32{0, int32(c.n - 1)})
			}
			if got := NewPattern(c.n, pairs).Fill(); got != c.want {
				t.Errorf("fill %d, want %d", got, c.want)
			}
		})
	}
}

func TestPatternHoldsEveryEntryOnce(t *testing.T) {
	p := NewPattern(4, [][2]int32{{0, 1}, {2, 1}, {1, 0}, {1, 2}, {3, 0}})
	if p.Entry(0) != p.Entry(2) || p.Entry(1) != p.Entry(3) {
		t.Error("a pair that repeats has two places")
	}
	if p.Entry(0) == p.Entry(1) || p.Entry(4) == p.Entry(0) || p.Size() != 4 {
		t.Error("different pairs share a place")
	}
}

func TestOrderIsAPermutation(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(0, 40).Draw(t, "n")
		var pairs [][2]int32
		if n > 0 {
			pairs = drawPairs(t, n)
		}
		p := NewPattern(n, pairs)
		for k, v := range p.node {
			if p.step[v] != int32(k) {
				t.Fatalf("step %d eliminates %d, which thinks it is %d", k, v, p.step[v])
			}
		}
		for k := range n {
			if !slices.IsSorted(p.row[p.start[k]:p.start[k+1]]) || !slices.IsSorted(p.lRow[p.first[k]:p.first[k+1]]) {
				t.Fatal("rows are not in the order in which they are needed")
			}
		}
	})
}

// What no stable network has must be refused, not solved.
func TestNonPositivePivotsAreReported(t *testing.T) {
	for name, build := range map[string]func() *Matrix{
		"nothing to ground": func() *Matrix {
			m := NewPattern(2, [][2]int32{{0, 1}}).NewMatrix()
			m.AddDiagonal(0, 3)
			m.AddDiagonal(1, 3)
			m.AddPair(0, -3)
			return m
		},
		"negative slope too large": func() *Matrix {
			m := NewPattern(1, nil).NewMatrix()
			m.AddDiagonal(0, 1-1.5)
			return m
		},
		"empty row": func() *Matrix { return NewPattern(1, nil).NewMatrix() },
		"not a number": func() *Matrix {
			m := NewPattern(1, nil).NewMatrix()
			m.AddDiagonal(0, math.NaN())
			return m
		},
	} {
		t.Run(name, func(t *testing.T) {
			m := build()
			if _, ok := m.pattern.NewFactors().Factor(m); ok {
				t.Error("accepted")
			}
		})
	}
}

// After a failure the room must be clean for the next matrix.
func TestFactorsRecoverAfterFailure(t *testing.T) {
	p := NewPattern(3, [][2]int32{{0, 1}, {1, 2}, {0, 2}})
	f := p.NewFactors()
	bad := p.NewMatrix()
	for i := range int32(3) {
		bad.AddDiagonal(i, 2)
		bad.AddPair(Entry(i), -1)
	}
	if _, ok := f.Factor(bad); ok {
		t.Fatal("singular matrix accepted")
	}
	good := p.NewMatrix()
	for i := range int32(3) {
		good.AddDiagonal(i, float64(i)+2)
	}
	if _, ok := f.Factor(good); !ok {
		t.Fatal("diagonal matrix refused")
	}
	x := []float64{2, 3, 4}
	f.Solve(x)
	if d := cmp.Diff([]float64{1, 1, 1}, x); d != "" {
		t.Error(d)
	}
}

func BenchmarkFactorLadder(b *testing.B) {
	const n = 100_000
	var pairs [][2]int32
	for i := int32(1); i < n; i++ {
		pairs = append(pairs, [2]int32{i - 1, i})
	}
	p := NewPattern(n, pairs)
	m, f := p.NewMatrix(), p.NewFactors()
	for k := range pairs {
		m.AddPair(p.Entry(k), -1)
	}
	for i := range int32(n) {
		m.AddDiagonal(i, 2.01)
	}
	x := make([]float64, n)
	for b.Loop() {
		f.Factor(m)
		f.Solve(x)
	}
}
