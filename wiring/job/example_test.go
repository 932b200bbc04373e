package job_test

import (
	"fmt"
	"testing/fstest"

	"github.com/lugwright/lugwright/wiring/job"
)

// A job that stands on nothing: two parts and two wires.
func ExampleLoad() {
	files := fstest.MapFS{"job.yaml": {Data: []byte(`job: T-1
parts:
  A1: {kind: fuse-block, fuses: {1: 10 A}}
  E1: {kind: lamp, title: head lamp}
wires:
  W1: {from: A1.1, to: E1.+, colour: orange with black, size: 16 AWG, length: 4 ft}
  W2: {from: E1.-, to: A1.n, colour: BK, size: 16 AWG, lenght: 4 ft}
`)}}
	h, findings, err := job.Load("job.yaml", job.Options{FS: files})
	fmt.Println(h != nil, err)
	for _, f := range findings {
		fmt.Printf("%s:%d:%d: %s\n", f.At.File, f.At.Line, f.At.Col, f.Message)
	}
	// Output:
	// false <nil>
	// job.yaml:7:56: unknown key lenght in wire W2: did you mean length?
}
