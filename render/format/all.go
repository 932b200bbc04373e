package format

// All lists the forms, the usual one first.
func All() []*Format {
	return []*Format{
		SVG(),
		PDF(),
		PNG(),
		CSV(),
	}
}
