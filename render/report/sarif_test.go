package report

import (
	"bytes"
	"encoding/json"
	"fmt"
	"net/url"
	"slices"
	"testing"

	"github.com/lugwright/lugwright/wiring/diag"
)

// The published JSON schema of SARIF is in no Go module at hand, so this checks the
// clauses of SARIF 2.1.0 that concern what is written, on the decoded document. Clause
// numbers and value lists are from memory of the OASIS Standard.

// object is a JSON object whose path is kept for messages.
type object struct {
	t    *testing.T
	path string
	at   map[string]any
}

// only fails for a key that the standard does not define here, and for a missing one.
func (o object) only(required, optional []string) {
	o.t.Helper()
	for key := range o.at {
		if !slices.Contains(required, key) && !slices.Contains(optional, key) {
			o.t.Errorf("%s: no key %s in the standard", o.path, key)
		}
	}
	for _, key := range required {
		if _, ok := o.at[key]; !ok {
			o.t.Errorf("%s: %s is missing", o.path, key)
		}
	}
}

func (o object) child(key string) object {
	o.t.Helper()
	at, ok := o.at[key].(map[string]any)
	if !ok {
		o.t.Fatalf("%s.%s is no object", o.path, key)
	}
	return object{o.t, o.path + "." + key, at}
}

// children returns the objects of an array; a missing array has none.
func (o object) children(key string) []object {
	o.t.Helper()
	if o.at[key] == nil {
		return nil
	}
	list, ok := o.at[key].([]any)
	if !ok {
		o.t.Fatalf("%s.%s is no array", o.path, key)
	}
	var all []object
	for i, one := range list {
		at, ok := one.(map[string]any)
		if !ok {
			o.t.Fatalf("%s.%s[%d] is no object", o.path, key, i)
		}
		all = append(all, object{o.t, fmt.Sprintf("%s.%s[%d]", o.path, key, i), at})
	}
	return all
}

// oneOf fails unless a present value is in the list.
func (o object) oneOf(key string, values ...string) {
	o.t.Helper()
	if got, ok := o.at[key]; ok && !slices.Contains(values, got.(string)) {
		o.t.Errorf("%s.%s is %v, want one of %v", o.path, key, got, values)
	}
}

// atLeast fails unless a present number is whole and no smaller.
func (o object) atLeast(key string, least float64) {
	o.t.Helper()
	if got, ok := o.at[key]; ok {
		n, number := got.(float64)
		if !number || n < least || n != float64(int(n)) {
			o.t.Errorf("%s.%s is %v, want a whole number from %v", o.path, key, got, least)
		}
	}
}

func checkSARIF(t *testing.T, text []byte) {
	t.Helper()
	var doc map[string]any
	if err := json.Unmarshal(text, &doc); err != nil {
		t.Fatal(err)
	}
	log := object{t, "log", doc}
	log.only([]string{"version", "runs"}, []string{"$schema"}) // 3.13
	log.oneOf("version", "2.1.0")
	for _, run := range log.children("runs") {
		run.only([]string{"tool"}, []string{"invocations", "results", "columnKind"}) // 3.14
		run.oneOf("columnKind", "utf16CodeUnits", "unicodeCodePoints")
		if run.at["results"] == nil {
			t.Error("run: results is absent, which says that nothing was checked") // 3.14.23
		}
		for _, call := range run.children("invocations") {
			call.only([]string{"executionSuccessful"}, nil) // 3.20.14
		}
		driver := run.child("tool").child("driver")
		driver.only([]string{"name"}, []string{"version", "rules"}) // 3.19
		checkSARIFRules(t, driver)
		for _, result := range run.children("results") {
			checkSARIFResult(result, driver.children("rules"))
		}
	}
}

func checkSARIFRules(t *testing.T, driver object) {
	t.Helper()
	seen := map[string]bool{}
	for _, one := range driver.children("rules") {
		one.only([]string{"id"}, []string{"shortDescription", "fullDescription", "help", "defaultConfiguration"}) // 3.49
		id := one.at["id"].(string)
		if seen[id] {
			t.Errorf("%s: rule %s is described twice", one.path, id) // 3.19.23: unique
		}
		seen[id] = true
		one.child("defaultConfiguration").oneOf("level", "none", "note", "warning", "error") // 3.50.3
		for _, text := range []string{"shortDescription", "fullDescription", "help"} {
			if one.at[text] != nil {
				one.child(text).only([]string{"text"}, []string{"markdown"}) // 3.12.3
			}
		}
	}
}

func checkSARIFResult(result object, rules []object) {
	result.t.Helper()
	result.only([]string{"message"}, []string{"ruleId", "ruleIndex", "kind", "level", "locations",
		"relatedLocations", "partialFingerprints", "suppressions"}) // 3.27
	result.child("message").only([]string{"text"}, nil) // 3.11
	result.oneOf("level", "none", "note", "warning", "error")
	result.oneOf("kind", "pass", "open", "informational", "notApplicable", "review", "fail")
	if kind, ok := result.at["kind"]; ok && kind != "fail" && result.at["level"] != "none" {
		result.t.Errorf("%s: kind %v goes with level none", result.path, kind) // 3.27.10
	}
	result.atLeast("ruleIndex", 0)
	if i, ok := result.at["ruleIndex"].(float64); ok && rules[int(i)].at["id"] != result.at["ruleId"] {
		result.t.Errorf("%s: ruleIndex and ruleId name two rules", result.path) // 3.27.6
	}
	for _, place := range result.children("locations") {
		checkSARIFLocation(place)
	}
	ids := map[any]bool{}
	for _, place := range result.children("relatedLocations") {
		checkSARIFLocation(place)
		if ids[place.at["id"]] {
			result.t.Errorf("%s: id is not unique within the result", place.path) // 3.28.2
		}
		ids[place.at["id"]] = true
	}
	for _, one := range result.children("suppressions") {
		one.only([]string{"kind"}, []string{"status", "justification", "location"}) // 3.35
		one.oneOf("kind", "inSource", "external")
		one.oneOf("status", "accepted", "underReview", "rejected")
		checkSARIFLocation(one.child("location"))
	}
}

func checkSARIFLocation(place object) {
	place.t.Helper()
	place.only(nil, []string{"id", "physicalLocation", "logicalLocations", "message"}) // 3.28
	place.atLeast("id", 0)
	physical := place.child("physicalLocation")
	physical.only(nil, []string{"artifactLocation", "region"}) // 3.29
	artifact := physical.child("artifactLocation")
	artifact.only(nil, []string{"uri", "uriBaseId"})                     // 3.4
	if _, err := url.Parse(fmt.Sprint(artifact.at["uri"])); err != nil { // 3.4.3: a URI reference
		place.t.Errorf("%s: %v", artifact.path, err)
	}
	if physical.at["region"] != nil {
		region := physical.child("region")
		region.only([]string{"startLine"}, []string{"startColumn", "endColumn"}) // 3.30.1
		region.atLeast("startLine", 1)
		region.atLeast("startColumn", 1)
		region.atLeast("endColumn", region.at["startColumn"].(float64))
	}
	for _, one := range place.children("logicalLocations") {
		one.only([]string{"name"}, nil) // 3.33
	}
}

func TestSARIFKeepsTheStandard(t *testing.T) {
	odd := sampleReport()
	odd.Jobs[0].Findings[1].At.EndCol = 0 // a span without an end
	for name, r := range map[string]Report{"sample": sampleReport(), "broken": sampleBroken(), "empty": {Version: "0"}, "odd": odd} {
		t.Run(name, func(t *testing.T) {
			var text bytes.Buffer
			if err := SARIF(&text, r); err != nil {
				t.Fatal(err)
			}
			checkSARIF(t, text.Bytes())
		})
	}
}

// RFC 3986: blanks and other characters are percent-encoded, a colon in the first segment
// of a relative reference needs a leading "./".
func TestArtifact(t *testing.T) {
	for file, want := range map[string]string{
		"jobs/a.yaml":    "jobs/a.yaml",
		"a b/ö#1.yaml":   "a%20b/%C3%B6%231.yaml",
		"a:b.yaml":       "./a:b.yaml",
		"/shop/a b.yaml": "file:///shop/a%20b.yaml",
		"C:/shop/a.yaml": "file:///C:/shop/a.yaml",
	} {
		if got := artifact(file).URI; got != want {
			t.Errorf("artifact(%q) = %q, want %q", file, got, want)
		}
	}
}

func TestFingerprintStaysWhenLinesMove(t *testing.T) {
	f := sampleFindings()[1]
	moved := f
	moved.At.Line, moved.Detail = 99, "other volts"
	if fingerprint(f) != fingerprint(moved) {
		t.Error("a finding that moved down is a new one")
	}
	for name, other := range map[string]diag.Finding{
		"rule":     {Rule: "other", At: f.At, Subjects: f.Subjects},
		"subjects": {Rule: f.Rule, At: f.At, Subjects: []string{"W10"}},
		"file":     {Rule: f.Rule, At: diag.Span{File: "other.yaml"}, Subjects: f.Subjects},
	} {
		if fingerprint(f) == fingerprint(other) {
			t.Errorf("a finding with another %s has the same fingerprint", name)
		}
	}
}
