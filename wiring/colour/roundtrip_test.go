package colour

import (
	"strings"
	"testing"
	"unicode/utf8"

	"pgregory.net/rapid"
)

// anyColour draws a colour that Parse can return.
func anyColour(t *rapid.T) Colour {
	c := Colour{Base: rapid.SampledFrom(allCodes()).Draw(t, "base")}
	if !c.Base.takesTracer() || rapid.Bool().Draw(t, "plain") {
		return c
	}
	tracer := rapid.SampledFrom(allCodes()).Draw(t, "tracer")
	if !tracer.takesTracer() || tracer == c.Base || c.Base == "GN" && tracer == "YE" {
		return c
	}
	c.Tracer = tracer
	return c
}

func TestRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		want := anyColour(t)
		for _, text := range []string{want.String(), want.Name(), strings.ToLower(want.String()), strings.ToUpper(want.Name())} {
			got, err := Parse(text)
			if err != nil || got != want {
				t.Fatalf("Parse(%q) = %q, %v; want %q", text, got, err, want)
			}
		}
	})
}

func FuzzParse(f *testing.F) {
	for _, seed := range []string{"BK/YE", "RDBU", "black with a yellow stripe", "light blue", "ſ/K", "İ with İ", "//", " w/", "GN/YE"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		c, err := Parse(text)
		if err != nil {
			if !utf8.ValidString(err.Error()) || len(err.Error()) > 400 {
				t.Errorf("Parse(%q) says %q", text, err)
			}
			return
		}
		if !c.Base.Known() || c.Tracer != "" && !c.Tracer.Known() {
			t.Fatalf("Parse(%q) = %q, which is not in the table", text, c)
		}
		again, err := Parse(c.String())
		if err != nil || again != c {
			t.Fatalf("Parse(%q) = %q, which reads back as %q, %v", text, c, again, err)
		}
	})
}
