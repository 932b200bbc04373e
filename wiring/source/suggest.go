package source

import (
	"strings"
	"unicode/utf8"
)

// Suggest returns the candidate that was probably meant by word, or "" if none is close
// enough to be worth saying. Case does not count; of two equally close candidates the
// first in the list wins.
//
// Closeness is the optimal string alignment distance: inserting, deleting or replacing a
// letter, or swapping two neighbours, counts one each (Damerau, CACM 7:171, 1964, from
// memory). One such slip is allowed for every three letters, one at least; what would
// replace the whole word is no suggestion.
func Suggest(word string, candidates []string) string {
	want := []rune(strings.ToLower(word))
	best, closest := "", 0
	for _, c := range candidates {
		allowed := max(1, min(len(want), utf8.RuneCountInString(c))/3)
		if diff := len(want) - utf8.RuneCountInString(c); diff > allowed || -diff > allowed {
			continue
		}
		d := distance(want, []rune(strings.ToLower(c)))
		if d > allowed || d >= len(want) || best != "" && d >= closest {
			continue
		}
		best, closest = c, d
	}
	return best
}

// DidYouMean is the tail of a message about a word: ": did you mean X?", or "" where
// nothing is close.
func DidYouMean(word string, candidates []string) string {
	if s := Suggest(word, candidates); s != "" {
		return ": did you mean " + s + "?"
	}
	return ""
}

// distance is the optimal string alignment distance of two words.
func distance(a, b []rune) int {
	before, last := make([]int, len(b)+1), make([]int, len(b)+1)
	row := make([]int, len(b)+1)
	for j := range last {
		last[j] = j
	}
	for i := 1; i <= len(a); i++ {
		row[0] = i
		for j := 1; j <= len(b); j++ {
			cost := 1
			if a[i-1] == b[j-1] {
				cost = 0
			}
			row[j] = min(last[j]+1, row[j-1]+1, last[j-1]+cost)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				row[j] = min(row[j], before[j-2]+1)
			}
		}
		before, last, row = last, row, before
	}
	return last[len(b)]
}
