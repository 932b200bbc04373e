package route

// dirTo returns the direction from a point to its neighbour.
func (g *grid) dirTo(p, q int) int {
	switch q - p {
	case 1:
		return right
	case -1:
		return left
	case g.w:
		return down
	}
	return up
}

// put lays a path on the field.
func (r *Router) put(w int, points []int, price int) {
	r.paths[w], r.price[w] = points, price
	r.mark(points, int32(w))
}

// lift takes the path of a wire off the field.
func (r *Router) lift(w int) {
	r.mark(r.paths[w], none)
	r.paths[w] = nil
}

func (r *Router) mark(points []int, owner int32) {
	for i := 1; i < len(points); i++ {
		axis, at := r.grid.stretch(points[i-1], r.grid.dirTo(points[i-1], points[i]))
		r.grid.owner[axis][at] = owner
	}
}

// clear lifts every wire that a path runs along, or whose bends it touches, and notes
// where they fought.
func (r *Router) clear(w int, points []int) {
	for i := 1; i < len(points); i++ {
		dir := r.grid.dirTo(points[i-1], points[i])
		axis, at := r.grid.stretch(points[i-1], dir)
		if o := r.grid.owner[axis][at]; o != none {
			if r.grid.fights[axis][at] < 255 {
				r.grid.fights[axis][at]++
			}
			r.lift(int(o))
		}
	}
	for i := 1; i+1 < len(points); i++ {
		r.clearPoint(points, i)
	}
}

// clearPoint lifts the wires at a point that the path may not share with them.
func (r *Router) clearPoint(points []int, i int) {
	g, p := r.grid, points[i]
	came, goes := g.dirTo(points[i-1], p), g.dirTo(p, points[i+1])
	a, b := g.ownerOf(p, (came+1)&3), g.ownerOf(p, (came+3)&3)
	if came == goes && a == b {
		return
	}
	for dir := range 4 {
		if o := g.ownerOf(p, dir); o != none {
			r.lift(int(o))
		}
	}
}
