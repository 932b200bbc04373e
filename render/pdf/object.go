package pdf

import (
	"bytes"
	"compress/zlib"
	"crypto/sha256"
	"fmt"
	"strings"
	"time"
	"unicode/utf16"
)

// ref is the number of an object.
type ref int

func (r ref) String() string { return fmt.Sprintf("%d 0 R", int(r)) }

// file is a PDF file under construction: objects by number, and where each begins.
type file struct {
	out bytes.Buffer
	at  []int // offset of object 1, 2, …; 0: not written yet
}

// newFile begins with the version and a line of bytes that are not ASCII, from which
// transfer programs see that line ends must stay (7.5.2).
func newFile() *file {
	f := &file{}
	f.out.WriteString("%PDF-1.7\n%\xe2\xe3\xcf\xd3\n")
	return f
}

// reserve returns the number of an object that will be put later.
func (f *file) reserve() ref {
	f.at = append(f.at, 0)
	return ref(len(f.at))
}

// put writes an object.
func (f *file) put(r ref, body string) {
	f.at[r-1] = f.out.Len()
	fmt.Fprintf(&f.out, "%d 0 obj\n%s\nendobj\n", int(r), body)
}

// add writes an object under a new number.
func (f *file) add(body string) ref {
	r := f.reserve()
	f.put(r, body)
	return r
}

// stream writes a compressed stream, with entries for its dictionary besides.
func (f *file) stream(r ref, entries string, data []byte) {
	small := deflate(data)
	f.at[r-1] = f.out.Len()
	fmt.Fprintf(&f.out, "%d 0 obj\n<</Length %d/Filter/FlateDecode%s>>\nstream\n", int(r), len(small), entries)
	f.out.Write(small)
	f.out.WriteString("\nendstream\nendobj\n")
}

func deflate(data []byte) []byte {
	var b bytes.Buffer
	w, err := zlib.NewWriterLevel(&b, zlib.BestCompression)
	if err != nil {
		panic(err) // the level is a constant that exists
	}
	// A bytes.Buffer takes everything.
	_, _ = w.Write(data)
	_ = w.Close()
	return b.Bytes()
}

// finish writes the table of objects and the trailer (7.5.4, 7.5.5).
func (f *file) finish(root, info ref) []byte {
	id := sha256.Sum256(f.out.Bytes())
	table := f.out.Len()
	fmt.Fprintf(&f.out, "xref\n0 %d\n0000000000 65535 f \n", len(f.at)+1)
	for _, at := range f.at {
		fmt.Fprintf(&f.out, "%010d 00000 n \n", at)
	}
	fmt.Fprintf(&f.out, "trailer\n<</Size %d/Root %s/Info %s/ID[<%x><%[4]x>]>>\nstartxref\n%[5]d\n%%%%EOF\n",
		len(f.at)+1, root, info, id[:16], table)
	return f.out.Bytes()
}

// text writes a text string (7.9.2.2): plain ASCII as it is, anything else as UTF-16 with a
// mark of the byte order.
func text(s string) string {
	for _, r := range s {
		if r < ' ' || r > '~' {
			return "<feff" + utf16Hex(s) + ">"
		}
	}
	return "(" + strings.NewReplacer(`\`, `\\`, "(", `\(`, ")", `\)`).Replace(s) + ")"
}

// utf16Hex writes a text as the hexadecimal digits of its UTF-16 form, high byte first.
func utf16Hex(s string) string {
	var b strings.Builder
	for _, unit := range utf16.Encode([]rune(s)) {
		fmt.Fprintf(&b, "%04x", unit)
	}
	return b.String()
}

// date writes a date string (7.9.4) in universal time.
func date(t time.Time) string { return text(t.UTC().Format("D:20060102150405Z")) }
