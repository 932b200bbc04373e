package report

import "github.com/lugwright/lugwright/wiring/diag"

// style puts colour around words, or leaves them alone. The sequences are those of
// ECMA-48 (SGR).
type style bool

const (
	sgrReset  = "\x1b[0m"
	sgrBold   = "\x1b[1m"
	sgrRed    = "\x1b[1;31m"
	sgrYellow = "\x1b[1;33m"
	sgrCyan   = "\x1b[1;36m"
)

func (s style) paint(sgr, text string) string {
	if !s || text == "" {
		return text
	}
	return sgr + text + sgrReset
}

func (s style) bold(text string) string { return s.paint(sgrBold, text) }

// level paints a text in the colour of a level. The text says the level too: colour never
// carries meaning alone.
func (s style) level(l diag.Level, text string) string {
	switch l {
	case diag.Error:
		return s.paint(sgrRed, text)
	case diag.Warning:
		return s.paint(sgrYellow, text)
	}
	return s.paint(sgrCyan, text)
}
