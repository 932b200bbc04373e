package sheet

import (
	"context"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/figure"
	"github.com/lugwright/lugwright/wiring/handbook"
	"github.com/lugwright/lugwright/wiring/rule"
)

// Found is what the rules said of a cart.
type Found struct {
	Rules      []*rule.Rule      // that ran
	Findings   []diag.Finding    // sorted; waived ones are among them
	NotChecked []rule.NotChecked // what could not be judged
}

// Book is everything that is known about one cart. What has to be computed is computed by
// the packages of wiring when it is first asked for, and once. Many goroutines may read a
// book.
type Book struct {
	Harness  *wiring.Harness
	Handbook *handbook.Tables
	Cart     *figure.Cart // for the figures that take arguments
	Found

	// A book stands for the answers that it gives, so the context of their computing belongs
	// to it as it would to a call.
	ctx context.Context
	answers
}

// NewBook opens the book of a harness. The context is that of all that will be computed.
func NewBook(ctx context.Context, h *wiring.Harness, f Found) *Book {
	b := &Book{Harness: h, Handbook: handbook.Default(), Found: f, ctx: ctx}
	b.Cart = figure.New(h, b.Handbook)
	b.prepare()
	return b
}

// Context is that of everything that the book computes.
func (b *Book) Context() context.Context { return b.ctx }

// Open lists the findings that are not waived, at or above a level, in their order.
func (b *Book) Open(least diag.Level) []diag.Finding {
	var open []diag.Finding
	for _, f := range b.Findings {
		if f.Waived == nil && f.Level >= least {
			open = append(open, f)
		}
	}
	return open
}

// Waived lists what the job lives with.
func (b *Book) Waived() []diag.Finding {
	var waived []diag.Finding
	for _, f := range b.Findings {
		if f.Waived != nil {
			waived = append(waived, f)
		}
	}
	return waived
}
