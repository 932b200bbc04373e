package arrange

import "github.com/lugwright/lugwright/render/symbol"

// hangFlags puts each flag straight before the pin that it hangs on.
func (s *starter) hangFlags() {
	for i := range s.d.Items {
		if s.d.Items[i].Role != Flag || len(s.links[i]) == 0 {
			continue
		}
		to := s.links[i][0]
		if s.isBar(to.to) {
			s.flagOnBar(i, to.to-len(s.d.Items))
			continue
		}
		at, side := s.l.Pin(s.d, to.to, to.far)
		s.flagOnPin(i, at, side)
	}
}

// flagReach is the length of the wire to a flag, in units.
const flagReach = 3

// flagOnPin turns a flag so that it looks away from the pin, and puts it there.
func (s *starter) flagOnPin(i int, at symbol.Cell, side symbol.Side) {
	want := facing(side)
	for f := range s.d.Items[i].Forms {
		if s.d.Items[i].Forms[f].Pins[0].Side == want {
			s.l.Items[i].Form = f
			break
		}
	}
	pin := s.d.Items[i].Forms[s.l.Items[i].Form].Pins[0].At
	s.l.Items[i].At = symbol.Cell{X: at.X + flagReach*sideX[side] - pin.X, Y: at.Y + flagReach*sideY[side] - pin.Y}
}

// flagOnBar puts a flag beside a bar: before the end of a free one, somewhere along a rail.
func (s *starter) flagOnBar(i, b int) {
	bar := s.l.Bars[b]
	at, side := bar.End(), symbol.Right
	switch s.d.Bars[b].Row {
	case TopRow:
		side = symbol.Bottom
	case BottomRow:
		side = symbol.Top
	}
	if s.d.Bars[b].Row != Free {
		at.X = bar.At.X + bar.Length*(i+1)/(len(s.d.Items)+1)
	}
	s.flagOnPin(i, at, side)
}

func facing(side symbol.Side) symbol.Side {
	switch side {
	case symbol.Left:
		return symbol.Right
	case symbol.Right:
		return symbol.Left
	case symbol.Top:
		return symbol.Bottom
	}
	return symbol.Top
}
