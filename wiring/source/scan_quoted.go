package source

import "strings"

// mostQuotedLines bounds how far a closing quote is looked for.
const mostQuotedLines = 64

// quoted finds where the quoted text ends that begins in a column: the line and the column
// behind the closing quote. It fails if the quote is not closed before something follows
// that is clearly another entry.
func (s *scanner) quoted(line, col int) (endLine, after int, ok bool) {
	quote := s.of(line, col)
	col++
	for first := line; line <= len(s.lines) && line-first < mostQuotedLines; line, col = line+1, 1 {
		if line > first && s.looksLikeEntry(line) {
			return line - 1, len(s.text(line-1)) + 1, false
		}
		for ; s.of(line, col) != 0; col++ {
			switch c := s.of(line, col); {
			case c == '\\' && quote == '"':
				col++
			case c == '\'' && quote == '\'' && s.of(line, col+1) == '\'':
				col++
			case c == quote:
				return line, col + 1, true
			}
		}
	}
	line = min(line, len(s.lines)+1) - 1
	return line, len(s.text(line)) + 1, false
}

// looksLikeEntry reports whether a line begins with a dash, or with a word and a colon.
func (s *scanner) looksLikeEntry(line int) bool {
	text := strings.TrimLeft(s.lines[line-1], " ")
	if strings.HasPrefix(text, "- ") {
		return true
	}
	word, rest, found := strings.Cut(text, ":")
	return found && word != "" && !strings.ContainsAny(word, `"'{}[],#`) && (rest == "" || isBlank(rune(rest[0])))
}

// quotedValue judges a quoted text and what stands behind it.
func (s *scanner) quotedValue(col int) {
	line, after, ok := s.quoted(s.line, col)
	if !ok {
		s.add(neverClosed(stretch{s.line, col, s.end()}, s.at(col), put(s.line, col, '_')))
		return
	}
	s.escapes(s.line, col, line, after)
	start, quote := s.line, s.at(col)
	s.line = line
	rest := s.skip(after)
	if s.at(rest) == 0 || s.comment(rest) || s.at(rest) == ':' {
		return
	}
	if line != start {
		s.add(behindQuote(stretch{line, rest, s.end()}, quote, erase(stretch{line, rest, s.end()})))
		return
	}
	end := s.textEnd(rest)
	s.add(behindQuote(stretch{line, col, end}, quote, s.plainQuotes(col, end)...))
}

// plainQuotes are the patches that make a stretch of the line a plain text.
func (s *scanner) plainQuotes(col, end int) []patch {
	var patches []patch
	for ; col < end; col++ {
		if c := s.at(col); c == '"' || c == '\'' {
			patches = append(patches, put(s.line, col, '_'))
		}
	}
	return patches
}

// escapes finds backslashes in a double-quoted text that stand for nothing.
func (s *scanner) escapes(line, col, endLine, after int) {
	if s.of(line, col) != '"' {
		return
	}
	for col++; line < endLine || col < after-1; col++ {
		c := s.of(line, col)
		if c == 0 {
			line, col = line+1, 0
			continue
		}
		if c != '\\' {
			continue
		}
		if next := s.of(line, col+1); next != 0 && !strings.ContainsRune("0abt\tnvfre \"'/\\N_LPxuU", next) {
			s.add(badEscape(stretch{line, col, col + 2}, put(line, col, '_')))
		}
		col++
	}
}
