package colour

// Error is a text that is no wire colour.
type Error struct {
	Text    string // as written, blanks normalised, cut if very long
	Problem string // what is wrong: "RDBU does not say which is the tracer"
	Offer   string // what to write instead: "RD/BU or BU/RD"; may be empty
}

// Error returns "RDBU does not say which is the tracer: RD/BU or BU/RD".
func (e *Error) Error() string {
	if e.Offer == "" {
		return e.Problem
	}
	return e.Problem + ": " + e.Offer
}
