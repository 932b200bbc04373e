package report

import "strings"

// minRoom is the fewest columns that a quoted line is cropped to.
const minRoom = 20

// strip is a line of a file made ready for a terminal: tabs are blanks, every character
// knows its column.
type strip struct {
	pieces []string // what is printed for each character
	starts []int    // column, from 0, at which each character begins; one more for the end
}

func newStrip(line string) strip {
	s := strip{starts: []int{0}}
	at := 0
	for _, r := range line {
		piece, long := string(tame(r)), 0
		if r == '\t' {
			long = tabStop - at%tabStop
			piece = strings.Repeat(" ", long)
		} else {
			long = columns(piece)
		}
		at += long
		s.pieces = append(s.pieces, piece)
		s.starts = append(s.starts, at)
	}
	return s
}

// index turns a character position from 1 into one from 0 that the strip has; the end of
// the line counts.
func (s strip) index(col int) int { return min(max(col-1, 0), len(s.pieces)) }

// quote makes two lines of a line of a file: the line itself, cropped to room columns
// around the characters from col up to but without end (both from 1), and the carets that
// stand below those characters. There is always at least one caret.
func quote(line string, col, end, room int) (text, carets string) {
	line, col, end = near(strings.TrimRight(line, " \t"), col, end, reach*max(room, minRoom))
	s := newStrip(line)
	first := s.index(col)
	last := max(s.index(end), first)
	from, to := s.crop(first, last, max(room, minRoom))

	text = strings.Join(s.pieces[from:to], "")
	pad := s.starts[first] - s.starts[from]
	if from > 0 {
		text, pad = "…"+text, pad+1
	}
	if to < len(s.pieces) {
		text += "…"
	}
	long := max(s.starts[min(last, to)]-s.starts[first], 1)
	return text, strings.Repeat(" ", pad) + strings.Repeat("^", long)
}

// reach is how many times more characters than columns are looked at on either side of a
// place: a file may be one line of megabytes, with a finding on every word.
const reach = 4

// near cuts a line down to a number of characters on either side of a place, and returns
// where the place is in what is left.
func near(line string, col, end, most int) (string, int, int) {
	at, skipped := 0, 0
	for i := range line {
		if at == col-1-most {
			line, skipped = line[i:], at
			break
		}
		at++
	}
	col, end = col-skipped, end-skipped
	at = 0
	for i := range line {
		if at == max(col, 1)+most {
			line = line[:i]
			break
		}
		at++
	}
	return line, col, end
}

// crop picks the characters that fit into room columns, with those from first to last in
// the middle, or their beginning where they are too many.
func (s strip) crop(first, last, room int) (from, to int) {
	total := s.starts[len(s.pieces)]
	if total <= room {
		return 0, len(s.pieces)
	}
	room -= 2 // the marks of what was left out
	spare := max(room-(s.starts[last]-s.starts[first]), room/4)
	left := min(max(s.starts[first]-spare/2, 0), total-room)
	for s.starts[from] < left {
		from++
	}
	from = min(from, first)
	to = from
	for to < len(s.pieces) && s.starts[to+1]-s.starts[from] <= room {
		to++
	}
	return from, to
}
