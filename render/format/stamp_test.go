package format

import (
	"bytes"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestStamped(t *testing.T) {
	drawn := stamp([]byte("<svg>\n<text>W37</text>\n</svg>\n"), markup)
	for _, c := range []struct {
		name string
		file string
		want bool
	}{
		{"as drawn", string(drawn), true},
		{"with the line ends of another system", strings.ReplaceAll(string(drawn), "\n", "\r\n"), true},
		{"one character changed", strings.Replace(string(drawn), "W37", "W38", 1), false},
		{"something added below", string(drawn) + "<!-- mine -->\n", false},
		{"the digest changed", strings.Replace(string(drawn), "sha256 ", "sha256 0", 1), false},
		{"the stamp alone", string(drawn[bytes.LastIndex(drawn, []byte("<!--")):]), false},
		{"somebody else's drawing", "<svg>\n</svg>\n", false},
		{"an empty file", "", false},
		{"a list", string(stamp([]byte("TP-14: nothing found\n"), plain)), true},
		{"a list with a line added", "mine\n" + string(stamp([]byte("TP-14: nothing found\n"), plain)), false},
		{"two stamps", string(stamp(drawn, markup)), true}, // the outer one holds
	} {
		if got := Stamped([]byte(c.file)); got != c.want {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
}

func TestStampHolds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		document := rapid.SliceOf(rapid.SampledFrom([]byte("<svg>\r\n-- x"))).Draw(t, "document")
		before := bytes.Clone(document)
		drawn := stamp(document, rapid.SampledFrom([]comment{markup, plain}).Draw(t, "comment"))
		if !Stamped(drawn) {
			t.Fatalf("%q is not recognised", drawn)
		}
		if !bytes.Equal(before, document) {
			t.Fatal("the caller's bytes were changed")
		}
		if !bytes.HasPrefix(drawn, bytes.TrimRight(before, "\r\n")) {
			t.Fatal("the document itself was changed")
		}
	})
}
