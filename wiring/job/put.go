package job

import (
	"fmt"
	"strings"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/source"
)

// PutFuse writes the rating of a fuse into one channel of a block, in the parts of a layer,
// where the layer has the block or its fuses already, in their own style, in brackets or
// not. It touches no other byte. It is an error if the channel is there already, or if the
// file cannot be read.
func PutFuse(text []byte, block string, channel int, rating string) ([]byte, error) {
	entry := fmt.Sprintf("%d: %s", channel, rating)
	root, findings := source.Parse("", text)
	if root == nil || diag.Worst(findings) == diag.Error {
		return nil, fmt.Errorf("job: the file cannot be read as it stands: check it first")
	}
	part := lookup(root.Get("parts"), block)
	if part == nil {
		return Insert(text, Insertion{Section: "parts", Lines: []string{block + ": {fuses: {" + entry + "}}"}})
	}
	if part.Kind != source.Map {
		return nil, fmt.Errorf("job: %s is no map of keys", block)
	}
	fuses := part.Get("fuses")
	if fuses == nil {
		return putInto(text, part, "fuses: {"+entry+"}")
	}
	if fuses.Get(fmt.Sprint(channel)) != nil {
		return nil, fmt.Errorf("job: %s has a fuse in channel %d already", block, channel)
	}
	return putInto(text, fuses, entry)
}

// lookup finds an entry without regard to case.
func lookup(n *source.Node, name string) *source.Node {
	if n == nil {
		return nil
	}
	for _, e := range n.Entries {
		if wiring.Fold(e.Key.Text) == wiring.Fold(name) {
			return e.Value
		}
	}
	return nil
}

// putInto adds an entry at the end of a map, in its own style.
func putInto(text []byte, n *source.Node, entry string) ([]byte, error) {
	begin, ok := offset(text, n.Span)
	if !ok {
		return nil, fmt.Errorf("job: the place of %s cannot be found", entry)
	}
	if text[begin] == '{' {
		end, ok := closing(text, begin)
		if !ok {
			return nil, fmt.Errorf("job: a bracket is not closed")
		}
		if strings.ContainsRune(string(text[begin:end]), '\n') && len(n.Entries) > 0 {
			return splice(text, begin+1, entry+", "), nil // behind the last entry there may be a comment
		}
		for end > begin+1 && text[end-1] == ' ' {
			end--
		}
		if len(n.Entries) > 0 && text[end-1] != ',' {
			entry = ", " + entry
		}
		return splice(text, end, entry), nil
	}
	return putBelow(text, n, entry)
}

// putBelow adds a line in front of the first entry of a map in block style, indented alike.
func putBelow(text []byte, n *source.Node, entry string) ([]byte, error) {
	begin, ok := offset(text, n.Entries[0].Key.Span)
	if !ok {
		return nil, fmt.Errorf("job: the place of %s cannot be found", entry)
	}
	line := begin
	for line > 0 && text[line-1] != '\n' {
		line--
	}
	indent := string(text[line:begin])
	if strings.TrimSpace(indent) != "" {
		return nil, fmt.Errorf("job: %s cannot be put there without rewriting the line", entry)
	}
	end := "\n"
	if next := strings.IndexByte(string(text[begin:]), '\n'); next > 0 && text[begin+next-1] == '\r' {
		end = "\r\n"
	}
	return splice(text, line, indent+entry+end), nil
}

func splice(text []byte, at int, more string) []byte {
	out := make([]byte, 0, len(text)+len(more))
	return append(append(append(out, text[:at]...), more...), text[at:]...)
}

// offset is where a span begins, in bytes. Columns count characters.
func offset(text []byte, at diag.Span) (int, bool) {
	line, begin := 1, 0
	for line < at.Line {
		next := strings.IndexByte(string(text[begin:]), '\n')
		if next < 0 {
			return 0, false
		}
		begin += next + 1
		line++
	}
	rest := strings.TrimPrefix(string(text[begin:]), "\ufeff")
	begin = len(text) - len(rest)
	col := 1
	for i := range rest {
		if col == at.Col {
			return begin + i, true
		}
		col++
	}
	return 0, false
}

// closing finds the bracket that closes the one at begin, past texts in quotes and
// comments.
func closing(text []byte, begin int) (int, bool) {
	depth := 0
	for i := begin; i < len(text); i++ {
		switch c := text[i]; c {
		case '{', '[':
			depth++
		case '}', ']':
			if depth--; depth == 0 {
				return i, true
			}
		case '"', '\'':
			if i = quoted(text, i); i < 0 {
				return 0, false
			}
		case '#':
			if i > 0 && (text[i-1] == ' ' || text[i-1] == '\n') {
				for i < len(text) && text[i] != '\n' {
					i++
				}
			}
		}
	}
	return 0, false
}

// quoted is the end of the text in quotes that may begin at i; i itself where the sign
// stands within a word, -1 where the text does not end.
func quoted(text []byte, i int) int {
	if i > 0 && !strings.ContainsRune(" {[,:\n", rune(text[i-1])) {
		return i
	}
	sign := text[i]
	for i++; i < len(text); i++ {
		switch {
		case sign == '"' && text[i] == '\\':
			i++
		case text[i] == sign:
			return i
		}
	}
	return -1
}
