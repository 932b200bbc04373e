package render

import (
	"bytes"
	"context"
	"encoding/xml"
	"errors"
	"io"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"github.com/lugwright/lugwright/render/report"
	"github.com/lugwright/lugwright/render/sheet/frame"
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/job"
	"github.com/lugwright/lugwright/wiring/rule"
	"github.com/lugwright/lugwright/wiring/rules"
)

// kept is a folder in memory.
type kept struct {
	names []string
	files map[string][]byte
}

func (k *kept) Put(name string, content []byte) error {
	if k.files == nil {
		k.files = map[string][]byte{}
	}
	k.names = append(k.names, name)
	k.files[name] = content
	return nil
}

// judged reads one of the shipped examples and runs every rule over it.
func judged(t *testing.T, name string) (*wiring.Harness, report.Job) {
	t.Helper()
	h, found, err := job.Load(name, job.Options{FS: os.DirFS("../examples/tern-point")})
	if err != nil || h == nil {
		t.Fatalf("%v %v", err, found)
	}
	result, err := rule.Run(context.Background(), h, rules.All(), rule.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return h, report.Job{
		File:       name,
		Number:     h.Identity.Number,
		Findings:   append(found, result.Findings...),
		NotChecked: result.NotChecked,
		Files:      h.Files,
	}
}

// words returns all text of an XML document, one line a text; it fails for a document that
// is not well-formed.
func words(t *testing.T, document []byte) []string {
	t.Helper()
	var all []string
	for d := xml.NewDecoder(bytes.NewReader(document)); ; {
		token, err := d.Token()
		if err == io.EOF {
			return all
		}
		if err != nil {
			t.Fatal(err)
		}
		if data, ok := token.(xml.CharData); ok && strings.TrimSpace(string(data)) != "" {
			all = append(all, string(data))
		}
	}
}

func TestPacket(t *testing.T) {
	h, found := judged(t, "jobs/tern-point-14.yaml")
	found.Findings = append(found.Findings,
		diag.Finding{Rule: "made-up", Level: diag.Warning, Message: "a warning that is open"},
		diag.Finding{Rule: "made-up", Level: diag.Error, Message: "an error that is open"},
		diag.Finding{Rule: "made-up", Level: diag.Error, Message: "a waived one", Waived: &diag.Waiver{Reason: "the reason why", By: "RA"}},
	)
	var first, second kept
	d, err := Packet(t.Context(), h, found, &first, Options{Sheets: []string{"schematic"}})
	if err != nil {
		t.Fatal(err)
	}
	var want []string
	for _, one := range d.Sheets {
		name := d.FileName(one, "svg")
		want = append(want, name)
		said := strings.Join(words(t, first.files[name]), "\n")
		for _, want := range []string{
			"TP-14", "Quay Lane Carts", "R. Ames", "2026-03-02", "circuit diagram", "OPEN", "WAIVED",
			"error: an error that is open (made-up)", "warning: a warning that is open (made-up)",
			"a waived one: the reason why (RA)", "WARNING", "Arc and burns",
		} {
			if !strings.Contains(said, want) {
				t.Errorf("%s does not say %q", name, want)
			}
		}
	}
	want = append(want, "TP-14-findings.txt")
	if diff := cmp.Diff(want, first.names); diff != "" {
		t.Errorf("files (-want +got):\n%s", diff)
	}
	for _, name := range first.names {
		if !Stamped(first.files[name]) {
			t.Errorf("%s is not recognised as our own", name)
		}
	}

	if _, err := Packet(t.Context(), h, found, &second, Options{Sheets: []string{"schematic"}}); err != nil {
		t.Fatal(err)
	}
	for _, name := range first.names {
		if !bytes.Equal(first.files[name], second.files[name]) {
			t.Errorf("%s differs when it is drawn again", name)
		}
	}
}

func TestPacketSheets(t *testing.T) {
	h, found := judged(t, "jobs/tern-point-14.yaml")
	var files kept
	d, err := Packet(t.Context(), h, found, &files, Options{Sheets: []string{"wire-list"}})
	if err != nil {
		t.Fatal(err)
	}
	var want []string
	for _, s := range d.Sheets {
		want = append(want, d.FileName(s, "svg"))
	}
	if want = append(want, "TP-14-findings.txt"); !slices.Equal(files.names, want) {
		t.Errorf("the wire list alone is %v, want %v", files.names, want)
	}
	var fault *SheetError
	if _, err = Packet(t.Context(), h, found, &files, Options{Sheets: []string{"wire-list", "99"}}); !errors.As(err, &fault) || fault.Asked != "99" {
		t.Errorf("error %v, want one about sheet 99", err)
	}
}

func TestPacketOnEveryPaper(t *testing.T) {
	h, found := judged(t, "jobs/tern-point-shuttle-3.yaml")
	for _, paper := range frame.Papers() {
		var files kept
		if _, err := Packet(t.Context(), h, found, &files, Options{Paper: paper, Sheets: []string{"wire-list"}}); err != nil {
			t.Fatal(err)
		}
		if !slices.Contains(words(t, files.files[files.names[0]]), paper.Name) {
			t.Errorf("%s does not name its paper", paper.Name)
		}
	}
}

// refusing is a folder that takes nothing.
type refusing struct{}

func (refusing) Put(string, []byte) error { return io.ErrShortWrite }

func TestPacketReturnsTheErrorOfFiles(t *testing.T) {
	h, found := judged(t, "jobs/tern-point-14.yaml")
	if _, err := Packet(t.Context(), h, found, refusing{}, Options{Sheets: []string{"wire-list"}}); !errors.Is(err, io.ErrShortWrite) {
		t.Errorf("error %v, want that of the folder", err)
	}
}
