package source

import "testing"

// Nothing makes Parse panic, every span lies within the text, and there is a tree or a
// finding. A fault of the library that hides behind a recovered panic shows as "this line
// is not YAML", which is what it is to the reader.
func FuzzParse(f *testing.F) {
	for _, seed := range []string{
		"a: b\n", above + "  k: {note: stack #2}\n" + below, "a: {b: [c, 'd''e', \"f\\\"g\"]}\n", "a: b: c\n\td: e\n",
		"- - ? a\n", "a: |\n  b\n c\n", "\ufeffa: ä\r\n\u00a0b: “c”\n", "a: [b, {c: d\n", "%TAG\n---\n&x *x <<: !y\n", "a: \"b\n", "{a: b}}\n", "a:\u2028b\x00\xff",
	} {
		f.Add([]byte(seed))
	}
	f.Fuzz(func(t *testing.T, content []byte) {
		root, findings := Parse("f", content)
		if root == nil && len(findings) == 0 {
			t.Fatalf("neither tree nor finding for %q", content)
		}
		if validText(content) {
			checkSpans(t, string(content), root, findings)
		}
	})
}

// validText reports whether columns can be counted: bytes that are no text are reported by
// a test of their own.
func validText(content []byte) bool {
	_, refused := refuse("f", content)
	return !refused
}
