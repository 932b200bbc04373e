package arrange_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"github.com/lugwright/lugwright/render/arrange"
	"github.com/lugwright/lugwright/render/arrange/arrangetest"
)

// The line of current from rail to rail is a tower: its wires run straight down.
func TestStartStandsTowersUpright(t *testing.T) {
	b := arrangetest.Cart(110, 70)
	l, firm := arrange.Start(&b.D)
	for _, pair := range [][2]string{{"F1.2", "K1.in"}, {"K1.out", "U1.B+"}, {"F3.2", "T1.+"}} {
		a, z := b.Terminal(pair[0]), b.Terminal(pair[1])
		p, _ := l.Pin(&b.D, a.Item, a.Pin)
		q, _ := l.Pin(&b.D, z.Item, z.Pin)
		if p.X != q.X || p.Y >= q.Y {
			t.Errorf("%s at %v does not stand above %s at %v", pair[0], p, pair[1], q)
		}
		if !firm[a.Item] || !firm[z.Item] {
			t.Errorf("%s or %s is not told as part of a tower", pair[0], pair[1])
		}
	}
}

// Source left, commands left of the box that they command, motor right of it.
func TestStartKeepsSides(t *testing.T) {
	b := arrangetest.Cart(110, 70)
	l, _ := arrange.Start(&b.D)
	at := func(name string) float64 {
		h := arrange.Hull(l.Bodies(&b.D, b.Index(name)))
		return (h.X0 + h.X1) / 2
	}
	for _, pair := range [][2]string{{"G1", "U1"}, {"S3", "U1"}, {"S4", "U1"}, {"U1", "M1"}, {"G1", "S1"}} {
		if at(pair[0]) >= at(pair[1]) {
			t.Errorf("%s is not left of %s", pair[0], pair[1])
		}
	}
}

func TestStartSharesRows(t *testing.T) {
	b := arrangetest.New(110, 70).Bar("P", arrange.TopRow).Bar("Q", arrange.TopRow).Bar("N", arrange.BottomRow)
	for i, name := range []string{"F1", "F2", "F3", "F4"} {
		rail := "P"
		if i >= 2 {
			rail = "Q"
		}
		b.Two(name, arrange.InChain)
		b.D.Items[i].Section = i / 2
		b.Wire("W"+name, rail, name+".1", "RD", 2).Wire("V"+name, name+".2", "N", "BK", 2)
	}
	l, _ := arrange.Start(&b.D)
	p, q := l.Bars[0], l.Bars[1]
	if p.End().X+3 > q.At.X {
		t.Errorf("rails of one row meet: %+v, %+v", p, q)
	}
	for i := range b.D.Items {
		c, _ := l.Pin(&b.D, i, 0)
		rail := []arrange.Span{p, p, q, q}[i]
		if c.X < rail.At.X || c.X > rail.End().X {
			t.Errorf("%s at %v does not hang under its rail %+v", b.D.Items[i].Name, c, rail)
		}
	}
}

func TestStartIsTheSameAgain(t *testing.T) {
	b := arrangetest.Cart(110, 70)
	l, _ := arrange.Start(&b.D)
	m, _ := arrange.Start(&b.D)
	if diff := cmp.Diff(l, m); diff != "" {
		t.Error(diff)
	}
}

// A netlist without rails or roles still gets a layout on the sheet.
func TestStartWithoutRails(t *testing.T) {
	b := arrangetest.New(80, 50).Two("R1", arrange.InChain).Two("R2", arrange.InChain).Two("R3", arrange.InChain).Bar("X1", arrange.Free)
	b.Wire("W1", "R1.2", "R2.1", "RD", 1).Wire("W2", "R2.2", "X1", "RD", 1).Wire("W3", "X1", "R1.1", "RD", 1)
	l, _ := arrange.Start(&b.D)
	for i := range b.D.Items {
		if r := l.Reach(&b.D, i); r.X0 < 0 || r.Y0 < 0 || r.X1 > 80 || r.Y1 > 50 {
			t.Errorf("%s lies off the sheet: %+v", b.D.Items[i].Name, r)
		}
	}
}

func TestBreadthGrowsWithTheDiagram(t *testing.T) {
	small := arrangetest.New(110, 70).Bar("P", arrange.TopRow).Bar("N", arrange.BottomRow).Two("F1", arrange.InChain)
	small.Wire("W1", "P", "F1.1", "RD", 1).Wire("W2", "F1.2", "N", "BK", 1)
	if s, c := arrange.Breadth(&small.D), arrange.Breadth(&arrangetest.Cart(110, 70).D); s >= c || s <= 0 {
		t.Errorf("one fuse needs %v, a cart %v", s, c)
	}
}
