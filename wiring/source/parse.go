package source

import (
	"bytes"
	"fmt"
	"strings"

	"github.com/lugwright/lugwright/wiring/diag"
)

// Parse reads one YAML document. name is the file as spans shall call it.
//
// It reports every fault that it can find in one run, and returns a tree whenever one
// follows from the text: values that could not be read stand in it as Null, and entries
// whose key could not be read are left out. Keys that begin with "x-" are the user's own
// and are left out too. A nil *Node means that the text has no reliable structure; then
// there is at least one finding. Findings are sorted by place.
func Parse(name string, content []byte) (*Node, []diag.Finding) {
	if why, ok := refuse(name, content); ok {
		return nil, []diag.Finding{why}
	}
	content = bytes.TrimPrefix(content, []byte("\ufeff"))
	p := &parsing{text: newText(name, string(content))}
	root := p.read()
	return root, p.findings()
}

// parsing is the work on one file.
type parsing struct {
	text   *text
	causes []cause        // mistakes in the writing, mended in the view or not
	faults []diag.Finding // everything else
	more   int            // faults that were only counted
	nested bool           // nesting too deep has been reported
}

func (p *parsing) read() *Node {
	if at, ok := loneReturn(p.text); ok {
		p.fault(at, "a carriage return ends this line", "Save the file with the line ends of Windows or Unix")
		return nil
	}
	p.causes = append(badSigns(p.text), oddIndents(p.text)...)
	p.causes = append(p.causes, directives(p.text)...)
	v := newView(p.text)
	patches := quietBlanks(p.text)
	for _, c := range p.causes {
		patches = append(patches, c.mend...)
	}
	v.make(patches)
	result := p.mend(v)
	switch {
	case result.tooDeep():
		p.tooDeep(p.text.whole(result.line))
		return nil
	case result.err != "":
		return nil
	case result.root == nil:
		if len(p.causes) == 0 {
			p.fault(p.text.span(1, 1, 1), "this file is empty")
		}
		return nil
	}
	p.furtherDocument(result)
	return p.document(result.root)
}

// mend asks the YAML library, and while it refuses the text mends the mistakes that make
// it do so. What it returns has an error only if no more mending helps.
func (p *parsing) mend(v *view) verdict {
	result := ask(v)
	budget := newBudget(p.text)
	for result.err != "" && !result.tooDeep() && budget.take() {
		found := nearby(scan(v), result)
		mended, next, helped := tryOne(v, result, found, budget)
		if len(helped) == 0 {
			mended, next, helped = tryTogether(v, result, found, budget)
		}
		if len(helped) == 0 {
			p.causes = append(p.causes, unmended(p.text, found, result))
			return result
		}
		p.causes = append(p.causes, helped...)
		v, result = mended, next
	}
	return result
}

// nearby leaves out suspects on lines that the library has not reached.
func nearby(found []cause, result verdict) []cause {
	for i, c := range found {
		if c.line > result.line+1 {
			return found[:i]
		}
	}
	return found
}

// tryOne looks for the suspect that is to blame: the first whose mending gets the library
// past where it gave up.
func tryOne(v *view, before verdict, found []cause, b *budget) (*view, verdict, []cause) {
	for _, c := range found {
		if !c.mendable() || !b.take() {
			continue
		}
		mended := v.with(c.mend)
		if after := ask(mended); betters(before, after, c.line) {
			return mended, after, []cause{c}
		}
	}
	return nil, verdict{}, nil
}

// tryTogether mends all suspects about the place where the library gave up, for mistakes
// that stand on one line and hide each other.
func tryTogether(v *view, before verdict, found []cause, b *budget) (*view, verdict, []cause) {
	const most = 20
	var close []cause
	var patches []patch
	for _, c := range found {
		if c.mendable() && c.line >= before.line-2 && len(close) < most {
			close = append(close, c)
			patches = append(patches, c.mend...)
		}
	}
	if len(close) < 2 || !b.take() {
		return nil, verdict{}, nil
	}
	mended := v.with(patches)
	after := ask(mended)
	if !betters(before, after, close[0].line) {
		return nil, verdict{}, nil
	}
	return mended, after, close
}

// betters reports whether the library got further after something on a line was mended.
func betters(before, after verdict, line int) bool {
	return after.err == "" || after.line > before.line || after.err != before.err && after.line >= line
}

// unmended is what to say of a fault that nothing mends: the first suspect from two lines
// above the place where the library gave up, else that the line is not YAML.
func unmended(t *text, found []cause, result verdict) cause {
	from := result.line - 2
	if result.unfinished() {
		from = 1
	}
	for _, c := range found {
		if c.line >= from {
			return c
		}
	}
	at := t.whole(blamed(t, result.line))
	return notYAML(stretch{at.Line, at.Col, at.EndCol})
}

// blamed is the last line that holds anything, up to the one that the library had taken;
// it takes a line that it finds in order only after the one in front.
func blamed(t *text, line int) int {
	line = min(max(line, 1), len(t.lines))
	for line > 1 && strings.TrimSpace(t.lines[line-1].text) == "" {
		line--
	}
	return line
}

// budget bounds the work that is spent on looking for the mistakes of one file.
type budget struct{ bytes, left int }

// mostWork is the text that the library may be asked to read again, in bytes.
const mostWork = 8 << 20

func newBudget(t *text) *budget {
	size := 1024
	for _, l := range t.lines {
		size += len(l.text) + 1
	}
	return &budget{bytes: size, left: mostWork}
}

func (b *budget) take() bool {
	b.left -= b.bytes
	return b.left >= 0
}

func (p *parsing) fault(at diag.Span, message string, advice ...string) {
	p.add(Fault(at, message, advice...))
}

// add keeps a finding, or counts it where there are too many to be of use.
func (p *parsing) add(f diag.Finding) {
	if len(p.faults) == MostFindings {
		p.more++
		return
	}
	p.faults = append(p.faults, f)
}

func (p *parsing) tooDeep(at diag.Span) {
	if !p.nested {
		p.nested = true
		p.fault(at, fmt.Sprintf("maps and lists stand inside each other more than %d deep", MostNesting))
	}
}

// findings returns everything that was found, sorted, and no more than is of use.
func (p *parsing) findings() []diag.Finding {
	all := p.faults
	for _, c := range p.causes {
		all = append(all, c.finding(p.text))
	}
	diag.Sort(all)
	if more := p.more + len(all) - min(len(all), MostFindings); more > 0 {
		all = all[:min(len(all), MostFindings)]
		all = append(all, Fault(all[len(all)-1].At, fmt.Sprintf("%d more faults of this file are not listed", more)))
	}
	return all
}
