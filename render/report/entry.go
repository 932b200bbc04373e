package report

import "strings"

// entry writes a text broken at the width behind what leads it; further lines stand below
// the first.
func (p *printer) entry(lead, text string) {
	margin := strings.Repeat(" ", columns(lead))
	for i, line := range wrap(text, p.width-len(margin)) {
		if i == 0 {
			p.line(strings.TrimRight(lead+line, " "))
		} else {
			p.line(margin + line)
		}
	}
}
