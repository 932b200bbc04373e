package job

import (
	"bytes"
	"fmt"
	"strings"
	"unicode/utf8"
)

// Insertion is what is added to one section of a layer: lines without indent, such as
// `E9: {kind: lamp, place: rear}` for the section parts.
type Insertion struct {
	Section string
	Lines   []string
}

// Insert adds lines at the ends of sections of a layer, in the block style, indent and line
// ends of the file, and touches no other byte. A section that is not there is begun where
// it is best written. It is an error if the section is written in brackets behind its key:
// lines cannot be put there without rewriting it.
func Insert(text []byte, insertions ...Insertion) ([]byte, error) {
	if !utf8.Valid(text) {
		return nil, fmt.Errorf("job: the file is not UTF-8 text")
	}
	f := newEditable(text)
	for _, in := range insertions {
		if _, ok := layerKeys.find(in.Section); !ok {
			return nil, fmt.Errorf("job: %s is no section of a layer", in.Section)
		}
		if err := f.insert(in); err != nil {
			return nil, err
		}
	}
	return f.bytes(), nil
}

// editable is a file as lines without their ends.
type editable struct {
	lines []string
	end   string // of lines that are put in
	cut   bool   // the last line has no end
}

func newEditable(text []byte) *editable {
	f := &editable{end: "\n", cut: len(text) > 0 && !bytes.HasSuffix(text, []byte("\n"))}
	f.lines = strings.SplitAfter(string(text), "\n")
	if !f.cut {
		f.lines = f.lines[:len(f.lines)-1]
	}
	for _, line := range f.lines {
		if strings.HasSuffix(line, "\r\n") {
			f.end = "\r\n"
			break
		}
	}
	return f
}

func (f *editable) bytes() []byte { return []byte(strings.Join(f.lines, "")) }

func (f *editable) insert(in Insertion) error {
	if len(in.Lines) == 0 {
		return nil
	}
	first, last, ok := f.section(in.Section)
	if !ok {
		return f.begin(in)
	}
	if rest := f.behind(first, in.Section); rest != "" {
		return fmt.Errorf("job: %s: is followed by %s on its own line: put its entries on lines of their own first", in.Section, clip(rest, 20))
	}
	f.put(last+1, f.indented(in.Lines, f.indent(first, last)))
	return nil
}

// behind is what stands on the line of a key behind it, comments apart.
func (f *editable) behind(line int, key string) string {
	rest := strings.TrimPrefix(strings.TrimPrefix(f.lines[line], "\ufeff"), key+":")
	rest = strings.TrimSpace(rest)
	if strings.HasPrefix(rest, "#") {
		return ""
	}
	return rest
}

// section finds the line of a key at the left margin and the last line that belongs to it.
// Blank lines and comments at the margin behind it belong to what follows.
func (f *editable) section(key string) (first, last int, ok bool) {
	first = -1
	for i, line := range f.lines {
		line = strings.TrimPrefix(line, "\ufeff")
		if strings.HasPrefix(line, key+":") {
			first, last = i, i
			continue
		}
		if first < 0 {
			continue
		}
		if atMargin(line) {
			break
		}
		if strings.TrimSpace(line) != "" && line[0] != '#' {
			last = i
		}
	}
	return first, last, first >= 0
}

// atMargin reports whether a line begins another section. The items of a list may stand at
// the margin too.
func atMargin(line string) bool {
	return strings.TrimSpace(line) != "" && !strings.ContainsRune(" \t#-", rune(line[0]))
}

// indent is how far the entries of a section stand from the margin.
func (f *editable) indent(first, last int) string {
	for _, line := range f.lines[first+1 : last+1] {
		trimmed := strings.TrimLeft(line, " ")
		if strings.TrimSpace(trimmed) != "" && trimmed[0] != '#' {
			return line[:len(line)-len(trimmed)]
		}
	}
	return "  "
}

func (f *editable) indented(lines []string, indent string) []string {
	out := make([]string, len(lines))
	for i, line := range lines {
		out[i] = indent + line + f.end
	}
	return out
}

// begin makes a section behind the last of those that are written before it.
func (f *editable) begin(in Insertion) error {
	at := len(f.lines)
	for i := len(layerKeys) - 1; i >= 0; i-- {
		if layerKeys[i].Name != in.Section {
			continue
		}
		for _, before := range layerKeys[:i] {
			if _, last, ok := f.section(before.Name); ok && (at == len(f.lines) || last+1 > at) {
				at = last + 1
			}
		}
	}
	lines := []string{in.Section + ":" + f.end}
	if at > 0 && strings.TrimSpace(f.lines[at-1]) != "" {
		lines = append([]string{f.end}, lines...)
	}
	f.put(at, append(lines, f.indented(in.Lines, "  ")...))
	return nil
}

// put sets lines in front of line at.
func (f *editable) put(at int, lines []string) {
	if at == len(f.lines) && f.cut {
		f.lines[at-1] += f.end
		f.cut = false
	}
	f.lines = append(f.lines[:at:at], append(lines, f.lines[at:]...)...)
}
