package settle

// disjoint is a forest of disjoint sets with path halving. The smallest member of a set
// is its root, so that nothing depends on the order of joining.
type disjoint []int32

func newDisjoint(n int) disjoint {
	d := make(disjoint, n)
	d.reset()
	return d
}

// reset makes each member a set of its own.
func (d disjoint) reset() {
	for i := range d {
		d[i] = int32(i)
	}
}

func (d disjoint) find(i int32) int32 {
	for d[i] != i {
		d[i] = d[d[i]]
		i = d[i]
	}
	return i
}

func (d disjoint) join(i, j int32) {
	i, j = d.find(i), d.find(j)
	d[max(i, j)] = min(i, j)
}
