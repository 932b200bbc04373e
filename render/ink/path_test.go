package ink

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func TestArcStaysOnItsCircle(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		centre := At(rapid.Float64Range(-50, 50).Draw(t, "x"), rapid.Float64Range(-50, 50).Draw(t, "y"))
		radius := rapid.Float64Range(0.1, 40).Draw(t, "radius")
		from := rapid.Float64Range(-360, 360).Draw(t, "from")
		sweep := rapid.Float64Range(-360, 360).Draw(t, "sweep")
		p := Path(nil).Arc(centre, radius, from, from+sweep)
		for _, run := range p.Flatten(0.001) {
			for _, at := range run {
				if off := math.Abs(math.Hypot(at.X-centre.X, at.Y-centre.Y) - radius); off > radius*0.0004 {
					t.Fatalf("%v lies %v mm off a circle of %v mm", at, off, radius)
				}
			}
		}
		end := p[len(p)-1].P
		sin, cos := math.Sincos((from + sweep) * math.Pi / 180)
		if math.Hypot(end.X-centre.X-radius*cos, end.Y-centre.Y-radius*sin) > 1e-6 {
			t.Fatalf("the arc ends at %v", end)
		}
	})
}

func TestBounds(t *testing.T) {
	for _, c := range []struct {
		name string
		path Path
		want Rect
	}{
		{"line", Lines(At(3, 4), At(1, 9)), Rect{At(1, 4), At(3, 9)}},
		{"circle", Circle(At(10, 20), 5), Rect{At(5, 15), At(15, 25)}},
		{"ellipse", Ellipse(At(10, 20), 5, 2), Rect{At(5, 18), At(15, 22)}},
		{"lower half", Path(nil).Arc(At(0, 0), 2, 0, 180), Rect{At(-2, 0), At(2, 2)}},
		{"rectangle", Rect{At(1, 2), At(5, 4)}.Path(), Rect{At(1, 2), At(5, 4)}},
		{"round", Rect{At(1, 2), At(5, 4)}.Round(9), Rect{At(1, 2), At(5, 4)}},
		{"two pieces", Path(nil).Move(0, 0).Line(1, 0).Move(5, 5).Line(6, 6), Rect{At(0, 0), At(6, 6)}},
		{"a move that draws nothing", Path(nil).Move(90, 90).Move(1, 1).Line(2, 2), Rect{At(1, 1), At(2, 2)}},
	} {
		got, any := c.path.Bounds()
		if !any || !c.want.Grow(0.01).Holds(got) || !got.Grow(0.01).Holds(c.want) {
			t.Errorf("%s: bounds %v %v, want %v", c.name, got, any, c.want)
		}
	}
	if _, any := (Path{}).Move(1, 1).Bounds(); any {
		t.Error("a lone move has bounds")
	}
}

func TestFlattenKeepsItsTolerance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := func(name string) float64 { return rapid.Float64Range(-100, 100).Draw(t, name) }
		curve := Path(nil).Move(c("ax"), c("ay")).Curve(At(c("cx"), c("cy")), At(c("dx"), c("dy")), c("bx"), c("by"))
		coarse, fine := curve.Flatten(0.1)[0], curve.Flatten(0.0005)[0]
		for _, at := range fine {
			near := math.Inf(1)
			for i := 1; i < len(coarse); i++ {
				near = min(near, distance(at, coarse[i-1], coarse[i]))
			}
			if near > 0.1+0.01 {
				t.Fatalf("%v lies %v mm off the flattened curve", at, near)
			}
		}
	})
}

// distance is that of a point from a stretch of line.
func distance(p, a, b Point) float64 {
	dx, dy := b.X-a.X, b.Y-a.Y
	along := 0.0
	if long := dx*dx + dy*dy; long > 0 {
		along = min(1, max(0, ((p.X-a.X)*dx+(p.Y-a.Y)*dy)/long))
	}
	return math.Hypot(p.X-a.X-along*dx, p.Y-a.Y-along*dy)
}

func TestMapMovesEveryPoint(t *testing.T) {
	p := Circle(At(0, 0), 2).Move(5, 5).Line(6, 6).Map(func(q Point) Point { return At(q.X+10, q.Y*2) })
	got, _ := p.Bounds()
	if want := (Rect{At(8, -4), At(16, 12)}); !want.Grow(0.01).Holds(got) || !got.Grow(0.01).Holds(want) {
		t.Errorf("bounds after the move: %v, want %v", got, want)
	}
}
