package settle

import "github.com/lugwright/lugwright/wiring"

// What every converter has, and what one has whose file says nothing else.
const (
	converterOhms       = 0.005 // behind its regulated voltage
	converterEfficiency = 0.9
	converterStarts     = 1.02 // relative to the low end of its input
	converterReturns    = 0.98 // runs again below this share of the high end of its input
)

// converter regulates its output and takes from its input what it delivers, divided by its
// efficiency, and its idle current. Its first branch is the input, its second the output.
type converter struct {
	unit
	in      band // running: idle current alone; what it delivers comes on top
	standby band
	out     regulator
	inBend  int32
	outBend int32
	feed    float64 // 1 / efficiency
	starts  float64
	high    float64 // 0: no upper end
	when    *condition
}

func newConverter(e *wiring.Converter, c *compiler) model {
	input := c.branch(e.InA, e.InB)
	output := c.branch(e.OutA, e.OutB)
	low := float64(e.Works.Low)
	v := &converter{
		unit:    c.unit(e, input, output),
		in:      newBand(low, 0, float64(e.Idle), false),
		standby: newBand(low, 0, float64(e.Standby), false),
		out:     regulator{float64(e.Volts), converterOhms, float64(e.Amps)},
		feed:    1 / orElse(float64(e.Efficiency), converterEfficiency),
		starts:  orElse(float64(e.Starts), low*converterStarts),
		high:    float64(e.Works.High),
	}
	v.inBend = c.bend(v, input, v.in)
	v.outBend = c.bend(v, output, v.out)
	c.feeds(v.inBend, input, output)
	c.later(func() { v.when = c.condition(e.When) })
	return v
}

func (v *converter) behave(s *solving) {
	running := s.memory[v.id]
	s.bends(v.inBend, true)
	s.bends(v.outBend, running)
	on := s.piece[v.inBend]
	if !running {
		s.set(v.first, v.standby.law(on))
		s.set(v.output(), law{})
		return
	}
	input := v.in.law(on)
	switch on {
	case upper, mirrored:
		input.feed, input.feeds = v.feed, v.output()
	case lower:
		// The power that it delivered when its input fell too low, as a resistor.
		input.siemens += s.delivered[v.inBend] * v.feed / (v.in.low * v.in.low)
	}
	s.set(v.first, input)
	s.set(v.output(), v.out.law(s.piece[v.outBend]))
}

func (v *converter) output() int32 { return v.first + 1 }

// holds: the converter runs.
func (v *converter) holds(s *solving) bool     { return s.memory[v.id] }
func (v *converter) supplying(s *solving) bool { return s.memory[v.id] }

func (v *converter) sees(s *solving) float64 { return s.volts[v.first] }

func (v *converter) next(s *solving) bool {
	if v.out.volts <= 0 || !v.when.true(s) {
		return false
	}
	input := v.sees(s)
	if s.memory[v.id] {
		return input >= v.in.low && (v.high == 0 || input <= v.high)
	}
	return input >= v.starts && (v.high == 0 || input <= v.high*converterReturns)
}

func (v *converter) margin(s *solving) float64 {
	input := v.sees(s)
	if !s.memory[v.id] {
		return distance(input, v.starts)
	}
	if v.high != 0 && input > v.high {
		return distance(input, v.high)
	}
	return distance(input, v.in.low)
}
