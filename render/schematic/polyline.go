package schematic

import (
	"github.com/lugwright/lugwright/render/ink"
	"github.com/lugwright/lugwright/render/symbol"
)

// length of a line of level and upright runs.
func length(points []ink.Point) float64 {
	sum := 0.0
	for i := 1; i < len(points); i++ {
		sum += abs(points[i].X-points[i-1].X) + abs(points[i].Y-points[i-1].Y)
	}
	return sum
}

// pointAlong is the point at a distance from the beginning of a line.
func pointAlong(points []ink.Point, along float64) joint {
	left := along
	for i := 1; i < len(points); i++ {
		a, b := points[i-1], points[i]
		long := abs(a.X-b.X) + abs(a.Y-b.Y)
		if left <= long || i == len(points)-1 {
			t := 0.0
			if long > 0 {
				t = max(0, min(left/long, 1))
			}
			return joint{at: ink.Point{X: a.X + t*(b.X-a.X), Y: a.Y + t*(b.Y-a.Y)}, level: a.Y == b.Y, along: along}
		}
		left -= long
	}
	return joint{at: points[0], along: along}
}

// cutAt cuts a line at the joints, which lie on it in order.
func cutAt(points []ink.Point, joints []joint) [][]ink.Point {
	runs := [][]ink.Point{{points[0]}}
	done, next := 0.0, 0
	add := func(p ink.Point) { runs[len(runs)-1] = append(runs[len(runs)-1], p) }
	for i := 1; i < len(points); i++ {
		end := done + abs(points[i].X-points[i-1].X) + abs(points[i].Y-points[i-1].Y)
		for next < len(joints) && joints[next].along < end {
			add(joints[next].at)
			runs = append(runs, []ink.Point{joints[next].at})
			next++
		}
		add(points[i])
		done = end
	}
	return runs
}

// touchesPath reports whether a line along a path, of a breadth in units, runs through a box.
func touchesPath(b symbol.Box, path []symbol.Cell, thick float64) bool {
	half := thick / 2
	for i := 1; i < len(path); i++ {
		p, q := path[i-1], path[i]
		run := symbol.Box{X0: float64(min(p.X, q.X)) - half, X1: float64(max(p.X, q.X)) + half, Y0: float64(min(p.Y, q.Y)) - half, Y1: float64(max(p.Y, q.Y)) + half}
		if touch(b, run) {
			return true
		}
	}
	return false
}

func touch(a, b symbol.Box) bool {
	return a.X0 < b.X1 && b.X0 < a.X1 && a.Y0 < b.Y1 && b.Y0 < a.Y1
}

func abs(v float64) float64 {
	if v < 0 {
		return -v
	}
	return v
}
