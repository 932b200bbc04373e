package source

import (
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestSuggest(t *testing.T) {
	keys := []string{"colour", "size", "length", "extend", "from", "to", "loom", "light-bar", "lamp", "G9", "48v-separately-excited"}
	tests := []struct{ word, want string }{
		{"lenght", "length"},
		{"ligth-bar", "light-bar"},
		{"Colour", "colour"},
		{"color", "colour"},
		{"form", "from"},
		{"siez", "size"},
		{"G99", "G9"},
		{"48v-separatly-exited", "48v-separately-excited"},
		{"lam", "lamp"},
		{"watts", ""},
		{"x", ""},
		{"", ""},
		{"tow", "to"},
	}
	for _, test := range tests {
		if got := Suggest(test.word, keys); got != test.want {
			t.Errorf("Suggest(%q) = %q, want %q", test.word, got, test.want)
		}
	}
	if got := Suggest("a", nil); got != "" {
		t.Errorf("Suggest among none = %q", got)
	}
}

// The distance is symmetric, is zero for equal words alone, and is never more than the
// longer word.
func TestDistance(t *testing.T) {
	word := rapid.StringMatching(`[a-d]{0,8}`)
	rapid.Check(t, func(t *rapid.T) {
		a, b := []rune(word.Draw(t, "a")), []rune(word.Draw(t, "b"))
		d := distance(a, b)
		if d != distance(b, a) {
			t.Errorf("distance(%q, %q) is not symmetric", string(a), string(b))
		}
		if (d == 0) != (string(a) == string(b)) {
			t.Errorf("distance(%q, %q) = %d", string(a), string(b), d)
		}
		if d > max(len(a), len(b)) || d < max(len(a)-len(b), len(b)-len(a)) {
			t.Errorf("distance(%q, %q) = %d", string(a), string(b), d)
		}
	})
}

// One slip of the finger in a word of three letters or more is always understood.
func TestSuggestOneSlip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		word := rapid.StringMatching(`[a-z]{3,10}`).Draw(t, "word")
		i := rapid.IntRange(0, len(word)-1).Draw(t, "where")
		slip := rapid.SampledFrom([]string{
			word[:i] + word[i+1:],
			word[:i] + "z" + word[i:],
			word[:i] + "z" + word[i+1:],
			strings.ToUpper(word),
		}).Draw(t, "slip")
		if got := Suggest(slip, []string{"unlike-all-others", word}); got != word {
			t.Errorf("Suggest(%q) = %q, want %q", slip, got, word)
		}
	})
}
