package source

import (
	"strconv"
	"strings"
)

// MostInRange bounds the members of one range.
const MostInRange = 10000

// Expand writes out a range: "G11..G14.+" and "G11..14.+" become G11.+ G12.+ G13.+ G14.+.
// A range in the middle of a text is written out where it stands: "A1.3..4" becomes A1.3
// A1.4; a suffix stands in both: E1F..E3F. Text without a range comes back as its only element. The second result is false for
// a range that counts down, has more than MostInRange members or two different names, and
// for two ranges in one text.
func Expand(text string) ([]string, bool) {
	before, after, found := strings.Cut(text, "..")
	if !found {
		return []string{text}, true
	}
	head, low, suffix := cutNumber(before)
	name := head[strings.LastIndexByte(head, '.')+1:]
	if len(after) >= len(name) && strings.EqualFold(after[:len(name)], name) {
		after = after[len(name):]
	}
	high, tail := leadingDigits(after)
	if strings.Contains(tail, "..") || !strings.HasPrefix(tail, suffix) {
		return nil, false
	}
	from, err1 := strconv.Atoi(low)
	to, err2 := strconv.Atoi(high)
	if err1 != nil || err2 != nil || to < from || to-from >= MostInRange {
		return nil, false
	}
	members := make([]string, 0, to-from+1)
	for n := from; n <= to; n++ {
		members = append(members, head+padded(n, low)+tail)
	}
	return members, true
}

// IsRange reports whether a text is written as a range.
func IsRange(text string) bool { return strings.Contains(text, "..") }

// cutNumber cuts the last number out of a name, with the letters behind it: E1F.
func cutNumber(s string) (head, digits, suffix string) {
	name := strings.TrimRightFunc(s, func(r rune) bool { return r < '0' || '9' < r })
	head = strings.TrimRightFunc(name, func(r rune) bool { return '0' <= r && r <= '9' })
	return head, name[len(head):], s[len(name):]
}

func leadingDigits(s string) (digits, tail string) {
	tail = strings.TrimLeftFunc(s, func(r rune) bool { return '0' <= r && r <= '9' })
	return s[:len(s)-len(tail)], tail
}

// padded keeps the zeros in front that the first member of a range has: W08..W11.
func padded(n int, like string) string {
	s := strconv.Itoa(n)
	if len(like) > len(s) && like[0] == '0' {
		return strings.Repeat("0", len(like)-len(s)) + s
	}
	return s
}
