package sheets

import (
	"fmt"
	"path"

	"github.com/lugwright/lugwright/render/ink"
	"github.com/lugwright/lugwright/render/sheet"
	"github.com/lugwright/lugwright/render/sheet/flow"
	"github.com/lugwright/lugwright/wiring/rule"
)

// NotChecked is what no rule could judge, so that silence never looks like a pass.
func NotChecked() *sheet.Kind {
	return &sheet.Kind{
		ID:    "not-checked",
		Title: "not checked",
		About: "what no rule could judge, and for want of what",
		Plan:  planNotChecked,
	}
}

func planNotChecked(b *sheet.Book, r sheet.Room) ([]sheet.Page, error) {
	if len(b.NotChecked) == 0 {
		return nil, nil // the cover says so
	}
	f := flow.New(r.Width)
	f.Paragraph("These were not judged. State what is missing, or look at them yourself: silence is no pass.", ink.Bold)
	f.Space(2)
	f.Table(notCheckedTable(b.NotChecked))
	return paged(f, r, 1), nil
}

func notCheckedTable(all []rule.NotChecked) flow.Table {
	t := flow.Table{Columns: []flow.Column{
		{Head: "What", Face: ink.Bold, Lines: 2},
		{Head: "Why", Lines: 3},
		{Head: "Rule", Lines: 2},
		{Head: "Written at", Lines: 2},
		{Head: "Looked at", Least: 24, Most: 24},
	}}
	for _, n := range all {
		at := ""
		if n.At.Known() {
			at = fmt.Sprintf("%s:%d", path.Base(n.At.File), n.At.Line) // the folders are the same for all
		}
		t.Rows = append(t.Rows, flow.Row{Cells: []flow.Cell{flow.Text(n.What), flow.Text(n.Why), flow.Text(n.Rule), flow.Text(at), tick()}})
	}
	return t
}
