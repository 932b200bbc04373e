package source

import "strings"

// mostBracketLines bounds how far a closing bracket is looked for.
const mostBracketLines = 1000

// bracketScan reads what stands between brackets, up to the one that closes the first.
type bracketScan struct {
	*scanner
	first  int // line of the first bracket
	indent int // of that line
	col    int
	open   []openBracket

	hidden bool // a comment has been reported that hides a closing bracket
}

type openBracket struct {
	sign   rune
	at     stretch
	colon  bool    // the entry being read has its colon
	filled bool    // the entry being read has a value
	nested bool    // and that is a map or a list
	text   stretch // of the value being read
}

var closingOf = map[rune]rune{'{': '}', '[': ']'}

// brackets judges a map or list between brackets that begins in a column of the line being
// read, and leaves s at the line where it ends.
func (s *scanner) brackets(col int) {
	b := &bracketScan{scanner: s, first: s.line, col: col}
	b.indent = len(s.lines[s.line-1]) - len(strings.TrimLeft(s.lines[s.line-1], " "))
	for b.step() {
	}
	if len(b.open) > 0 {
		b.unclosed()
		return
	}
	rest := s.skip(b.col)
	if c := s.at(rest); c != 0 && c != ':' && !s.comment(rest) {
		at := stretch{s.line, rest, s.end()}
		s.add(behindBracket(at, s.at(b.col-1), erase(at)))
	}
}

// step reads one thing and reports whether there is more to read.
func (b *bracketScan) step() bool {
	b.col = b.skip(b.col)
	c := b.at(b.col)
	switch {
	case c == 0:
		return b.nextLine()
	case b.comment(b.col) || c == '#' && !b.filled():
		b.noteComment()
		b.col = len(b.text(b.line)) + 1
	case c == '{' || c == '[':
		b.begin(c)
	case c == '}' || c == ']':
		b.close(c)
		return len(b.open) > 0
	case c == ',':
		b.comma()
	case c == ':' && b.filled():
		b.colon()
	case c == '"' || c == '\'':
		b.quotedText()
	default:
		b.plainText(c)
	}
	return true
}

func (b *bracketScan) top() *openBracket { return &b.open[len(b.open)-1] }

func (b *bracketScan) filled() bool { return len(b.open) > 0 && b.top().filled }

// nextLine goes on to the next line, unless the brackets end here for want of a closing one.
func (b *bracketScan) nextLine() bool {
	if b.line == len(b.lines) || b.line-b.first >= mostBracketLines {
		return false
	}
	next := b.lines[b.line]
	body := strings.TrimLeft(next, " ")
	if len(next)-len(body) <= b.indent && b.looksLikeEntry(b.line+1) {
		return false
	}
	b.line, b.col = b.line+1, 1
	return true
}

// noteComment remembers a comment that hides a closing bracket.
func (b *bracketScan) noteComment() {
	if b.hidden || !strings.ContainsAny(b.cut(b.col, b.end()), "}]") {
		return
	}
	from := b.col
	if t := b.top().text; b.filled() && t.line == b.line {
		from = t.col
	}
	b.hidden = true
	b.add(commentInBrackets(stretch{b.line, from, b.end()}, put(b.line, b.col, '_'), b.open[0].sign))
}

func (b *bracketScan) begin(c rune) {
	at := stretch{b.line, b.col, b.col + 1}
	b.col++
	if b.filled() {
		b.bracketInText(at, c)
		return
	}
	if len(b.open) > 0 {
		top := b.top()
		top.filled, top.nested, top.text = true, true, at
	}
	if len(b.open) < MostNesting+1 {
		b.open = append(b.open, openBracket{sign: c, at: at})
	}
}

// bracketInText judges a bracket that follows a text: it belongs to the text.
func (b *bracketScan) bracketInText(at stretch, c rune) {
	text := b.top().text
	if text.line != b.line {
		text = at
	}
	text.end = b.partEnd(at.end, closingOf[c])
	mend := []patch{put(b.line, at.col, '_')}
	for col := at.end; col < text.end; col++ {
		if s := b.at(col); strings.ContainsRune("{}[],", s) {
			mend = append(mend, put(b.line, col, '_'))
		}
	}
	b.add(holdsSign(text, c, b.cut(text.col, text.end), mend...))
	b.col = text.end
}

// partEnd is the column behind a bracketed part of a text, or where the text ends.
func (b *bracketScan) partEnd(col int, closing rune) int {
	for i := col; b.at(i) != 0; i++ {
		if b.at(i) == closing {
			return i + 1
		}
	}
	return col
}

func (b *bracketScan) close(c rune) {
	top := b.top()
	if want := closingOf[top.sign]; c != want {
		b.add(wrongClosing(stretch{b.line, b.col, b.col + 1}, c, top.sign, put(b.line, b.col, want)))
	}
	b.open = b.open[:len(b.open)-1]
	b.col++
}

func (b *bracketScan) comma() {
	if top := b.top(); !top.filled && !top.colon {
		b.add(nothingBetweenCommas(stretch{b.line, b.col, b.col + 1}, put(b.line, b.col, ' ')))
	}
	top := b.top()
	top.filled, top.nested, top.colon = false, false, false
	b.col++
}

// colon reads a colon behind a value.
func (b *bracketScan) colon() {
	top := b.top()
	if top.colon {
		at := top.text
		if at.line != b.line {
			at = stretch{b.line, b.col, b.col + 1}
		}
		at.end = b.plainEnd(b.col + 1)
		b.add(secondColonInBrackets(at, put(b.line, b.col, '_')))
		b.col++
		return
	}
	top.colon, top.filled, top.nested = true, false, false
	b.col++
}

func (b *bracketScan) quotedText() {
	start := stretch{b.line, b.col, b.end()}
	quote := b.at(b.col)
	if b.filled() { // a quote inside a text, such as the inch sign of 14"
		b.col++
		return
	}
	line, after, ok := b.quoted(b.line, b.col)
	b.top().filled, b.top().text = true, start
	if !ok {
		b.add(neverClosed(start, quote, put(b.line, b.col, '_')))
		b.col++
		return
	}
	b.escapes(b.line, b.col, line, after)
	b.line, b.col = line, b.skipOn(line, after)
	c := b.at(b.col)
	if line != start.line || c == 0 || c == '#' || strings.ContainsRune(",}]:", c) {
		return
	}
	end := b.plainEnd(b.col)
	b.add(behindQuote(stretch{line, start.col, end}, quote, b.plainQuotes(start.col, end)...))
	b.col = end
}

func (b *bracketScan) skipOn(line, col int) int {
	for isBlank(b.of(line, col)) {
		col++
	}
	return col
}

// plainText reads a text without quotes, up to the next sign that parts values.
func (b *bracketScan) plainText(c rune) {
	end := b.plainEnd(b.col)
	at := stretch{b.line, b.col, max(end, b.col+1)}
	text := b.cut(at.col, at.end)
	switch {
	case b.filled() && b.top().nested:
		b.add(behindBracket(at, closingOf[b.of(b.top().text.line, b.top().text.col)], erase(at)))
	case !b.filled():
		if strings.ContainsRune("%@`*&!?>|:", c) || c == '-' && isBlank(b.at(b.col+1)) {
			b.add(beginsWith(at, c, text, put(b.line, b.col, '_')))
		}
		b.top().filled, b.top().text = true, at
	}
	if i := strings.IndexRune(text, '?'); i > 0 {
		col := at.col + len([]rune(text[:i]))
		b.add(holdsSign(at, '?', text, put(b.line, col, '_')))
	}
	b.col = at.end
}

// plainEnd is the column behind a text: at a comma, a bracket, a comment, or a colon that
// begins a value.
func (b *bracketScan) plainEnd(col int) int {
	end := col
	for i := col; b.at(i) != 0; i++ {
		c := b.at(i)
		if strings.ContainsRune(",{}[]", c) || b.comment(i) {
			break
		}
		if c == ':' && (b.blankAt(i+1) || strings.ContainsRune(",{}[]", b.at(i+1))) {
			break
		}
		if !isBlank(c) {
			end = i + 1
		}
	}
	return end
}

// unclosed reports the first bracket that nothing closes, unless a comment has hidden it.
func (b *bracketScan) unclosed() {
	if b.hidden {
		return
	}
	last := b.line
	for last > b.first && strings.TrimSpace(b.lines[last-1]) == "" {
		last--
	}
	var mend []patch
	for i := len(b.open) - 1; i >= 0; i-- {
		mend = append(mend, put(last, 0, closingOf[b.open[i].sign]))
	}
	b.add(neverClosed(b.open[0].at, b.open[0].sign, mend...))
}
