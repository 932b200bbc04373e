package render_test

import (
	"context"
	"fmt"
	"log"

	"github.com/lugwright/lugwright/render"
	"github.com/lugwright/lugwright/render/report"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/job"
	"github.com/lugwright/lugwright/wiring/rule"
	"github.com/lugwright/lugwright/wiring/rules"
)

// memory keeps files by name.
type memory map[string][]byte

func (m memory) Put(name string, content []byte) error { m[name] = content; return nil }

// How does a program of mine check a job and draw it?
func ExamplePacket() {
	h, _, err := job.Load("../examples/tern-point/jobs/tern-point-14.yaml", job.Options{})
	if err != nil || h == nil {
		log.Fatal("the job cannot be read: ", err)
	}
	result, err := rule.Run(context.Background(), h, rules.All(), rule.Options{})
	if err != nil {
		log.Fatal(err)
	}
	files := memory{}
	found := report.Job{Number: h.Identity.Number, Findings: result.Findings, NotChecked: result.NotChecked}
	d, err := render.Packet(context.Background(), h, found, files, render.Options{Sheets: []string{"wire-list"}})
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println("errors:", len(result.Open(diag.Error)))
	fmt.Println("every sheet is a file:", len(files) == len(d.Sheets)+1) // and one is the list of findings
	// Output:
	// errors: 0
	// every sheet is a file: true
}
