package proof

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"io"
	"strings"

	"github.com/lugwright/lugwright/render/ink"
)

// Read reads an SVG that package svg has written of a schematic. Marks outside of its
// groups, such as those of the frame, are left alone.
func Read(svg []byte) (*Drawing, error) {
	r := &reader{d: &Drawing{}, strokes: map[string][]stroke{}}
	dec := xml.NewDecoder(bytes.NewReader(svg))
	for {
		tok, err := dec.Token()
		if err == io.EOF {
			break
		}
		if err != nil {
			return nil, fmt.Errorf("proof: %w", err)
		}
		if err := r.token(tok); err != nil {
			return nil, fmt.Errorf("proof: %w", err)
		}
	}
	r.finish()
	return r.d, nil
}

// group is an open group.
type group struct {
	class, name string
	leader      []ink.Point
	first       int // texts before it
}

// stroke is a path of a wire or bar.
type stroke struct {
	runs  [][]ink.Point
	width float64
}

type reader struct {
	d       *Drawing
	stack   []group
	strokes map[string][]stroke // by class and name
	order   []string
	marks   []mark
	text    *textStart
	body    strings.Builder
}

// mark is a path of a symbol.
type mark struct {
	part   string
	runs   [][]ink.Point
	sleeve bool
}

func (r *reader) token(tok xml.Token) error {
	switch t := tok.(type) {
	case xml.StartElement:
		return r.start(t)
	case xml.CharData:
		if r.text != nil {
			r.body.Write(t)
		}
	case xml.EndElement:
		r.end(t.Name.Local)
	}
	return nil
}

func (r *reader) start(t xml.StartElement) error {
	a := attrs(t)
	switch t.Name.Local {
	case "svg":
		var w, h float64
		if _, err := fmt.Sscanf(a["viewBox"], "0 0 %g %g", &w, &h); err != nil {
			return fmt.Errorf("viewBox %q: %w", a["viewBox"], err)
		}
		r.d.Page = ink.Rect{Max: ink.Point{X: w, Y: h}}
	case "g":
		r.stack = append(r.stack, group{class: a["class"], name: a["data-name"], first: len(r.d.Texts)})
	case "path":
		return r.path(a)
	case "text":
		start, err := readText(a)
		if err != nil {
			return err
		}
		r.text = start
		r.body.Reset()
	}
	return nil
}

func attrs(t xml.StartElement) map[string]string {
	m := make(map[string]string, len(t.Attr))
	for _, a := range t.Attr {
		m[a.Name.Local] = a.Value
	}
	return m
}

func (r *reader) end(name string) {
	switch name {
	case "g":
		r.closeGroup()
	case "text":
		if g := r.inside("label", "name", "part", "flag"); r.text != nil && g != nil {
			r.d.Texts = append(r.d.Texts, r.text.finish(r.body.String(), g))
		}
		r.text = nil
	}
}

// closeGroup gives the texts of a label its leader.
func (r *reader) closeGroup() {
	if len(r.stack) == 0 {
		return
	}
	g := r.stack[len(r.stack)-1]
	r.stack = r.stack[:len(r.stack)-1]
	if g.class == "label" && g.leader != nil {
		for i := g.first; i < len(r.d.Texts); i++ {
			r.d.Texts[i].Leader = g.leader
		}
	}
}

// inside returns the innermost open group of one of some classes.
func (r *reader) inside(classes ...string) *group {
	for i := len(r.stack) - 1; i >= 0; i-- {
		for _, c := range classes {
			if r.stack[i].class == c {
				return &r.stack[i]
			}
		}
	}
	return nil
}

// path files a path under the group in which it stands.
func (r *reader) path(a map[string]string) error {
	g := r.inside("wire", "metal", "rail", "joints", "part", "flag", "pin", "enclosure", "label", "sleeve")
	if g == nil {
		return nil
	}
	runs, err := readPath(a["d"])
	if err != nil {
		return err
	}
	switch g.class {
	case "wire", "metal", "rail":
		return r.conductor(g, runs, a)
	case "joints":
		for _, run := range runs {
			r.d.Dots = append(r.d.Dots, centre(run))
		}
	case "part", "flag", "sleeve":
		r.marks = append(r.marks, mark{part: r.partName(), runs: runs, sleeve: g.class == "sleeve"})
	case "pin":
		r.d.Pins = append(r.d.Pins, Pin{Part: r.partName(), Name: g.name, At: runs[0][0]})
	case "enclosure":
		r.d.Boxes = append(r.d.Boxes, Ink{Part: g.name, Box: hull(runs)})
	case "label":
		if len(runs) == 1 && len(runs[0]) == 2 && a["fill"] == "" {
			g.leader = runs[0]
		}
	}
	return nil
}

func (r *reader) partName() string {
	if g := r.inside("part", "flag", "wire"); g != nil {
		return g.name
	}
	return ""
}

func (r *reader) conductor(g *group, runs [][]ink.Point, a map[string]string) error {
	width := 0.0
	if a["stroke-width"] != "" {
		if _, err := fmt.Sscanf(a["stroke-width"], "%g", &width); err != nil {
			return fmt.Errorf("stroke-width %q: %w", a["stroke-width"], err)
		}
	}
	key := g.class + "\x00" + g.name
	if r.strokes[key] == nil {
		r.order = append(r.order, key)
	}
	r.strokes[key] = append(r.strokes[key], stroke{runs, width})
	return nil
}

// finish puts the strokes of each conductor together and tells the strokes to the pins
// from the bodies of the symbols.
func (r *reader) finish() {
	for _, key := range r.order {
		class, name, _ := strings.Cut(key, "\x00")
		w := assemble(name, r.strokes[key])
		switch class {
		case "wire":
			r.d.Wires = append(r.d.Wires, w)
		case "metal":
			r.d.Metal = append(r.d.Metal, w)
		case "rail":
			r.d.Bars = append(r.d.Bars, w)
		}
	}
	at := map[string][]ink.Point{}
	for _, p := range r.d.Pins {
		at[p.Part] = append(at[p.Part], p.At)
	}
	for _, m := range r.marks {
		for _, run := range m.runs {
			if box, ok := bodyOf(run, at[m.part]); ok {
				r.d.Inks = append(r.d.Inks, Ink{Part: m.part, Box: box, Sleeve: m.sleeve})
			}
		}
	}
	r.d.Area = area(r.d)
}
