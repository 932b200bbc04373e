package source

import "testing"

func TestHeader(t *testing.T) {
	tests := []struct{ content, header, finding string }{
		{"job: TP-14\ntitle: x\n", "job", ""},
		{"format: 1\nkind: lamp\n", "kind", ""},
		{"format: 2\nkind: lamp\n", "kind", "this file asks for format 2, this program reads 1"},
		{"format: one\nkind: lamp\n", "kind", "format is a whole number, such as format: 1"},
		{"format: 0\n", "", "format is a whole number, such as format: 1"},
		{"x-mine: 1\nkit: y\n", "kit", ""},
	}
	for _, test := range tests {
		root, _ := Parse("f", []byte(test.content))
		e, findings := Header(root)
		header, finding := "", ""
		if e.Key != nil {
			header = e.Key.Text
		}
		if len(findings) > 0 {
			finding = findings[0].Message
		}
		if header != test.header || finding != test.finding {
			t.Errorf("%q: header %q, finding %q", test.content, header, finding)
		}
	}
	if e, findings := Header(nil); e.Key != nil || findings != nil {
		t.Errorf("of nothing: %v %v", e, findings)
	}
}
