package fault

// Class is how often a fault happens on carts of this sort. The three classes and their
// weights are our own, in the manner of the occurrence ratings of IEC 60812: common
// practice, no published source.
type Class uint8

// The classes.
const (
	Rare       Class = iota + 1 // seen once in a working life
	Occasional                  // every shop has seen it
	Common                      // the first thing to look for
)

// Weight is how much likelier than a rare fault a fault of this class is, before anything
// was measured.
func (c Class) Weight() float64 {
	switch c {
	case Common:
		return 10
	case Occasional:
		return 3
	}
	return 1
}

// String is the class in a word.
func (c Class) String() string {
	switch c {
	case Common:
		return "common"
	case Occasional:
		return "occasional"
	case Rare:
		return "rare"
	}
	return "unknown"
}
