package source

import "sort"

// patch changes one character of what the YAML library sees, so that reading can go on
// behind a mistake that has been reported. Columns of everything else stay as they are.
type patch struct {
	line, col, end int // up to, not including, end; col 0: behind the end of the line
	with           rune
}

func put(line, col int, with rune) patch { return patch{line, col, col + 1, with} }

// view is the text as the YAML library sees it.
type view struct{ lines []string }

func newView(t *text) *view {
	v := &view{lines: make([]string, len(t.lines))}
	for i, l := range t.lines {
		v.lines[i] = l.text
	}
	return v
}

// with returns a view in which the patches are made; v stays as it is.
func (v *view) with(patches []patch) *view {
	changed := &view{lines: append([]string(nil), v.lines...)}
	changed.make(patches)
	return changed
}

// make makes patches in place, those of one line together.
func (v *view) make(patches []patch) {
	patches = append([]patch(nil), patches...)
	sort.SliceStable(patches, func(i, j int) bool { return patches[i].line < patches[j].line })
	for len(patches) > 0 {
		number := patches[0].line
		n := 1
		for n < len(patches) && patches[n].line == number {
			n++
		}
		v.lines[number-1] = patched(v.lines[number-1], patches[:n])
		patches = patches[n:]
	}
}

func patched(s string, patches []patch) string {
	runes := []rune(s)
	for _, p := range patches {
		if p.col == 0 {
			runes = append(runes, p.with)
			continue
		}
		for col := p.col; col < p.end && col <= len(runes); col++ {
			runes[col-1] = p.with
		}
	}
	return string(runes)
}
