package svg

import (
	"bytes"
	"encoding/xml"
	"errors"
	"flag"
	"io"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"github.com/lugwright/lugwright/render/ink"
)

var update = flag.Bool("update", false, "write the golden files")

// drawSample uses every kind of mark once.
func drawSample(p ink.Page) {
	p.Open(ink.Group{Class: "part", Name: "K1", Title: "Main solenoid, battery side W2"})
	p.Path(ink.Circle(ink.At(20, 20), 5), ink.Pen(ink.Thin).Filled(ink.White()))
	p.Text(ink.Text{At: ink.At(28, 21), String: "K1", Capital: 2.5, Face: ink.Bold})
	p.Close()
	p.Open(ink.Group{Class: "wire", Name: "W37", Data: map[string]string{"to": "K1.coil+", "from": `F"1" <in>`}})
	p.Path(ink.Lines(ink.At(5, 5), ink.At(55.25, 5), ink.At(55.25, 35)), ink.Pen(ink.Wide).In(ink.Color{R: 0xd0, G: 2, B: 0x1b}))
	p.Path(ink.Lines(ink.At(5, 5), ink.At(55.25, 5)), ink.Style{Stroke: ink.Solid(ink.White()), Width: 0.25, Dash: []float64{2, 1.5}, Offset: 0.5, Round: true})
	p.Open(ink.Group{Class: "label"})
	p.Text(ink.Text{At: ink.At(30, 4), String: "W37 RD/WH 16 AWG", Capital: 2.5, Anchor: ink.Middle, Halo: true})
	p.Text(ink.Text{At: ink.At(54, 30), String: "0.21 mΩ ≤ 1", Capital: 2.5, Face: ink.Mono, Turned: true, Color: ink.Color{R: 0x33, G: 0x44, B: 0x55}})
	p.Text(ink.Text{At: ink.At(50, 38), String: "<&> \"'", Capital: 2.5, Anchor: ink.End})
	p.Close()
	p.Close()
}

func write(t testing.TB, opt Options, draw func(ink.Page)) []byte {
	t.Helper()
	var b bytes.Buffer
	p := New(&b, 60, 40, opt)
	draw(p)
	if err := p.Finish(); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func TestGolden(t *testing.T) {
	got := write(t, Options{Title: "Sample", Description: "Every kind of mark once"}, drawSample)
	path := filepath.Join("testdata", "sample.svg")
	if *update {
		if err := os.WriteFile(path, got, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(string(want), string(got)); diff != "" {
		t.Error(diff)
	}
}

func TestSameInputSameBytes(t *testing.T) {
	for _, opt := range []Options{{}, {EmbedFonts: true}, {Inside: true, Language: "de"}} {
		if !bytes.Equal(write(t, opt, drawSample), write(t, opt, drawSample)) {
			t.Errorf("%+v: two runs differ", opt)
		}
	}
}

// element is a node of the file as an independent XML reader sees it.
type element struct {
	name string
	attr map[string]string
	text string
}

func parse(t testing.TB, b []byte) []element {
	t.Helper()
	d := xml.NewDecoder(bytes.NewReader(b))
	var all []element
	var open []int
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return all
		}
		if err != nil {
			t.Fatalf("the file is not XML: %v\n%s", err, b)
		}
		switch token := token.(type) {
		case xml.StartElement:
			e := element{name: token.Name.Local, attr: map[string]string{}}
			for _, a := range token.Attr {
				if _, twice := e.attr[a.Name.Local]; twice {
					t.Fatalf("%s has attribute %q twice", e.name, a.Name.Local)
				}
				e.attr[a.Name.Local] = a.Value
			}
			open = append(open, len(all))
			all = append(all, e)
		case xml.EndElement:
			open = open[:len(open)-1]
		case xml.CharData:
			if len(open) > 0 {
				all[open[len(open)-1]].text += string(token)
			}
		}
	}
}

func TestCapitalHeightBecomesFontSize(t *testing.T) {
	b := write(t, Options{}, func(p ink.Page) {
		p.Text(ink.Text{At: ink.At(10, 10), String: "H", Capital: 1480.0 / 2048})
	})
	all := parse(t, b)
	if got := all[len(all)-1].attr["font-size"]; got != "1" {
		t.Errorf("a capital of 1480/2048 mm has font size %s, want 1 mm", got)
	}
}

func TestEmbeddedFontsAreThoseUsed(t *testing.T) {
	plain := write(t, Options{}, drawSample)
	embedded := write(t, Options{EmbedFonts: true}, drawSample)
	if n := bytes.Count(embedded, []byte("@font-face")); n != 3 {
		t.Errorf("%d faces embedded, want 3", n)
	}
	if extra := len(embedded) - len(plain); extra > 40_000 {
		t.Errorf("the faces add %d bytes", extra)
	}
	only := write(t, Options{EmbedFonts: true}, func(p ink.Page) {
		p.Text(ink.Text{At: ink.At(10, 10), String: "H", Capital: 2})
	})
	if n := bytes.Count(only, []byte("@font-face")); n != 1 {
		t.Errorf("%d faces embedded, want 1", n)
	}
	parse(t, embedded)
}

func TestFinishReportsTheFirstFault(t *testing.T) {
	for _, c := range []struct {
		name string
		draw func(ink.Page)
		want string
	}{
		{"not a number", func(p ink.Page) { p.Path(ink.Lines(ink.At(math.NaN(), 0), ink.At(1, 1)), ink.Pen(1)) }, "NaN"},
		{"off the paper", func(p ink.Page) { p.Text(ink.Text{At: ink.At(59, 20), String: "long", Capital: 2.5}) }, "off the paper"},
		{"open group", func(p ink.Page) { p.Open(ink.Group{Class: "wire"}) }, "still open"},
	} {
		var b bytes.Buffer
		p := New(&b, 60, 40, Options{})
		c.draw(p)
		if err := p.Finish(); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v, want %q", c.name, err, c.want)
		}
		parse(t, b.Bytes()) // the file is whole all the same
	}
}

// failing accepts a few bytes and then reports a full disk.
type failing struct{ left int }

var errFull = errors.New("no space left")

func (f *failing) Write(p []byte) (int, error) {
	if len(p) > f.left {
		return 0, errFull
	}
	f.left -= len(p)
	return len(p), nil
}

func TestWriteErrorsAreKept(t *testing.T) {
	for _, left := range []int{0, 4096, 8192} {
		p := New(&failing{left}, 60, 40, Options{})
		for range 100 {
			drawSample(p)
		}
		if err := p.Finish(); !errors.Is(err, errFull) {
			t.Errorf("after %d bytes: %v", left, err)
		}
	}
}

// FuzzText puts hostile words into every place that takes words and reads the file back.
func FuzzText(f *testing.F) {
	for _, s := range []string{
		"W37", `"><script>alert(1)</script>`, "' onload='x", "]]>", "<![CDATA[", "&#0;", "&amp;", "\x00\x1f", "\xff\xfe",
		"--><!--", "\u202e", "a=b", "stroke:url(http://x)", "%s%d%!", "\r\n", "=cmd|' /C calc'!A0", "\ufffe",
	} {
		f.Add(s, s, s)
	}
	f.Fuzz(func(t *testing.T, words, name, data string) {
		if ink.Width(ink.Clean(words), ink.Regular, 0.1) > 50 || len(words) > 1000 {
			t.Skip("too long for the paper")
		}
		b := write(t, Options{Title: words, Description: name, Language: data}, func(p ink.Page) {
			p.Open(ink.Group{Class: "wire", Name: name, Title: words, Data: map[string]string{"from": data}})
			p.Text(ink.Text{At: ink.At(1, 20), String: words, Capital: 0.1})
			p.Close()
		})
		all := parse(t, b)
		names := make([]string, len(all))
		for i, e := range all {
			names[i] = e.name
		}
		want := []string{"svg"}
		add := func(name string, present bool) {
			if present {
				want = append(want, name)
			}
		}
		some := ink.Clean(words) != ""
		add("title", some)
		add("desc", ink.Clean(name) != "")
		want = append(want, "g", "rect", "g")
		add("title", some)
		add("text", some)
		if !slices.Equal(names, want) {
			t.Fatalf("elements %q, want %q", names, want)
		}
		for _, e := range all {
			if e.name == "text" && e.text != ink.Clean(words) {
				t.Fatalf("text reads back as %q, want %q", e.text, ink.Clean(words))
			}
			if e.attr["class"] == "wire" && (e.attr["data-name"] != ink.Clean(name) || e.attr["data-from"] != ink.Clean(data)) {
				t.Fatalf("attributes read back as %q", e.attr)
			}
		}
	})
}
