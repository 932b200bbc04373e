package source

// Suggest returns the candidate that was probably meant by word, or "" if none is close.
func Suggest(word string, candidates []string) string { return "" }
