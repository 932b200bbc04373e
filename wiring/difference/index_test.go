package difference

import (
	"testing"

	"github.com/lugwright/lugwright/wiring"
)

func TestNextIndex(t *testing.T) {
	for last, want := range map[string]string{
		"A": "B", "H": "J", "N": "P", "Y": "AA", "AY": "BA", "YY": "AAA", "3": "", "I": "",
	} {
		if got := NextIndex([]wiring.Revision{{Index: "A"}, {Index: last}}); got != want {
			t.Errorf("after %s: %q, want %q", last, got, want)
		}
	}
	if got := NextIndex(nil); got != "A" {
		t.Errorf("the first is %q", got)
	}
}
