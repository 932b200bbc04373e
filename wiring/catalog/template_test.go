package catalog

import "testing"

func TestTemplate(t *testing.T) {
	for sort, want := range map[string]bool{"platform": true, "kit": true, "addon": false, "../layers/kits/12s-inlet": false, "": false} {
		if text, ok := Template(sort); ok != want || ok && len(text) == 0 {
			t.Errorf("template %q: %v", sort, ok)
		}
	}
}

func TestLayerNamed(t *testing.T) {
	l, ok := LayerNamed("48V-AC")
	if !ok || l.Sort != "platform" || l.Title == "" || l.About == "" || l.File != "built-in/platforms/48v-ac.yaml" {
		t.Errorf("%+v", l)
	}
	if _, ok := LayerNamed("nothing"); ok {
		t.Error("a layer that does not ship")
	}
}
