package report

import (
	"fmt"
	"io"
	"strings"

	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/rule"
)

// Explain writes everything that is known of a rule. The error is that of w.
func Explain(w io.Writer, one *rule.Rule, o TextOptions) error {
	p := newPrinter(o, nil)
	p.explain(one)
	_, err := w.Write(p.out.Bytes())
	return err
}

// Rules writes a list of rules, one line each: id, level, title. The error is that of w.
func Rules(w io.Writer, rules []*rule.Rule, o TextOptions) error {
	p := newPrinter(o, nil)
	long := 0
	for _, one := range rules {
		long = max(long, columns(one.ID))
	}
	for _, one := range rules {
		level := fmt.Sprintf("%-7s", one.Level)
		p.line(fmt.Sprintf("%-*s  %s  %s", long, one.ID, p.level(one.Level, level), one.Title))
	}
	_, err := w.Write(p.out.Bytes())
	return err
}

// explanation is the text of Explain without colour, for formats that carry it along.
func explanation(one *rule.Rule, width int) string {
	p := newPrinter(TextOptions{Width: width}, nil)
	p.explain(one)
	return p.out.String()
}

func (p *printer) explain(one *rule.Rule) {
	p.line(p.bold(one.ID) + ": " + one.Title)
	p.line(p.level(one.Level, one.Level.String()) + ": " + meaning(one.Level))
	for _, s := range sections(one) {
		if strings.TrimSpace(s.text) == "" {
			continue
		}
		p.line("")
		p.line(p.bold(s.title))
		if s.verbatim {
			p.verbatim(s.text)
		} else {
			p.body(s.text)
		}
	}
}

// verbatim writes lines of a file as they stand.
func (p *printer) verbatim(text string) {
	for _, line := range strings.Split(strings.Trim(text, "\n"), "\n") {
		p.line(strings.TrimRight(bodyIndent+line, " "))
	}
}

// section is one heading of an explanation.
type section struct {
	title, text string
	verbatim    bool // lines of a job file
}

// sections lists what is said about a rule, in the order in which a reader needs it.
func sections(one *rule.Rule) []section {
	return []section{
		{title: "Why it matters", text: one.Why},
		{title: "What to do", text: one.Do},
		{title: "Wrong", text: one.Wrong, verbatim: true},
		{title: "Right", text: one.Right, verbatim: true},
		{title: "Source", text: one.Source},
		{title: "To live with one finding", text: waiver(one.ID), verbatim: true},
	}
}

// waiver is how a job waives a finding of the rule.
func waiver(id string) string {
	return "waivers:\n  - {rule: " + id + ", at: W99, reason: \"why it is right on this cart\", by: AB}"
}

// meaning says what a level asks of the reader.
func meaning(l diag.Level) string {
	switch l {
	case diag.Error:
		return "do not energise"
	case diag.Warning:
		return "mend before hand-over"
	}
	return "worth knowing"
}

// markdown is the explanation for viewers that render CommonMark.
func markdown(one *rule.Rule) string {
	var b strings.Builder
	fmt.Fprintf(&b, "**%s**: %s\n", one.Level, meaning(one.Level))
	for _, s := range sections(one) {
		text := strings.Trim(s.text, "\n")
		if strings.TrimSpace(text) == "" {
			continue
		}
		if s.verbatim {
			text = "```yaml\n" + text + "\n```"
		}
		fmt.Fprintf(&b, "\n### %s\n\n%s\n", s.title, text)
	}
	return b.String()
}
