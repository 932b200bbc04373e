package job

import (
	"fmt"
	"unicode/utf8"

	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/source"
)

// fault reports an input error.
func (r *reading) fault(at diag.Span, message string, advice ...string) *diag.Finding {
	return r.add(source.Fault(at, message, advice...))
}

// lost reports a reference to what is not there, unless it may be in what could not be
// read.
func (r *reading) lost(at diag.Span, message string, advice ...string) *diag.Finding {
	if r.gaps {
		return &diag.Finding{}
	}
	return r.fault(at, message, advice...)
}

// warn reports something about the input that may be as meant.
func (r *reading) warn(at diag.Span, message string, advice ...string) *diag.Finding {
	f := source.Fault(at, message, advice...)
	f.Level = diag.Warning
	return r.add(f)
}

// note reports something about the input that is worth knowing.
func (r *reading) note(at diag.Span, message string, advice ...string) *diag.Finding {
	f := source.Fault(at, message, advice...)
	f.Level = diag.Note
	return r.add(f)
}

// add keeps a finding. The result may be completed until the next one is added. Of a file
// that is nothing but faults the first are enough.
func (r *reading) add(f diag.Finding) *diag.Finding {
	if r.flooded() {
		r.unlisted++
		return &diag.Finding{}
	}
	f.Message = clip(f.Message, longestMessage)
	r.findings = append(r.findings, f)
	return &r.findings[len(r.findings)-1]
}

// flooded reports whether enough has been found.
func (r *reading) flooded() bool { return len(r.findings) >= mostFindings }

// closeFlood says how many faults are not listed.
func (r *reading) closeFlood() {
	if r.unlisted > 0 {
		r.findings = append(r.findings, source.Fault(topOf(r.top().File), fmt.Sprintf("%d more faults are not listed", r.unlisted)))
	}
}

// clip cuts a text to a number of characters.
func clip(text string, most int) string {
	if utf8.RuneCountInString(text) <= most {
		return text
	}
	return string([]rune(text)[:most-1]) + "…"
}

// meant is ": did you mean X?" for a word that is none of some names, or nothing. The names
// are asked for only if there is still something to say.
func (r *reading) meant(word string, names func() []string) string {
	if r.flooded() || len(word) > longestName {
		return ""
	}
	return source.DidYouMean(word, names())
}

// once reports a fault the first time that it is asked for under this name.
func (r *reading) once(name string, at diag.Span, message string, advice ...string) {
	if !r.full[name] {
		r.full[name] = true
		r.fault(at, message, advice...)
	}
}
