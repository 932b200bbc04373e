package kind

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/source"
)

// FuzzKind reads any text as a kind and builds a part of it, with what another text says
// of the part. Nothing panics, and what is built holds together.
func FuzzKind(f *testing.F) {
	files, err := filepath.Glob("testdata/kinds/*.yaml")
	if err != nil || len(files) == 0 {
		f.Fatalf("no kinds to begin with: %v", err)
	}
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(string(text), "{channels: 3, fuses: {1: 10 A, 2..3: auto}, leads: {in: {colour: RD}}}")
		f.Add(string(text), "{}")
	}
	f.Fuzz(func(t *testing.T, kindText, partText string) {
		root, _ := source.Parse("k", []byte(kindText))
		self := func(string) (*Definition, bool) { return nil, false }
		d, findings := Read(root, self)
		checkFindings(t, findings)
		if d == nil {
			if len(findings) == 0 {
				t.Fatal("neither kind nor finding")
			}
			return
		}
		// a copy of the kind is a kind
		copied, findings := Read(mustTree(t, "kind: copy\nlike: other\n"), func(string) (*Definition, bool) { return d, true })
		checkFindings(t, findings)

		part, _ := source.Parse("p", []byte(partText))
		var g Given
		if part != nil {
			for _, e := range part.Entries {
				if e.Key.Text == "leads" {
					g.SetLeads(e.Value)
					continue
				}
				g.Set(e.Key, e.Value)
			}
		}
		for _, d := range []*Definition{d, copied} {
			if big(d, g) {
				continue
			}
			h := &wiring.Harness{}
			p := &wiring.Part{Designation: "X1", At: diag.Span{File: "p", Line: 1, Col: 1, EndCol: 1}}
			checkFindings(t, d.Build(h, p, g))
			checkPart(t, h, p)
		}
	})
}

// big reports whether a part would have more terminals than a fuzzer has patience for.
func big(d *Definition, g Given) bool {
	for _, e := range g.ratings {
		if len(e.Value.Text) > 3 && d.uses[e.Key.Text].shape == aCount {
			return true
		}
	}
	return false
}

func mustTree(t *testing.T, text string) *source.Node {
	root, findings := source.Parse("k", []byte(text))
	if root == nil {
		t.Fatal(findings)
	}
	return root
}

func checkFindings(t *testing.T, findings []diag.Finding) {
	for _, f := range findings {
		if f.Message == "" || f.Rule != source.RuleInput {
			t.Fatalf("finding %+v", f)
		}
	}
}

// checkPart holds a part to what the solver and the drawings rely on.
func checkPart(t *testing.T, h *wiring.Harness, p *wiring.Part) {
	nodes := wiring.NodeID(len(h.Nodes))
	if nodes == 0 || h.Nodes[0].Part != nil || p.Kind == nil {
		t.Fatal("no frame, or no kind")
	}
	names := map[string]bool{}
	there := map[wiring.Element]bool{}
	for _, e := range p.Elements {
		if names[e.Base().Name] || e.Base().Part != p {
			t.Fatalf("element %s twice, or of another part", e.Base().Name)
		}
		names[e.Base().Name], there[e] = true, true
	}
	for _, term := range p.Terminals {
		if term.Holds < 1 || term.Node >= nodes || (term.Node < 0) != (term.Form.Type == wiring.Port) || (term.Lead != nil) != (term.Form.Type == wiring.Lead) {
			t.Fatalf("terminal %+v", term)
		}
	}
	for _, e := range p.Elements {
		for _, n := range nodesOf(e) {
			if n < 0 || n >= nodes {
				t.Fatalf("%s is at node %d of %d", e.Base().Name, n, nodes)
			}
		}
		if c := conditionOf(e); c != nil {
			checkBuiltCondition(t, c, there)
		}
		if ohms, has := ohmsOf(e); has && !(ohms > 0) {
			t.Fatalf("%s has %v ohm", e.Base().Name, ohms)
		}
		if c, ok := e.(*wiring.Contact); ok && !there[c.Coil] {
			t.Fatalf("%s has no coil", e.Base().Name)
		}
		if s, ok := e.(*wiring.Switch); ok && s.Control == nil {
			t.Fatalf("%s has no control", e.Base().Name)
		}
	}
}

func checkBuiltCondition(t *testing.T, c *wiring.Condition, there map[wiring.Element]bool) {
	switch c.Op {
	case wiring.Holds:
		if !there[c.Element] {
			t.Fatal("a condition names an element that is not there")
		}
	case wiring.Set:
		if c.Control == nil {
			t.Fatal("a condition names no control")
		}
	case wiring.All, wiring.Any, wiring.Not:
		if len(c.Of) == 0 {
			t.Fatal("an operator of nothing")
		}
		for _, sub := range c.Of {
			checkBuiltCondition(t, sub, there)
		}
	default:
		t.Fatalf("operator %d", c.Op)
	}
}

func nodesOf(e wiring.Element) []wiring.NodeID {
	switch e := e.(type) {
	case *wiring.Resistor:
		return []wiring.NodeID{e.A, e.B}
	case *wiring.Link:
		return e.Join
	case *wiring.Fuse:
		return []wiring.NodeID{e.A, e.B}
	case *wiring.Switch:
		var all []wiring.NodeID
		for _, groups := range e.Closes {
			for _, g := range groups {
				all = append(all, g...)
			}
		}
		return all
	case *wiring.Coil:
		return []wiring.NodeID{e.A, e.B}
	case *wiring.Contact:
		return []wiring.NodeID{e.A, e.B}
	case *wiring.Diode:
		return []wiring.NodeID{e.A, e.B}
	case *wiring.Capacitor:
		return []wiring.NodeID{e.A, e.B}
	case *wiring.Source:
		return []wiring.NodeID{e.A, e.B}
	case *wiring.Mains:
		return []wiring.NodeID{e.L, e.N}
	case *wiring.Charger:
		return []wiring.NodeID{e.A, e.B}
	case *wiring.Converter:
		return []wiring.NodeID{e.InA, e.InB, e.OutA, e.OutB}
	case *wiring.Load:
		return []wiring.NodeID{e.A, e.B}
	case *wiring.Sense:
		return []wiring.NodeID{e.At, e.To}
	case *wiring.Driver:
		return []wiring.NodeID{e.A, e.B}
	}
	return []wiring.NodeID{wiring.NoNode}
}

func conditionOf(e wiring.Element) *wiring.Condition {
	switch e := e.(type) {
	case *wiring.Source:
		return e.When
	case *wiring.Mains:
		return e.When
	case *wiring.Charger:
		return e.When
	case *wiring.Converter:
		return e.When
	case *wiring.Load:
		return e.When
	case *wiring.Driver:
		return e.When
	}
	return nil
}

func ohmsOf(e wiring.Element) (float64, bool) {
	switch e := e.(type) {
	case *wiring.Resistor:
		return float64(e.Ohms), true
	case *wiring.Switch:
		return float64(e.Ohms), true
	case *wiring.Coil:
		return float64(e.Ohms), true
	case *wiring.Contact:
		return float64(e.Ohms), true
	case *wiring.Diode:
		return float64(e.Ohms), true
	case *wiring.Source:
		return float64(e.Ohms), true
	case *wiring.Driver:
		return float64(e.Ohms), true
	case *wiring.Fuse:
		return float64(e.Ohms), e.Fitted && !e.Auto
	}
	return 0, false
}
