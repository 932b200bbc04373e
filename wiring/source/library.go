package source

import (
	"errors"
	"fmt"
	"io"
	"strings"

	"go.yaml.in/yaml/v3"
)

// verdict is what the YAML library makes of a text.
type verdict struct {
	root  *yaml.Node // the value of the first document; nil if it is empty or broken
	extra *yaml.Node // the second document, if there is one
	err   string     // why the text is broken; empty if it is not
	line  int        // the line that the library had reached: the fault is here or on the line before
}

// ask hands a view to the YAML library.
//
// The library's own line numbers are of little use: for a fault inside brackets it gives
// the line of the bracket less one, for one between the entries of a map the line where
// that map began, for one on the first line none. Fed line by line, however, it asks for
// no line before it has understood the one in front, so that the number of lines that it
// has taken tells where it gave up.
func ask(v *view) (result verdict) {
	feed := &feeder{lines: v.lines}
	defer func() {
		if r := recover(); r != nil { // the library panics on states that it calls internal errors
			result = verdict{err: fmt.Sprint(r), line: feed.taken()}
		}
	}()
	decoder := yaml.NewDecoder(feed)
	var first, second yaml.Node
	if err := decoder.Decode(&first); err != nil {
		if errors.Is(err, io.EOF) {
			return verdict{}
		}
		return verdict{err: err.Error(), line: feed.taken()}
	}
	result = verdict{root: content(&first), line: feed.taken()}
	switch err := decoder.Decode(&second); {
	case err == nil:
		result.extra = &second
	case !errors.Is(err, io.EOF):
		return verdict{err: err.Error(), line: feed.taken()}
	}
	return result
}

func content(document *yaml.Node) *yaml.Node {
	if len(document.Content) == 0 {
		return nil
	}
	return document.Content[0]
}

// tooDeep reports whether the library refused the text for its nesting.
func (v verdict) tooDeep() bool { return strings.Contains(v.err, "exceeded max depth") }

// unfinished reports whether the library read to the end for want of a closing sign.
func (v verdict) unfinished() bool { return strings.Contains(v.err, "end of stream") }

// feeder is a reader that gives one line at a time.
type feeder struct {
	lines []string
	next  int    // index of the line to give next
	rest  string // of the line that is being given
}

func (f *feeder) taken() int { return f.next }

func (f *feeder) Read(p []byte) (int, error) {
	if f.rest == "" {
		if f.next == len(f.lines) {
			return 0, io.EOF
		}
		f.rest = f.lines[f.next]
		if f.next++; f.next < len(f.lines) {
			f.rest += "\n"
		}
	}
	n := copy(p, f.rest)
	f.rest = f.rest[n:]
	return n, nil
}
