package settle

// law is the characteristic of one branch near the operating point. With v the voltage of
// its first end against its second, the current through it from first to second is
//
//	i = siemens (v - emf) + amps + (watts + feed p) / v
//
// in siemens, volts, amperes and watts, where p is the power that the branch `feeds`
// delivers and feed is that much more than 1 as a converter is less than perfect. The zero
// law is an open branch.
type law struct {
	siemens, emf, amps, watts float64

	feed  float64
	feeds int32
}

// conducts reports whether the branch holds its ends together: any difference of their
// voltages has a current of its own. A current or power that is constant does not.
func (l law) conducts() bool { return l.siemens > 0 }

// demands reports whether the branch carries a current that something else must close.
func (l law) demands() bool { return l.amps != 0 || l.curved() }

// curved reports whether the current is not a straight line of the voltage.
func (l law) curved() bool { return l.watts != 0 || l.feed != 0 }

// ohmic is the law of a resistance.
func ohmic(ohms float64) law { return law{siemens: 1 / bounded(ohms)} }

// behind is the law of a voltage with a resistance in series, its positive at the first end.
func behind(volts, ohms float64) law { return law{siemens: 1 / bounded(ohms), emf: volts} }

// least is the smallest resistance that a branch is given, in ohms, a hundredth of that of
// a good contact. It bounds the spread of magnitudes in the equations.
const least = 1e-6

func bounded(ohms float64) float64 {
	if ohms > least {
		return ohms
	}
	return least // also for what is not a number
}
