package catalog

import (
	"testing"
	"time"
)

// The catalogue is read when it is first asked for, in every run of the program.
func TestLoadTime(t *testing.T) {
	start := time.Now()
	n := len(Names())
	took := time.Since(start)
	t.Logf("%d kinds in %v", n, took)
	if took > 3*time.Second { // generous: it is about 20 ms of processor time
		t.Errorf("took %v", took)
	}
}
