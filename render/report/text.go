package report

import (
	"bytes"
	"fmt"
	"io"
	"strconv"
	"strings"

	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/rule"
	"github.com/lugwright/lugwright/wiring/source"
)

// TextOptions says how a report is set for reading. The zero TextOptions are those of a
// pipe or a file.
type TextOptions struct {
	Width  int  // columns of the terminal; 0: 100
	Colour bool // ECMA-48 colours
}

// defaultWidth is where lines break when nobody says how wide the terminal is.
const defaultWidth = 100

// bodyIndent is how far everything below the first line of a finding stands in.
const bodyIndent = "    "

// Text writes the report for a person. First lines of findings are
// "file:line:column: level: message (rule)" and never broken, so that editors can jump to
// them; what follows is indented and broken at the width. The error is that of w.
func Text(w io.Writer, r Report, o TextOptions) error {
	p := newPrinter(o, r.Rules)
	for i, job := range r.Jobs {
		if i > 0 {
			p.line("")
		}
		p.job(r, job)
	}
	if len(r.Jobs) > 1 {
		p.line("")
		p.line(p.bold(strconv.Itoa(len(r.Jobs))+" jobs") + ": " + summary(r.Count(), r.Least))
	}
	_, err := w.Write(p.out.Bytes())
	return err
}

// Findings writes the open findings alone, without what was waived or not checked and
// without summary: the form in which a command that is not about findings says what is
// wrong. The error is that of w.
func Findings(w io.Writer, r Report, o TextOptions) error {
	p := newPrinter(o, r.Rules)
	for _, job := range r.Jobs {
		p.findings(r, job)
	}
	_, err := w.Write(p.out.Bytes())
	return err
}

// printer sets text; it collects everything, so that a report is written in one piece.
type printer struct {
	style
	width int
	out   bytes.Buffer
	offer map[string]bool // rules whose explanation is still to be offered
}

func newPrinter(o TextOptions, rules []*rule.Rule) *printer {
	if o.Width <= 0 {
		o.Width = defaultWidth
	}
	p := &printer{style: style(o.Colour), width: o.Width, offer: map[string]bool{}}
	for _, one := range rules {
		p.offer[one.ID] = true
	}
	return p
}

func (p *printer) line(s string) {
	p.out.WriteString(s)
	p.out.WriteByte('\n')
}

// body writes a text below the first line of a finding, broken at the width.
func (p *printer) body(text string) {
	if strings.TrimSpace(text) == "" {
		return
	}
	for _, line := range wrap(text, p.width-len(bodyIndent)) {
		p.line(strings.TrimRight(bodyIndent+line, " "))
	}
}

func (p *printer) job(r Report, job Job) {
	p.findings(r, job)
	p.waived(job)
	p.notChecked(job)
	p.line(p.bold(job.name()) + ": " + summary(job.Count(), r.Least))
}

// name is what a summary calls the job: its number, or its file.
func (j Job) name() string {
	if j.Number != "" {
		return oneLine(j.Number)
	}
	return oneLine(j.File)
}

func (p *printer) findings(r Report, job Job) {
	for _, f := range job.Findings {
		if r.shown(f) {
			p.finding(job, f)
		}
	}
}

// finding writes one finding whole, and offers the explanation of its rule once.
func (p *printer) finding(job Job, f diag.Finding) {
	p.headline(job, f)
	p.quote(job.Files, f)
	p.body(f.Detail)
	p.body(stateList(f.States))
	p.body(f.Advice)
	for _, place := range f.Related {
		p.line(bodyIndent + where(job, place.Span) + ": " + oneLine(place.Label))
	}
	if p.offer[f.Rule] {
		delete(p.offer, f.Rule)
		p.line(bodyIndent + "lugwright explain " + f.Rule)
	}
}

// ruleInput is the rule of faults of the input; there is nothing to explain about it.
const ruleInput = source.RuleInput

func (p *printer) headline(job Job, f diag.Finding) {
	tail := ""
	if f.Rule != "" && f.Rule != ruleInput {
		tail = " (" + f.Rule + ")"
	}
	p.line(p.bold(where(job, f.At)+":") + " " + p.level(f.Level, f.Level.String()+":") + " " +
		p.bold(oneLine(f.Message)) + tail)
}

// where writes a place as editors read it: file:line:column.
func where(job Job, at diag.Span) string {
	switch {
	case at.Known():
		return fmt.Sprintf("%s:%d:%d", oneLine(at.File), at.Line, at.Col)
	case at.File != "":
		return oneLine(at.File)
	}
	return oneLine(job.File)
}

// quote shows the line of the file that a finding is about, with carets below the place.
func (p *printer) quote(files *diag.Files, f diag.Finding) {
	if files == nil || !f.At.Known() {
		return
	}
	line, ok := files.Line(f.At.File, f.At.Line)
	if !ok || strings.TrimSpace(line) == "" {
		return
	}
	number := strconv.Itoa(f.At.Line)
	margin := bodyIndent + number + " | "
	text, carets := quote(line, f.At.Col, f.At.EndCol, p.width-len(margin))
	p.line(margin + text)
	pad, mark := cut(carets)
	p.line(bodyIndent + strings.Repeat(" ", len(number)) + " | " + pad + p.level(f.Level, mark))
}

// cut parts the blanks before the carets from the carets.
func cut(carets string) (pad, mark string) {
	i := strings.IndexByte(carets, '^')
	return carets[:i], carets[i:]
}

// stateList names the states in which a finding holds.
func stateList(states []string) string {
	switch len(states) {
	case 0:
		return ""
	case 1:
		return "In the state " + states[0] + "."
	}
	last := len(states) - 1
	return "In the states " + strings.Join(states[:last], ", ") + " and " + states[last] + "."
}

// waived lists the findings that the job lives with, and why.
func (p *printer) waived(job Job) {
	p.section(job.Count().Waived, "Waived")
	for _, f := range job.Findings {
		if f.Waived == nil {
			continue
		}
		p.line("  " + where(job, f.At) + ": " + f.Level.String() + ": " + oneLine(f.Message) + " (" + f.Rule + ")")
		by := ""
		if f.Waived.By != "" {
			by = f.Waived.By + ": "
		}
		p.body(by + f.Waived.Reason)
	}
}

// notChecked lists what rules could not judge.
func (p *printer) notChecked(job Job) {
	p.section(len(job.NotChecked), "Not checked")
	for _, n := range job.NotChecked {
		p.line("  " + where(job, n.At) + ": " + oneLine(n.String()) + " (" + n.Rule + ")")
	}
}

func (p *printer) section(n int, title string) {
	if n > 0 {
		p.line(p.bold(title + ":"))
	}
}

// summary puts a count into words, and says what the level hides.
func summary(c Count, least diag.Level) string {
	var words []string
	for _, one := range []struct {
		n     int
		noun  string
		level diag.Level
	}{{c.Errors, "error", diag.Error}, {c.Warnings, "warning", diag.Warning}, {c.Notes, "note", diag.Note}} {
		if one.n == 0 {
			continue
		}
		hidden := ""
		if one.level < least {
			hidden = " (see --level " + one.noun + ")"
		}
		words = append(words, plural(one.n, one.noun)+hidden)
	}
	if words == nil {
		words = []string{"nothing found"}
	}
	if c.Waived > 0 {
		words = append(words, strconv.Itoa(c.Waived)+" waived")
	}
	if c.NotChecked > 0 {
		words = append(words, plural(c.NotChecked, "thing")+" not checked")
	}
	return strings.Join(words, ", ")
}

// plural is a count and its noun: "1 error", "3 errors".
func plural(n int, noun string) string {
	if n != 1 {
		noun += "s"
	}
	return strconv.Itoa(n) + " " + noun
}
