package quantity

import (
	"strconv"
	"strings"
)

// mostCount is the largest count taken: the largest number of parts in a job.
const mostCount = 10000

// ParseCount reads a plain whole number from 0 to 10000: cells, channels, pins. The error
// is always an [*Error].
func ParseCount(text string) (int, error) {
	cleaned, fail := clean(text)
	if fail != nil {
		return 0, fail
	}
	if isDigits(cleaned) && len(cleaned) <= 9 {
		n, err := strconv.Atoi(cleaned)
		if err == nil && n <= mostCount {
			return n, nil
		}
	}
	return 0, noCount(cleaned)
}

func isDigits(text string) bool {
	return text != "" && strings.Trim(text, "0123456789") == ""
}

func noCount(text string) *Error {
	if text == "" {
		return fault(text, "has no value", "a plain whole number")
	}
	if isDigits(text) {
		return fault(text, "is too many", "at most "+strconv.Itoa(mostCount))
	}
	n, rest, ok := cutNumeral(text)
	if ok && n.value.IsInt() && !n.fraction && misread(text, n, rest) == nil {
		return fault(text, "is no count", "write "+n.value.Num().String())
	}
	return fault(text, "is no count", "a plain whole number")
}
