package colour

import (
	"sort"
	"strings"
)

// mostOffered is how many near misses are worth reading.
const mostOffered = 3

// nearest returns the codes whose spellings are closest to a word that is none: one slip
// of the hand for up to three letters, two for more. It returns nothing if there are none,
// or too many to help.
func nearest(word string) []Code {
	lower := strings.ToLower(word)
	if codes, ok := vague[lower]; ok {
		return codes
	}
	slips := 1
	if len(lower) > 3 {
		slips = 2
	}
	best := slips + 1
	found := map[Code]bool{}
	for spelling, code := range spellings() {
		d := distance(lower, spelling)
		if d < best {
			best, found = d, map[Code]bool{}
		}
		if d == best {
			found[code] = true
		}
	}
	if best > slips || len(found) > mostOffered {
		return nil
	}
	return inOrder(found)
}

// spellings are all single words that mean a colour, in small letters.
func spellings() map[string]Code {
	all := make(map[string]Code, len(words)+2*len(read().order))
	for w, c := range words {
		all[w] = c
	}
	for c, e := range read().byKey {
		all[strings.ToLower(string(c))] = c
		all[e.name] = c
	}
	return all
}

// inOrder sorts codes as the table has them.
func inOrder(set map[Code]bool) []Code {
	place := map[Code]int{}
	for i, c := range read().order {
		place[c] = i
	}
	out := make([]Code, 0, len(set))
	for c := range set {
		out = append(out, c)
	}
	sort.Slice(out, func(i, j int) bool { return place[out[i]] < place[out[j]] })
	return out
}

// distance counts the single letters to insert, drop, change or swap with a neighbour that
// turn a into b (optimal string alignment).
func distance(a, b string) int {
	s, t := []rune(a), []rune(b)
	d := make([][]int, len(s)+1)
	for i := range d {
		d[i] = make([]int, len(t)+1)
		d[i][0] = i
	}
	for j := range d[0] {
		d[0][j] = j
	}
	for i := 1; i <= len(s); i++ {
		for j := 1; j <= len(t); j++ {
			change := 1
			if s[i-1] == t[j-1] {
				change = 0
			}
			d[i][j] = min(d[i-1][j]+1, d[i][j-1]+1, d[i-1][j-1]+change)
			if i > 1 && j > 1 && s[i-1] == t[j-2] && s[i-2] == t[j-1] {
				d[i][j] = min(d[i][j], d[i-2][j-2]+1)
			}
		}
	}
	return d[len(s)][len(t)]
}
