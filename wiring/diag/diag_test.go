package diag

import (
	"testing"

	"github.com/google/go-cmp/cmp"
)

func TestSortGivesOneListing(t *testing.T) {
	at := func(file string, line, col int) Span { return Span{File: file, Line: line, Col: col, EndCol: col + 1} }
	got := []Finding{
		{Message: "f", At: at("b.yaml", 1, 1)},
		{Message: "d", At: at("a.yaml", 2, 9), Level: Warning},
		{Message: "c", At: at("a.yaml", 2, 9), Level: Error},
		{Message: "b", At: at("a.yaml", 2, 3)},
		{Message: "e", At: at("a.yaml", 10, 1)},
		{Message: "a"},
	}
	Sort(got)
	var order string
	for _, f := range got {
		order += f.Message
	}
	if order != "abcdef" {
		t.Errorf("order is %s", order)
	}
}

func TestWorstLeavesOutWhatIsWaived(t *testing.T) {
	fs := []Finding{{Level: Note}, {Level: Error, Waived: &Waiver{Reason: "known"}}, {Level: Warning}}
	if got := Worst(fs); got != Warning {
		t.Errorf("worst is %v", got)
	}
	if got := Worst(nil); got != 0 {
		t.Errorf("worst of nothing is %v", got)
	}
}

func TestFilesGiveLinesWithoutTheirEnds(t *testing.T) {
	var f Files
	f.Add("crlf.yaml", []byte("a\r\nb\r\n"))
	f.Add("lf.yaml", []byte("c\nd"))
	type line struct {
		Text string
		OK   bool
	}
	get := func(name string, n int) line {
		text, ok := f.Line(name, n)
		return line{text, ok}
	}
	got := []line{get("crlf.yaml", 2), get("lf.yaml", 2), get("lf.yaml", 3), get("lf.yaml", 0), get("other.yaml", 1)}
	want := []line{{"b", true}, {"d", true}, {}, {}, {}}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}
