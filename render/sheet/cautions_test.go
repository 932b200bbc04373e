package sheet

import (
	"strings"
	"testing"

	"github.com/lugwright/lugwright/render/sheet/frame"
	"github.com/lugwright/lugwright/wiring"
)

func TestCautionsFollowTheParts(t *testing.T) {
	kind := &wiring.Kind{}
	h := &wiring.Harness{}
	if got := cautions(h); got != nil {
		t.Errorf("nothing on the cart calls for %v", got)
	}
	h.Parts = []*wiring.Part{{Kind: kind, Elements: []wiring.Element{&wiring.Mains{}}}}
	got := cautions(h)
	if len(got) != 1 || got[0].Word != frame.Warning || got[0].Text != "Mains in the charger: pull the plug." {
		t.Errorf("mains call for %v", got)
	}
	h.Parts = append(h.Parts, &wiring.Part{Kind: &wiring.Kind{Traction: true}})
	if got := cautions(h); len(got) != 1 || !strings.HasPrefix(got[0].Text, "The cart can roll") {
		t.Errorf("mains and a motor call for %v", got)
	}
}
