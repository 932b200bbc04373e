package main

import (
	"context"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"github.com/lugwright/lugwright/render/report"
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/catalog"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/job"
	"github.com/lugwright/lugwright/wiring/rule"
	"github.com/lugwright/lugwright/wiring/rules"
	"github.com/lugwright/lugwright/wiring/source"
)

// load reads a job. What goes wrong on the way, a missing file included, is a finding of
// the job that is returned; the harness is nil if it cannot be used.
func (c *call) load(file, root string) (*wiring.Harness, report.Job) {
	found := report.Job{File: filepath.ToSlash(file)}
	h, about, err := job.Load(file, job.Options{FS: c.files, Root: root})
	if err != nil {
		about = append(about, source.Fault(diag.Span{File: found.File}, openFault(found.File, err)))
	}
	found.Findings = about
	if h == nil {
		found.Unusable = true
		found.Files = c.reread(about)
		return nil, found
	}
	found.Number, found.Title, found.Files = h.Identity.Number, h.Identity.Title, h.Files
	return h, found
}

// openFault says why a file cannot be read, without naming the file again.
func openFault(file string, err error) string {
	words := strings.TrimPrefix(err.Error(), "job: ")
	words = strings.TrimPrefix(words, file)
	return strings.TrimLeft(words, ": ")
}

// judge reads a job and runs every rule over it.
func (c *call) judge(file, root string) (*wiring.Harness, report.Job) {
	h, found := c.load(file, root)
	if h == nil {
		return nil, found
	}
	// The only error is that of a context that ends, which this one does not.
	result, _ := rule.Run(context.Background(), h, rules.All(), rule.Options{})
	found.Findings = append(found.Findings, result.Findings...)
	diag.Sort(found.Findings)
	found.NotChecked = result.NotChecked
	return h, found
}

// reread gets the text of the files that findings speak of, so that their lines can be
// quoted although there is no harness to keep them. What cannot be read is not quoted.
func (c *call) reread(findings []diag.Finding) *diag.Files {
	var files diag.Files
	catalog.AddTo(&files)
	done := map[string]bool{}
	for _, name := range files.Names() {
		done[name] = true
	}
	for _, f := range findings {
		if name := f.At.File; f.At.Known() && !done[name] {
			done[name] = true
			if text, err := c.read(name); err == nil {
				files.Add(name, text)
			}
		}
	}
	return &files
}

// read reads a file by the name that findings use.
func (c *call) read(name string) ([]byte, error) {
	if c.files != nil {
		return fs.ReadFile(c.files, name)
	}
	return os.ReadFile(filepath.FromSlash(name))
}
