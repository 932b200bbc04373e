package report

import (
	"crypto/sha256"
	"encoding/hex"
	"io"
	"net/url"
	"strings"

	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/rule"
)

// SARIF writes the report in the Static Analysis Results Interchange Format, version 2.1.0
// (OASIS Standard, 27 March 2020), which code hosts and editors read. All jobs are one
// run. A waived finding is a suppressed result; what was not checked is a result of kind
// "open". The error is that of w.
func SARIF(w io.Writer, r Report) error {
	run := sarifRun{
		Tool:        sarifTool{Driver: sarifDriver{Name: "lugwright", Version: r.Version, Rules: []sarifRule{inputRule}}},
		Invocations: []sarifInvocation{{ExecutionSuccessful: r.usable()}},
		ColumnKind:  "unicodeCodePoints",
		Results:     []sarifResult{},
	}
	index := map[string]int{ruleInput: 0}
	for _, one := range r.Rules {
		index[one.ID] = len(run.Tool.Driver.Rules)
		run.Tool.Driver.Rules = append(run.Tool.Driver.Rules, ruleSARIF(one))
	}
	for _, job := range r.Jobs {
		run.Results = append(run.Results, r.sarifResults(job, index)...)
	}
	return writeJSON(w, sarifLog{Schema: sarifSchema, Version: "2.1.0", Runs: []sarifRun{run}})
}

// sarifSchema is the address by which the standard names its own schema.
const sarifSchema = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json"

// usable reports whether every file could be checked.
func (r Report) usable() bool {
	for _, job := range r.Jobs {
		if job.Unusable {
			return false
		}
	}
	return true
}

func (r Report) sarifResults(job Job, index map[string]int) []sarifResult {
	var results []sarifResult
	for _, f := range job.Findings {
		if f.Waived != nil || r.shown(f) {
			results = append(results, findingSARIF(job, f, index))
		}
	}
	for _, n := range job.NotChecked {
		results = append(results, sarifResult{
			RuleID:    n.Rule,
			RuleIndex: indexOf(index, n.Rule),
			Kind:      "open",
			Level:     "none",
			Message:   sarifMessage{Text: "Not checked: " + n.String()},
			Locations: []sarifLocation{locationSARIF(job, n.At, nil)},
		})
	}
	return results
}

func findingSARIF(job Job, f diag.Finding, index map[string]int) sarifResult {
	result := sarifResult{
		RuleID:       f.Rule,
		RuleIndex:    indexOf(index, f.Rule),
		Level:        f.Level.String(),
		Message:      sarifMessage{Text: sentences(f.Message, f.Detail, stateList(f.States), f.Advice)},
		Locations:    []sarifLocation{locationSARIF(job, f.At, f.Subjects)},
		Fingerprints: map[string]string{"subjects/v1": fingerprint(f)},
	}
	for i, place := range f.Related {
		related := locationSARIF(job, place.Span, nil)
		related.ID = i + 1
		related.Message = &sarifMessage{Text: place.Label}
		result.RelatedLocations = append(result.RelatedLocations, related)
	}
	if f.Waived != nil {
		at := locationSARIF(job, f.Waived.Span, nil)
		result.Suppressions = []sarifSuppression{{
			Kind:          "inSource",
			Status:        "accepted",
			Justification: justification(*f.Waived),
			Location:      &at,
		}}
	}
	return result
}

// justification is the reason of a waiver and who gave it.
func justification(w diag.Waiver) string {
	if w.By == "" {
		return w.Reason
	}
	return w.Reason + " (" + w.By + ")"
}

// indexOf is nil for a rule that the report does not describe.
func indexOf(index map[string]int, id string) *int {
	if i, ok := index[id]; ok {
		return &i
	}
	return nil
}

// sentences puts texts below each other, leaving out empty ones.
func sentences(texts ...string) string {
	var kept []string
	for _, t := range texts {
		if t = strings.TrimSpace(t); t != "" {
			kept = append(kept, t)
		}
	}
	return strings.Join(kept, "\n")
}

// fingerprint tells a finding from another of the same rule and stays when lines move, so
// that a viewer knows which finding is new.
func fingerprint(f diag.Finding) string {
	sum := sha256.Sum256([]byte(strings.Join(append([]string{f.Rule, f.At.File}, f.Subjects...), "\x00")))
	return hex.EncodeToString(sum[:8])
}

func locationSARIF(job Job, at diag.Span, subjects []string) sarifLocation {
	file := at.File
	if file == "" {
		file = job.File
	}
	location := sarifLocation{Physical: sarifPhysical{Artifact: artifact(file)}}
	if at.Known() {
		location.Physical.Region = &sarifRegion{
			StartLine:   at.Line,
			StartColumn: at.Col,
			EndColumn:   max(at.EndCol, at.Col),
		}
	}
	for _, s := range subjects {
		location.Logical = append(location.Logical, sarifLogical{Name: s})
	}
	return location
}

// artifact turns a file name with forward slashes into a URI reference (RFC 3986): an
// absolute one for an absolute name, else one that counts from the root of the sources.
func artifact(file string) sarifArtifact {
	switch {
	case strings.HasPrefix(file, "/"):
		return sarifArtifact{URI: (&url.URL{Scheme: "file", Path: file}).String()}
	case len(file) > 2 && file[1] == ':' && file[2] == '/': // a drive letter
		return sarifArtifact{URI: (&url.URL{Scheme: "file", Path: "/" + file}).String()}
	}
	return sarifArtifact{URI: (&url.URL{Path: file}).String(), BaseID: "%SRCROOT%"}
}

// inputRule describes faults of the input as a rule, since every result names one.
var inputRule = sarifRule{
	ID:      ruleInput,
	Short:   &sarifMessage{Text: "the file can be read and says what it means"},
	Default: sarifConfiguration{Level: diag.Error.String()},
}

func ruleSARIF(one *rule.Rule) sarifRule {
	return sarifRule{
		ID:      one.ID,
		Short:   &sarifMessage{Text: one.Title},
		Full:    messageOrNil(one.Why),
		Help:    &sarifHelp{Text: explanation(one, defaultWidth), Markdown: markdown(one)},
		Default: sarifConfiguration{Level: one.Level.String()},
	}
}

func messageOrNil(text string) *sarifMessage {
	if text == "" {
		return nil
	}
	return &sarifMessage{Text: text}
}
