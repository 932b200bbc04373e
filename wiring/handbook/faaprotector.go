package handbook

import (
	"github.com/lugwright/lugwright/wiring/quantity"
)

type faaProtectorRow struct {
	size          quantity.Size
	breaker, fuse quantity.Ampere // breaker 0: none printed
}

var faaProtectorDefinition = table{
	name:    "faa_protector",
	about:   "aircraft practice: largest breaker and fuse for a wire in a hot bundle",
	columns: []string{"awg", "breaker_A", "fuse_A"},
	load: func(t *Tables, s *sheet) {
		t.faaProtector = nil
		for _, r := range s.rows {
			t.faaProtector = append(t.faaProtector, faaProtectorRow{
				r.gauge("awg"), quantity.Ampere(r.optional("breaker_A")), quantity.Ampere(r.positive("fuse_A")),
			})
		}
	},
}

// FAAProtector returns the largest breaker (0: none printed) and fuse for copper wire in
// bundles in hot bays, and whether the table has the size.
//
// Source: AC 43.13-1B Table 11-3; read.
func (t *Tables) FAAProtector(size quantity.Size) (breaker, fuse quantity.Ampere, ok bool) {
	for _, r := range t.faaProtector {
		if r.size == size {
			return r.breaker, r.fuse, true
		}
	}
	return 0, 0, false
}
