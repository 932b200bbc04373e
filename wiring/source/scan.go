package source

import "strings"

// scan looks through a text for the mistakes that people make, as one who reads it line by
// line and forgives what he can. It is asked only when the YAML library has refused the
// text: what it finds are suspects, and the caller tries whether mending one helps.
func scan(v *view) []cause {
	s := &scanner{lines: v.lines, runes: make([][]rune, len(v.lines))}
	s.tabs()
	for s.line = 1; s.line <= len(s.lines); s.line++ {
		s.entry()
	}
	sortCauses(s.found)
	return s.found
}

type scanner struct {
	lines []string
	runes [][]rune // filled as needed
	line  int      // being read
	found []cause

	levels []level // the open maps and lists, outermost first
	open   bool    // the entry above has no value yet: a deeper line may follow
	plain  bool    // the entry above has a plain text: a deeper line may continue it
}

// level is a map or a list whose entries begin in a column.
type level struct {
	col  int
	list bool
}

func (s *scanner) add(c cause) { s.found = append(s.found, c) }

// text returns the characters of a line.
func (s *scanner) text(line int) []rune {
	if s.runes[line-1] == nil {
		s.runes[line-1] = []rune(s.lines[line-1])
	}
	return s.runes[line-1]
}

// at returns a character of the line that is being read, 0 outside it.
func (s *scanner) at(col int) rune { return s.of(s.line, col) }

func (s *scanner) of(line, col int) rune {
	if r := s.text(line); col >= 1 && col <= len(r) {
		return r[col-1]
	}
	return 0
}

// cut returns what stands from col up to, not including, end on the line being read.
func (s *scanner) cut(col, end int) string {
	r := s.text(s.line)
	if end = min(end, len(r)+1); col >= end {
		return ""
	}
	return string(r[col-1 : end-1])
}

// end is the column behind the last character of the line being read that is not blank.
func (s *scanner) end() int {
	r := s.text(s.line)
	n := len(r)
	for n > 0 && isBlank(r[n-1]) {
		n--
	}
	return n + 1
}

func (s *scanner) skip(col int) int {
	for isBlank(s.at(col)) {
		col++
	}
	return col
}

// blankAt reports whether a blank or the end of the line stands in a column.
func (s *scanner) blankAt(col int) bool { r := s.at(col); return r == 0 || isBlank(r) }

// comment reports whether a comment begins in a column.
func (s *scanner) comment(col int) bool { return s.at(col) == '#' && s.blankAt(col-1) }

// tabs finds the lines that are indented with tabs.
func (s *scanner) tabs() {
	var lines []int
	var first stretch
	for i, text := range s.lines {
		body := strings.TrimLeft(text, " \t")
		indent := text[:len(text)-len(body)]
		tab := strings.IndexByte(indent, '\t')
		if tab < 0 || body == "" || body[0] == '#' {
			continue
		}
		if lines = append(lines, i+1); len(lines) == 1 {
			first = stretch{i + 1, tab + 1, len(indent) + 1}
		}
	}
	if len(lines) > 0 {
		s.add(tabIndent(first, lines[1:]))
	}
}

// entry reads one entry of a map or a list, which may take more than one line.
func (s *scanner) entry() {
	col := s.skip(1)
	if s.at(col) == 0 || s.at(col) == '#' {
		return
	}
	if col == 1 && s.documentSign() {
		s.levels, s.open = nil, true
		return
	}
	item := false
	for s.at(col) == '-' && s.blankAt(col+1) {
		s.enter(level{col, true})
		item, s.open, s.plain = true, true, false
		if col = s.skip(col + 1); s.at(col) == 0 || s.comment(col) {
			return
		}
	}
	if s.at(col) == '?' && s.blankAt(col+1) {
		if col = s.skip(col + 1); s.at(col) == 0 {
			return
		}
	}
	if colon := s.keyEnd(col); colon > 0 {
		s.enter(level{col, false})
		s.value(s.skip(colon+1), col)
		return
	}
	if item {
		s.value(col, col)
		return
	}
	s.keyless(col)
}

func (s *scanner) documentSign() bool {
	for _, sign := range []string{"---", "...", "%"} {
		if strings.HasPrefix(s.lines[s.line-1], sign) {
			return true
		}
	}
	return false
}

// enter notes that an entry begins in a column, and finds out whether it may. The items of
// a list may begin in the column of the key that they belong to.
func (s *scanner) enter(entry level) {
	left := false
	for s.top().col > entry.col || s.top().col == entry.col && s.top().list && !entry.list && s.second().col == entry.col {
		s.levels = s.levels[:len(s.levels)-1]
		left = true
	}
	at := stretch{s.line, entry.col, s.end()}
	switch top := s.top(); {
	case top == entry:
	case top.col == 0, s.open && !left && (top.col < entry.col || entry.list):
		s.levels = append(s.levels, entry)
	case top.col < entry.col:
		s.add(wrongIndent(at, entry.col-1, top.col-1))
	default:
		s.add(mixedEntries(at, entry.list))
	}
}

// top is the innermost level, the zero level if there is none; second is the one around it.
func (s *scanner) top() level    { return s.fromTop(1) }
func (s *scanner) second() level { return s.fromTop(2) }

func (s *scanner) fromTop(n int) level {
	if n > len(s.levels) {
		return level{}
	}
	return s.levels[len(s.levels)-n]
}

// keyEnd returns the column of the colon behind the key that begins in a column, 0 if
// there is none.
func (s *scanner) keyEnd(col int) int {
	switch c := s.at(col); c {
	case '{', '[':
		return 0
	case '"', '\'':
		line, after, ok := s.quoted(s.line, col)
		if after = s.skip(after); ok && line == s.line && s.at(after) == ':' && s.blankAt(after+1) {
			return after
		}
		return 0
	}
	for ; s.at(col) != 0 && !s.comment(col); col++ {
		if s.at(col) == ':' && s.blankAt(col+1) {
			return col
		}
	}
	return 0
}

// keyless judges a line that is neither an entry nor an item.
func (s *scanner) keyless(col int) {
	end := s.end()
	at := stretch{s.line, col, end}
	switch c := s.at(col); {
	case c == '}' || c == ']':
		s.add(strayClosing(stretch{s.line, col, col + 1}, c, put(s.line, col, ' ')))
	case c == '{' || c == '[' || c == '"' || c == '\'':
		s.value(col, col)
	case s.plain && len(s.levels) > 0 && col > s.levels[len(s.levels)-1].col:
		// the text of the entry above goes on
	default:
		s.add(s.missingColon(at))
	}
}

func (s *scanner) missingColon(at stretch) cause {
	text := s.cut(at.col, at.end)
	colon := strings.IndexByte(text, ':')
	if colon > 0 && !strings.ContainsAny(text[:colon], " \t") {
		col := at.col + len([]rune(text[:colon]))
		return noSpaceAfterColon(at, text, put(s.line, col+1, ' '))
	}
	return noColon(at, firstWords(text), erase(at))
}

// erase is the patch that leaves nothing of a stretch.
func erase(at stretch) patch { return patch{at.line, at.col, at.end, ' '} }

func firstWords(s string) string {
	const most = 24
	if r := []rune(s); len(r) > most {
		return string(r[:most-1]) + "…"
	}
	return s
}

// value judges what stands behind a colon or a dash; parent is the column of its entry.
func (s *scanner) value(col, parent int) {
	s.open, s.plain = false, false
	c := s.at(col)
	switch {
	case c == 0 || s.comment(col):
		s.open = true
	case c == '"' || c == '\'':
		s.quotedValue(col)
	case c == '{' || c == '[':
		s.brackets(col)
	case c == '|' || c == '>':
		s.blockText(col, parent)
	default:
		s.plainValue(col, c)
	}
}

// plainValue judges a text without quotes.
func (s *scanner) plainValue(col int, c rune) {
	end := s.textEnd(col)
	at := stretch{s.line, col, end}
	text := s.cut(col, end)
	sign := put(s.line, col, '_')
	switch {
	case strings.ContainsRune("%@`*&!]},", c):
		s.add(beginsWith(at, c, text, sign))
		return
	case (c == '-' || c == '?' || c == ':') && s.blankAt(col+1):
		s.add(beginsWith(at, c, text, sign))
		return
	}
	s.plain = true
	var colons []patch
	for i := col; i < end; i++ {
		if s.at(i) == ':' && s.blankAt(i+1) {
			colons = append(colons, put(s.line, i, '_'))
		}
	}
	if len(colons) > 0 {
		s.add(secondColon(at, text, colons...))
	}
}

// textEnd is the column behind a plain text that begins in col: in front of a comment or
// at the end of the line.
func (s *scanner) textEnd(col int) int {
	end := s.end()
	for i := col; i < end; i++ {
		if s.comment(i) {
			for end = i; isBlank(s.at(end - 1)); {
				end--
			}
			break
		}
	}
	return max(end, col)
}

// blockText skips the lines of a text that | or > announces.
func (s *scanner) blockText(col, parent int) {
	end := s.textEnd(col)
	text := s.cut(col, end)
	if header := strings.TrimLeft(text[1:], "+-123456789"); header != "" || len(text) > 3 {
		s.add(beginsWith(stretch{s.line, col, end}, s.at(col), text, put(s.line, col, '_')))
		return
	}
	for s.line < len(s.lines) {
		body := strings.TrimLeft(s.lines[s.line], " ")
		if body != "" && len(s.lines[s.line])-len(body) < parent {
			return
		}
		s.line++
	}
}
