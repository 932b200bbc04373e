package settle

// piece numbers the pieces of a characteristic, each of which is one law. 0 is the piece
// on which a search for an operating point begins.
type piece uint8

// bend is what turns one piece of a branch's characteristic into another.
type bend interface {
	// start is the piece on which a search begins, given the voltage of the branch with
	// all constant powers and currents of consumers left out.
	start(v float64, now piece) piece
	// outside says how far the branch, solved on a piece, lies outside of that piece,
	// relative to the piece's bound; not above 0 inside. to is the piece beyond that bound.
	outside(v, i float64, now piece) (excess float64, to piece)
	// stranded is the piece of a branch whose constant current nothing can close.
	stranded(now piece) piece
}

// bending is a bend of a compiled network.
type bending struct {
	bend
	model  model
	branch int32
	feeds  int32 // the branch that it delivers the power of; -1: none
}

func isConsumer(b bend) bool {
	_, ok := b.(band)
	return ok
}

func isOutput(b bend) bool {
	_, ok := b.(regulator)
	return ok
}

// outsideTolerance is how far outside its piece a branch may lie, relatively, before it
// goes to the next. It keeps a branch that sits on a bound from going to and fro with the
// rounding.
const outsideTolerance = 1e-9

// The pieces of a consumer.
const (
	upper    piece = iota // holds its power or current
	lower                 // too little voltage: a resistor
	mirrored              // upper, with the voltage reversed
	reversed              // polarised, and the voltage reversed: open
)

// band is a consumer that holds its power or current from `low` volts up and is a
// resistor below, of the size that makes the two meet at low. With ohms it is a resistor
// throughout.
type band struct {
	low, watts, amps float64
	ohms             float64
	polarised        bool
}

// leastLow is the low end of a consumer whose file states none, in volts: the voltage from
// which a load without a band counts as on.
const leastLow = 0.1

func newBand(low, watts, amps float64, polarised bool) band {
	return band{low: orElse(low, leastLow), watts: orElse(watts, 0), amps: orElse(amps, 0), polarised: polarised}
}

func (b band) law(on piece) law {
	switch on {
	case upper:
		return law{watts: b.watts, amps: b.amps}
	case mirrored:
		return law{watts: b.watts, amps: -b.amps}
	case lower:
		if b.ohms > 0 {
			return ohmic(b.ohms)
		}
		return law{siemens: b.watts/(b.low*b.low) + b.amps/b.low}
	}
	return law{}
}

func (b band) start(v float64, _ piece) piece {
	switch {
	case v < 0 && b.polarised:
		return reversed
	case b.ohms > 0:
		return lower
	case v >= b.low:
		return upper
	case v <= -b.low:
		return mirrored
	}
	return lower
}

func (b band) outside(v, _ float64, now piece) (excess float64, to piece) {
	switch now {
	case upper:
		return (b.low - v) / b.low, lower
	case mirrored:
		return (b.low + v) / b.low, lower
	case reversed:
		return v / b.low, lower
	}
	switch {
	case v < 0 && b.polarised:
		return -v / b.low, reversed
	case b.ohms > 0:
		return 0, lower
	case v < 0:
		return (-v - b.low) / b.low, mirrored
	}
	return (v - b.low) / b.low, upper
}

func (b band) stranded(now piece) piece {
	if now == reversed {
		return reversed
	}
	return lower
}

// The pieces of a regulated output.
const (
	regulating piece = iota // holds its voltage
	limiting                // holds its most current
	backed                  // something else holds the voltage higher: open
)

// regulator is a regulated output: `volts` behind `ohms`, at most `amps`, never taking
// current. Its branch runs from the positive of the output to the negative, so that what
// it delivers counts negative. Without amps it has no limit.
type regulator struct{ volts, ohms, amps float64 }

func (r regulator) law(on piece) law {
	switch on {
	case regulating:
		return behind(r.volts, r.ohms)
	case limiting:
		return law{amps: -r.amps}
	}
	return law{}
}

func (r regulator) start(_ float64, now piece) piece { return r.stranded(now) }

func (r regulator) stranded(now piece) piece {
	if now == limiting {
		return regulating
	}
	return now
}

func (r regulator) outside(v, i float64, now piece) (excess float64, to piece) {
	switch now {
	case limiting:
		knee := r.volts - r.ohms*r.amps
		return (v - knee) / r.volts, regulating
	case backed:
		return (r.volts - v) / r.volts, regulating
	}
	if i > 0 {
		return i * r.ohms / r.volts, backed
	}
	if r.amps > 0 {
		return (-i - r.amps) / r.amps, limiting
	}
	return 0, regulating
}

// on reports whether a consumer of this band has the voltage to work.
func (b band) on(v float64) bool {
	if !b.polarised {
		v = max(v, -v)
	}
	return v >= b.low
}
