package kind

import (
	"fmt"
	"strings"
	"testing"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/source"
)

// tree parses a text that is in order as YAML.
func tree(t testing.TB, text string) *source.Node {
	t.Helper()
	return treeOf(t, "k", text)
}

// lines writes findings as a person would read them.
func lines(findings []diag.Finding) []string {
	var out []string
	for _, f := range findings {
		s := fmt.Sprintf("%d:%d %s", f.At.Line, f.At.Col, f.Message)
		if f.Advice != "" {
			s += ". " + f.Advice
		}
		out = append(out, s)
	}
	return out
}

// mustRead reads a kind that is in order.
func mustRead(t testing.TB, text string) *Definition {
	t.Helper()
	d, findings := Read(tree(t, text), nil)
	if d == nil || len(findings) > 0 {
		t.Fatalf("%v", lines(findings))
	}
	return d
}

// given turns what a part says, as YAML, into a Given. Later texts are higher layers.
func given(t testing.TB, layers ...string) Given {
	t.Helper()
	var g Given
	for _, layer := range layers {
		if strings.TrimSpace(layer) == "" {
			continue
		}
		for _, e := range tree(t, layer).Entries {
			if e.Key.Text == "leads" {
				g.SetLeads(e.Value)
			} else {
				g.Set(e.Key, e.Value)
			}
		}
	}
	return g
}

// built makes a part X1 of a kind in a harness of its own.
func built(t testing.TB, d *Definition, layers ...string) (*wiring.Harness, *wiring.Part, []diag.Finding) {
	t.Helper()
	h := &wiring.Harness{}
	p := &wiring.Part{Designation: "X1", At: diag.Span{File: "job", Line: 9, Col: 3, EndCol: 5}}
	findings := d.Build(h, p, given(t, layers...))
	return h, p, findings
}

// sketch writes a part in lines: terminals with their nodes, controls, elements.
func sketch(h *wiring.Harness, p *wiring.Part) []string {
	var out []string
	for _, t := range p.Terminals {
		s := fmt.Sprintf("%s: %s %s, holds %d", t.Name, t.Form.Type, t.Form.Size, t.Holds)
		for _, pole := range t.Poles {
			s += " " + pole.Name + "=" + h.Nodes[pole.Node].Name
		}
		if t.Node != wiring.NoNode {
			s += " at " + h.Nodes[t.Node].Name
		}
		out = append(out, s)
	}
	for _, c := range p.Controls {
		out = append(out, fmt.Sprintf("control %s %v", c.Name, c.Positions))
	}
	for _, e := range p.Elements {
		out = append(out, e.Type()+" "+e.Base().Name)
	}
	return out
}

func treeOf(t testing.TB, file, text string) *source.Node {
	t.Helper()
	root, findings := source.Parse(file, []byte(text))
	if root == nil {
		t.Fatalf("no tree: %v", findings)
	}
	return root
}
