package symptom

// Severity is how much a fault matters: classes of our own, in the manner of IEC 60812.
type Severity uint8

// The severities, least first.
const (
	None   Severity = iota + 1 // nothing changes that could be noticed, even with a meter
	Latent                     // a meter finds it, nobody else: it waits for a second fault
	Loss                       // a function is lost
	Stop                       // the cart does not move, or is flat
	Damage                     // a device is destroyed, or something gets hot
	Hazard                     // it moves when it must not
)

// String is the severity in a word.
func (s Severity) String() string {
	switch s {
	case None:
		return "none"
	case Latent:
		return "latent"
	case Loss:
		return "loss"
	case Stop:
		return "stop"
	case Damage:
		return "damage"
	case Hazard:
		return "hazard"
	}
	return "unknown"
}
