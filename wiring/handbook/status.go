package handbook

import "strings"

// Status says how far a figure is to be trusted.
type Status string

// The statuses.
const (
	Read     Status = "read"       // from the source's text, or a public quotation of it
	Memory   Status = "memory"     // common knowledge of the trade: follow the maker
	Computed Status = "computed"   // from a law
	OwnWord  Status = "own choice" // decided here
	Shop     Status = "shop"       // a table that someone put in place of ours
)

// statusOf finds the word of a table's status line or of a row's cell. A table whose
// status is mixed ("per row", "read, except …") is no more than its weakest part.
func statusOf(text string) Status {
	for _, s := range []Status{Memory, OwnWord, Read, Computed} {
		if strings.Contains(text, string(s)) {
			return s
		}
	}
	return Shop
}
