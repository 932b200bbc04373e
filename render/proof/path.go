package proof

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"github.com/lugwright/lugwright/render/ink"
)

// tolerance is how far two points may lie apart and still be one, in millimetres: the file
// is written to thousandths.
const tolerance = 0.02

// readPath reads the commands M, L, C and Z, curves as their flattened line.
func readPath(d string) ([][]ink.Point, error) {
	var p ink.Path
	for len(d) > 0 {
		op := d[0]
		end := strings.IndexAny(d[1:], "MLCZ")
		args := d[1:]
		if end >= 0 {
			args, d = d[1:1+end], d[1+end:]
		} else {
			d = ""
		}
		n, err := numbers(args)
		if err != nil {
			return nil, err
		}
		switch {
		case op == 'M' && len(n) == 2:
			p = p.Move(n[0], n[1])
		case op == 'L' && len(n) == 2:
			p = p.Line(n[0], n[1])
		case op == 'C' && len(n) == 6:
			p = p.Curve(ink.At(n[0], n[1]), ink.At(n[2], n[3]), n[4], n[5])
		case op == 'Z' && len(n) == 0:
			p = p.Close()
		default:
			return nil, fmt.Errorf("path command %q with %d numbers", op, len(n))
		}
	}
	return p.Flatten(0.01), nil
}

func numbers(s string) ([]float64, error) {
	var n []float64
	for _, f := range strings.Fields(s) {
		v, err := strconv.ParseFloat(f, 64)
		if err != nil {
			return nil, fmt.Errorf("path: %w", err)
		}
		n = append(n, v)
	}
	return n, nil
}

func near(a, b ink.Point) bool {
	return math.Abs(a.X-b.X) <= tolerance && math.Abs(a.Y-b.Y) <= tolerance
}

func hull(runs [][]ink.Point) ink.Rect {
	box := ink.Rect{Min: ink.At(math.Inf(1), math.Inf(1)), Max: ink.At(math.Inf(-1), math.Inf(-1))}
	for _, run := range runs {
		for _, p := range run {
			box.Min.X, box.Min.Y = min(box.Min.X, p.X), min(box.Min.Y, p.Y)
			box.Max.X, box.Max.Y = max(box.Max.X, p.X), max(box.Max.Y, p.Y)
		}
	}
	return box
}

func centre(run []ink.Point) ink.Point {
	b := hull([][]ink.Point{run})
	return ink.At((b.Min.X+b.Max.X)/2, (b.Min.Y+b.Max.Y)/2)
}

// bodyOf returns the box of a run of a symbol's ink without its last stroke to a pin. A run
// that is nothing but such a stroke has none.
func bodyOf(run []ink.Point, pins []ink.Point) (ink.Rect, bool) {
	atPin := func(p ink.Point) bool {
		for _, q := range pins {
			if near(p, q) {
				return true
			}
		}
		return false
	}
	for len(run) > 0 && atPin(run[0]) {
		run = inward(run)
	}
	for len(run) > 0 && atPin(run[len(run)-1]) {
		run = reversed(inward(reversed(run)))
	}
	if len(run) < 2 {
		return ink.Rect{}, false
	}
	return hull([][]ink.Point{run}), true
}

// strokeToPin is how long the stroke from a pin to its body is at most, in millimetres:
// half a unit.
const strokeToPin = 1.25

// inward cuts the stroke to the pin off the beginning of a run.
func inward(run []ink.Point) []ink.Point {
	if len(run) < 2 {
		return nil
	}
	a, b := run[0], run[1]
	long := math.Hypot(b.X-a.X, b.Y-a.Y)
	if long <= strokeToPin+tolerance {
		return run[1:]
	}
	t := strokeToPin / long
	cut := append([]ink.Point{{X: a.X + t*(b.X-a.X), Y: a.Y + t*(b.Y-a.Y)}}, run[1:]...)
	return cut
}

func reversed(run []ink.Point) []ink.Point {
	out := make([]ink.Point, len(run))
	for i, p := range run {
		out[len(run)-1-i] = p
	}
	return out
}
