package kind

import (
	"fmt"
	"strings"
)

// Reference is the written reference of kind files in Markdown, made from the tables that
// the reader itself uses.
func Reference() string {
	var b strings.Builder
	b.WriteString("## Kinds\n\nA kind file describes one sort of device. Its header is `kind: NAME`, the name of the file.\n\n")
	b.WriteString("| key | what it says |\n|---|---|\n")
	for _, k := range kindKeys {
		fmt.Fprintf(&b, "| `%s` | %s |\n", k.name, k.doc)
	}
	b.WriteString("\n### Terminals\n\n`NAME: {form: …}`; a range such as `1..channels` makes one a number up to that rating.\n\n")
	b.WriteString("| key | what it says |\n|---|---|\n")
	for _, k := range terminalKeys {
		fmt.Fprintf(&b, "| `%s` | %s |\n", k.name, k.doc)
	}
	b.WriteString("\n### Elements\n\nEach entry of `inside` is `TYPE: {parameters}`. A word in place of a quantity is a rating's name. " +
		"Every element may have a `name`; the default is its type, from the second on with a number. " +
		"Parameters marked *rule* are read by rules, not by the solver.\n")
	for _, t := range elementTypes {
		fmt.Fprintf(&b, "\n#### %s\n\n%s\n\n| parameter | default | what it says |\n|---|---|---|\n", t.name, t.doc)
		for _, p := range t.params {
			fmt.Fprintf(&b, "| `%s` | %s | %s |\n", p.name, p.defaultText(), p.docText())
		}
	}
	b.WriteString("\n### Conditions\n\n`when` is a name, `{all: […]}`, `{any: […]}`, `{not: …}`, nested, or `{CONTROL: POSITION}`. " +
		"A name is a sense (true), a coil (energised), a driver (closed), a converter or charger (running) of the same part.\n")
	return b.String()
}

func (p *param) defaultText() string {
	switch {
	case p.need:
		return "needed"
	case p.def == "":
		return ""
	}
	return strings.ReplaceAll(p.def, "|", "\\|")
}

func (p *param) docText() string {
	doc := p.doc
	if len(p.words) > 0 {
		doc += ": `" + strings.Join(p.words, "`, `") + "`"
	}
	if p.rule {
		doc += " *(rule)*"
	}
	return doc
}
