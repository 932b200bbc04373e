package pdf

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"math"
	"strings"
	"testing"
	"time"

	"github.com/lugwright/lugwright/render/ink"
	"github.com/lugwright/lugwright/render/ink/inktest"
)

func sampleOptions() Options {
	return Options{
		Title: "TP-14 Sample (1)", Author: "Quay Lane Carts", Subject: "Every kind of mark, Ω", Job: "TP-14", Revision: "B",
		Made:    time.Date(2026, 3, 1, 12, 0, 0, 0, time.UTC),
		Indexes: []Index{{"wires", "wire"}, {"none", "nothing"}},
	}
}

// write makes a file of pages.
func write(t testing.TB, opt Options, pages ...func(ink.Page)) []byte {
	t.Helper()
	var b bytes.Buffer
	d := New(&b, opt)
	for i, draw := range pages {
		draw(d.Page(inktest.Width, inktest.Height, fmt.Sprintf("%d sample", i+1)))
	}
	if err := d.Finish(); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func TestSameInputSameBytes(t *testing.T) {
	one := write(t, sampleOptions(), inktest.Sample, inktest.Sample)
	if !bytes.Equal(one, write(t, sampleOptions(), inktest.Sample, inktest.Sample)) {
		t.Error("two runs differ")
	}
	other := sampleOptions()
	other.Revision = "C"
	if bytes.Equal(one, write(t, other, inktest.Sample, inktest.Sample)) {
		t.Error("another revision is the same file")
	}
}

// The faces are cut down and kept once, however many pages use them.
func TestSize(t *testing.T) {
	one := len(write(t, sampleOptions(), inktest.Sample))
	many := make([]func(ink.Page), 20)
	for i := range many {
		many[i] = inktest.Sample
	}
	if twenty := len(write(t, sampleOptions(), many...)); one > 25_000 || twenty > one+19*2_500 {
		t.Errorf("one page takes %d bytes, twenty take %d", one, twenty)
	}
}

func TestFinishReportsTheFirstFault(t *testing.T) {
	for _, c := range []struct {
		name string
		draw func(ink.Page)
		want string
	}{
		{"not a number", func(p ink.Page) { p.Path(ink.Lines(ink.At(math.NaN(), 0), ink.At(1, 1)), ink.Pen(1)) }, "page 2: a path goes to {NaN 0}"},
		{"off the paper", func(p ink.Page) { p.Text(ink.Text{At: ink.At(59, 20), String: "long", Capital: 2.5}) }, "off the paper"},
		{"open group", func(p ink.Page) { p.Open(ink.Group{Class: "wire"}) }, "still open"},
	} {
		var b bytes.Buffer
		d := New(&b, Options{})
		inktest.Sample(d.Page(inktest.Width, inktest.Height, ""))
		c.draw(d.Page(inktest.Width, inktest.Height, ""))
		inktest.Sample(d.Page(inktest.Width, inktest.Height, ""))
		if err := d.Finish(); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v, want %q", c.name, err, c.want)
		}
		if got := read(t, b.Bytes()).count("/Type/Page/"); got != 3 {
			t.Errorf("%s: %d pages, want 3", c.name, got)
		}
	}
}

func TestADocumentNeedsAPage(t *testing.T) {
	if err := New(io.Discard, Options{}).Finish(); err == nil || !strings.Contains(err.Error(), "needs a page") {
		t.Error(err)
	}
}

var errFull = errors.New("no space left")

// full is a disk without room.
type full struct{}

func (full) Write([]byte) (int, error) { return 0, errFull }

func TestWriteErrorsAreKept(t *testing.T) {
	d := New(full{}, Options{})
	inktest.Sample(d.Page(inktest.Width, inktest.Height, ""))
	if err := d.Finish(); !errors.Is(err, errFull) {
		t.Error(err)
	}
}

func TestText(t *testing.T) {
	for _, c := range []struct{ in, want string }{
		{"W37", "(W37)"},
		{`a(b)\c`, `(a\(b\)\\c)`},
		{"Ω", "<feff03a9>"},
		{"🔋", "<feffd83ddd0b>"},
		{"", "()"},
	} {
		if got := text(c.in); got != c.want {
			t.Errorf("text(%q) = %s, want %s", c.in, got, c.want)
		}
	}
}

// FuzzText puts hostile words into every place that takes words and reads the file back.
func FuzzText(f *testing.F) {
	for _, s := range []string{
		"W37", "(((", `\`, ")>>endobj", "endstream\nendobj", "%%EOF", "\x00\x1f", "\xff\xfe", "\u202e", "🔋", "مفتاح", "<script>", "\ufffe", "Tj ET",
	} {
		f.Add(s, s, s)
	}
	f.Fuzz(func(t *testing.T, words, name, title string) {
		if ink.Width(ink.Clean(words), ink.Regular, 0.1) > 50 || len(words) > 1000 {
			t.Skip("too long for the paper")
		}
		opt := Options{Title: title, Author: name, Subject: words, Job: name, Revision: title, Language: name, Indexes: []Index{{title, "wire"}}}
		file := read(t, write(t, opt, func(p ink.Page) {
			p.Open(ink.Group{Class: "wire", Name: name, Title: words})
			p.Text(ink.Text{At: ink.At(1, 20), String: words, Capital: 0.1})
			p.Close()
			p.Open(ink.Group{Class: "row", Name: name, Title: title, Link: "wire " + name})
			p.Text(ink.Text{At: ink.At(1, 30), String: words, Capital: 0.1})
			p.Close()
		}))
		if got := file.count("/Type/Page/"); got != 1 {
			t.Fatalf("%d pages", got)
		}
		wantLinks := 0
		if ink.Clean(words) != "" && name != "" {
			wantLinks = 1
		}
		if got := file.count("/Subtype/Link"); got != wantLinks {
			t.Fatalf("%d links, want %d", got, wantLinks)
		}
	})
}
