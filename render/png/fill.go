package png

// full is a pixel that is covered altogether.
const full = 255

// filler finds how much of each pixel contours cover, by the non-zero rule, from the exact
// areas of their edges. Where contours overlap in parts of one pixel their parts add up.
//
// An edge leaves in each pixel that it passes how far it runs downwards there (cover) and
// twice the area between it and the pixel's left side (area). From left to right the sum of
// cover is then how much of a row lies inside.
type filler struct {
	wide, high  int
	cover, area []int32
	// from and to are the pixels of each row that an edge has passed: no others are looked at.
	from, to []int
	low, top int // rows that an edge has passed
}

func newFiller(wide, high int) *filler {
	f := &filler{wide: wide, high: high, cover: make([]int32, wide*high), area: make([]int32, wide*high)}
	f.from, f.to = make([]int, high), make([]int, high)
	f.reset()
	return f
}

// reset forgets all rows.
func (f *filler) reset() {
	f.top, f.low = f.high, -1
	for y := range f.from {
		f.from[y], f.to[y] = f.wide, -1
	}
}

// contour adds a closed line.
func (f *filler) contour(points []place) {
	for i, a := range points {
		f.edge(a, points[(i+1)%len(points)])
	}
}

// edge adds a straight line, row by row. Where it leaves a row depends on its own ends alone,
// so that rows fit together.
func (f *filler) edge(a, b place) {
	if a.y == b.y {
		return
	}
	down := b.y > a.y
	if !down {
		a, b = b, a
	}
	bottom := int64(f.high) * one
	x := func(y int64) int64 { return a.x + floorDiv((y-a.y)*(b.x-a.x), b.y-a.y) }
	for y := max(a.y, 0); y < min(b.y, bottom); {
		next := min((y/one+1)*one, b.y, bottom)
		f.rowEdge(int(y/one), f.within(x(y)), f.within(x(next)), next-y, down)
		y = next
	}
}

// within keeps a place on the picture: what lies left of it still begins its rows, what lies
// right of it changes nothing.
func (f *filler) within(x int64) int64 { return min(max(x, 0), int64(f.wide)*one) }

// rowEdge adds an edge inside one row that runs from one x to another and by high downwards.
func (f *filler) rowEdge(row int, from, to, high int64, down bool) {
	f.top, f.low = min(f.top, row), max(f.low, row)
	if from > to {
		from, to = to, from // a mirrored edge covers the same
	}
	begun := int64(0)
	for x := from; ; {
		pixel := x / one
		next := min((pixel+1)*one, to)
		done := high
		if next < to {
			done = floorDiv((next-from)*high, to-from)
		}
		f.add(row, int(pixel), done-begun, x+next-2*pixel*one, down)
		if next >= to {
			return
		}
		x, begun = next, done
	}
}

// add leaves an edge's mark in a pixel: by how much it runs downwards, and the sum of the two
// distances of its ends from the left side.
func (f *filler) add(row, pixel int, high, sides int64, down bool) {
	if pixel >= f.wide || high == 0 {
		return
	}
	if !down {
		high = -high
	}
	i := row*f.wide + pixel
	f.cover[i] += int32(high)
	f.area[i] += int32(high * sides)
	f.from[row], f.to[row] = min(f.from[row], pixel), max(f.to[row], pixel)
}

// each calls back for every pixel that is covered, with its cover up to full, and forgets all
// contours.
func (f *filler) each(paint func(x, y int, cover int32)) {
	for y := f.top; y <= f.low; y++ {
		sum := int32(0)
		for x := f.from[y]; x <= f.to[y]; x++ {
			i := y*f.wide + x
			sum += f.cover[i]
			// Twice a pixel's area is 2 * one * one.
			inside := (sum*2*one - f.area[i]) / (2 * one)
			f.cover[i], f.area[i] = 0, 0
			if inside = min(max(inside, -inside), full); inside > 0 {
				paint(x, y, inside)
			}
		}
	}
	f.reset()
}
