package pdf

import (
	"bytes"
	"compress/zlib"
	"fmt"
	"io"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// parsed is a file as a small reader of the format sees it: it goes by the table of objects
// and by lengths, as viewers do, and fails the test where these do not fit.
type parsed struct {
	objects []string // from 1
	streams map[int][]byte
	trailer string
}

var (
	objectHead = regexp.MustCompile(`^(\d+) 0 obj\n`)
	lengthOf   = regexp.MustCompile(`^<</Length (\d+)/Filter/FlateDecode`)
	reference  = regexp.MustCompile(`(\d+) 0 R`)
)

func read(t testing.TB, file []byte) parsed {
	t.Helper()
	tail := bytes.LastIndex(file, []byte("startxref\n"))
	if !bytes.HasPrefix(file, []byte("%PDF-1.7\n")) || tail < 0 || !bytes.HasSuffix(file, []byte("\n%%EOF\n")) {
		t.Fatal("not a PDF file")
	}
	at, err := strconv.Atoi(string(bytes.TrimSuffix(file[tail+len("startxref\n"):], []byte("\n%%EOF\n"))))
	if err != nil || at > tail {
		t.Fatalf("the table of objects is at %d: %v", at, err)
	}
	table, trailer, _ := strings.Cut(string(file[at:tail]), "trailer\n")
	p := parsed{streams: map[int][]byte{}, trailer: trailer}
	for i, line := range strings.Split(table, "\n")[3:] {
		if line == "" {
			continue
		}
		offset, err := strconv.Atoi(line[:10])
		if err != nil || len(line) != 19 {
			t.Fatalf("entry %q: %v", line, err)
		}
		p.object(t, i+1, file[offset:])
	}
	for _, body := range append(p.objects, trailer) {
		for _, r := range reference.FindAllStringSubmatch(body, -1) {
			if n, _ := strconv.Atoi(r[1]); n < 1 || n > len(p.objects) {
				t.Fatalf("%s refers to no object: %s", r[0], body)
			}
		}
	}
	return p
}

func (p *parsed) object(t testing.TB, number int, rest []byte) {
	t.Helper()
	head := objectHead.FindSubmatch(rest)
	if head == nil || string(head[1]) != fmt.Sprint(number) {
		t.Fatalf("object %d begins %.20q", number, rest)
	}
	rest = rest[len(head[0]):]
	end := bytes.Index(rest, []byte("\nendobj\n"))
	if length := lengthOf.FindSubmatch(rest); length != nil {
		begin := bytes.Index(rest, []byte("stream\n")) + len("stream\n")
		n, _ := strconv.Atoi(string(length[1]))
		if after := string(rest[begin+n:][:18]); after != "\nendstream\nendobj\n" {
			t.Fatalf("object %d goes on with %q", number, after)
		}
		p.streams[number] = inflate(t, rest[begin:begin+n])
		end = begin - len("stream\n")
	}
	p.objects = append(p.objects, string(rest[:end]))
}

func inflate(t testing.TB, small []byte) []byte {
	t.Helper()
	r, err := zlib.NewReader(bytes.NewReader(small))
	if err != nil {
		t.Fatal(err)
	}
	data, err := io.ReadAll(r)
	if err != nil {
		t.Fatal(err)
	}
	return data
}

// count returns how often words occur in the objects, outside streams.
func (p parsed) count(words string) int {
	n := 0
	for _, o := range p.objects {
		n += strings.Count(o, words)
	}
	return n
}
