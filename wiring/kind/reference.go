package kind

import (
	"fmt"
	"strings"
)

// Reference is the written reference of kind files in Markdown, made from the tables that
// the reader itself uses.
func Reference() string {
	var b strings.Builder
	b.WriteString("## Kinds\n\n" +
		"A kind file describes one sort of device. Its header is `kind: NAME`, the name of the file. " +
		"A layer may hold kinds too, under `kinds: {NAME: {…}}`.\n\n")
	writeKeys(&b, kindKeys)
	b.WriteString("\n### Ratings\n\n" +
		"A rating is a parameter of the kind: a part writes it as a key of its own. Inside, a word in place of a " +
		"quantity is a rating's name, and the rating must then be what stands there. Nothing is ever zero, but for " +
		"what is drawn while idle or in standby. A rating may not be called like a key that every part has: `" +
		strings.Join(PartKeys, "`, `") + "`.\n")
	b.WriteString("\n### Terminals\n\n" +
		"`NAME: {form: …}`. A range such as `1..channels` or `a1..pins` makes one a number up to that rating.\n\n")
	writeKeys(&b, terminalKeys)
	b.WriteString("\n### Elements\n\n" +
		"Each entry of `inside` is `TYPE: {parameters}`. A name in them is a terminal, a pole (`ac.L`, or `L` where one " +
		"port has it), a hidden node, or `frame`. Every element may have a `name`; the default is its type, from the " +
		"second on with a number. An element that mentions a range is repeated, ranges in step, and a map rating is " +
		"looked up by the number: `fuse: {between: [+, 1..channels], rating: fuses}` makes `fuse1`, `fuse2`…\n\n" +
		"Parameters marked *rule* are read by rules, not by the solver.\n")
	for _, t := range elementTypes {
		t.write(&b)
	}
	b.WriteString("\n### Conditions\n\n" +
		"`when` is a name, or one of `{all: […]}`, `{any: […]}`, `{not: …}`, nested, or `{CONTROL: POSITION}`. " +
		"A name is a sense (true), a coil (energised), a driver (closed), a converter or charger (running) of the same " +
		"part. A module without supply must say so itself: give it a sense of its own supply and put that into `all`.\n")
	return b.String()
}

func writeKeys(b *strings.Builder, keys []documented) {
	b.WriteString("| key | what it says |\n|---|---|\n")
	for _, k := range keys {
		fmt.Fprintf(b, "| `%s` | %s |\n", k.name, k.doc)
	}
}

func (t *elementType) write(b *strings.Builder) {
	fmt.Fprintf(b, "\n#### %s\n\n%s\n\n| parameter | is | default | what it says |\n|---|---|---|---|\n", t.name, t.doc)
	for i := range t.params {
		p := &t.params[i]
		fmt.Fprintf(b, "| `%s` | %s | %s | %s |\n", p.name, p.shapeText(), p.defaultText(), p.docText())
	}
}

// shapeText says how a parameter is written.
func (p *param) shapeText() string {
	switch p.shape {
	case oneNode:
		return "terminal"
	case twoNodes:
		return "`[a, b]`"
	case someNodes:
		return "`[a, b, …]`"
	case someWays:
		return "`{POSITION: [a, b]}`"
	case aCondition:
		return "condition"
	case aControl:
		return "control"
	case aReference:
		return "element"
	case aWord:
		if len(p.words) > 0 {
			return "`" + strings.Join(p.words, "`, `") + "`"
		}
	}
	u := p.use()
	if example := u.example(); example != "" && p.shape != aTruth {
		return u.String() + ": `" + example + "`"
	}
	return u.String()
}

func (p *param) defaultText() string {
	if p.need {
		return "needed"
	}
	return p.def
}

func (p *param) docText() string {
	if p.rule {
		return p.doc + " *(rule)*"
	}
	return p.doc
}
