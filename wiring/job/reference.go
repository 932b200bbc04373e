package job

import (
	"fmt"
	"strings"

	"github.com/lugwright/lugwright/wiring/kind"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// section is one table of the reference.
type section struct {
	title string
	intro string
	keys  table
}

// sections are the tables of the reference, in its order.
func sections() []section {
	return []section{
		{"Keys of a layer", "They stand at the left margin, behind the header, and are best written in this order.", layerKeys},
		{"An entry of `use`", "A word, a path, or a map of these keys.", useKeys},
		{"A part", "`DESIGNATION: {kind: NAME, …}`. All other keys of a part are ratings of its kind.", partKeys},
		{"A wire", "`NUMBER: {from: END, to: END, …}`; a lead may be named by its terminal instead: `T2.memory: {to: capped}`. An END is a terminal, a point, or `capped`.", wireKeys},
		{"`extend`", "", extendKeys},
		{"A revision", "`INDEX: {…}`", revisionKeys},
		{"`interlock`", "", interlockKeys},
		{"A place", "`NAME: {…}`", placeKeys},
		{"A run", "`NAME: {…}`", runKeys},
		{"A loom", "`NAME: {…}`; wires name it.", loomKeys},
		{"A state", "`NAME: {…}`. All other keys of a state are controls with their positions: a control (of every part that has it), a part with one control, or `part.control`. Unsaid: at rest.", stateKeys},
		{"`limits`", "", limitKeys},
		{"`assume`", "", assumeKeys},
		{"A waiver", "", waiverKeys},
	}
}

// Reference is the written reference of the whole format, in Markdown: layers, wire lists,
// kinds. It follows from the tables that the files are read by.
func Reference() string {
	var b strings.Builder
	b.WriteString(referenceHead)
	b.WriteString(referenceQuantities)
	for _, d := range quantity.AllDimensions() {
		fmt.Fprintf(&b, "| %s | %s |\n", d, strings.Join(d.Units(), ", "))
	}
	b.WriteString(referenceNames)
	for _, s := range sections() {
		fmt.Fprintf(&b, "\n### %s\n\n", s.title)
		if s.intro != "" {
			b.WriteString(s.intro + "\n\n")
		}
		b.WriteString(s.keys.markdown())
	}
	fmt.Fprintf(&b, referenceLists, "`"+strings.Join(listColumns, "`, `")+"`")
	b.WriteString("\n" + kind.Reference())
	return b.String()
}

// markdown writes a table of keys.
func (t table) markdown() string {
	var b strings.Builder
	homes := false
	for _, k := range t {
		homes = homes || k.In != nil
	}
	head := "| key | value | what it says | example |\n|---|---|---|---|\n"
	if homes {
		head = "| key | in | value | what it says | example |\n|---|---|---|---|---|\n"
	}
	b.WriteString(head)
	for _, k := range t {
		b.WriteString("| `" + k.Name + "` ")
		if homes {
			b.WriteString("| " + k.homes() + " ")
		}
		example := ""
		if k.Example != "" {
			example = "`" + k.Example + "`"
		}
		fmt.Fprintf(&b, "| %s | %s | %s |\n", k.Shape, k.Doc, example)
	}
	return b.String()
}

// homes lists the sorts of layer that take the key, for a table.
func (k key) homes() string {
	if k.In == nil {
		return "all"
	}
	words := make([]string, len(k.In))
	for i, in := range k.In {
		words[i] = string(in)
	}
	return strings.Join(words, ", ")
}

const referenceHead = `# The file format

A job is a YAML file: one document, UTF-8. It stands on other files of the same grammar,
called layers; later ones override earlier ones. Every value is taken as it is written:
` + "`on`, `no`, `012` and `1.10`" + ` are text until a key says what it wants. Quantities carry their
units. Keys that begin with ` + "`x-`" + ` are the user's own and are ignored, anywhere.

This page is written by ` + "`go test ./wiring/job -run FORMAT -update`" + ` from the tables that the
files are read by.

## Layers

` + "`format: 1`" + ` may stand on top. The first key, the header, says what sort of file it is.

| header | value | holds |
|---|---|---|
| ` + "`job:`" + ` | identification number | this cart |
| ` + "`platform:`" + ` | title | a cart before the work: its parts and wires, places and runs, points, groups |
| ` + "`kit:`, `addon:`" + ` | title | what is sold as a set: parts, wires, what it removes and moves, the points that it needs |
| ` + "`shop:`" + ` | name | the shop's own values; a file named ` + "`shop.yaml`" + ` marks the root folder and is its lowest layer |
| ` + "`catalog:`" + ` | title | shared data, such as operating states |
| ` + "`kind:`" + ` | name | one sort of device, see below; no layer |

Within a layer this is the order of work: the layers that it uses; parts, merged key by
key; what it removes; what it moves, by the points of lower layers; its points; its wires;
the rest. Stacks and revisions are taken whole, maps key by key, waivers and test points
are added. A list replaces a list. The word ` + "`none`" + ` unsets a place, a loom, a fuse.

Names are found without regard to case. A range saves typing: ` + "`G11..G16`" + ` as a key, in a list
or as a value; ranges in one entry run in step: ` + "`W1..W5: {from: G11..G15.+, to: G12..G16.-}`" + `.
`

const referenceQuantities = `
## Quantities

` + "`[about] NUMBER [space] UNIT`" + `: 14, 2.5, 1/2, 1-1/8 and a unit; ` + "`about`" + ` marks an estimate. A length may have
two parts, ` + "`4 ft 6 in`" + `. Pairs are joined by ` + "`at`, `for` or `to`" + `: ` + "`10 A at 60 V`, `220 A for 30 s`, `10 to 15 V`" + `.
A conductor size is ` + "`14 AWG`, `2/0 AWG`, `35 mm2`, `250 kcmil` or `10 SAE`" + `. A wire's colour, size or
length may be ` + "`unknown`" + `, or be left out, which says the same; a size may be ` + "`auto`" + `. Colours are IEC 60757
codes, the base before the tracer: ` + "`BK/YE`" + `; English names are read too.

| quantity | units |
|---|---|
`

const referenceNames = `
## Names

| what | form | example |
|---|---|---|
| part | one to three letters (not beginning with W), digits, at most one letter | ` + "`G1`, `E1F`" + ` |
| wire | letters, digits, hyphens, at least one digit, at most 12 characters | ` + "`W37`, `12A`" + ` |
| terminal | part and terminal; another name of it, or its pin; the part alone where it has one terminal | ` + "`G1.+`, `U1.J1-7`, `X5`" + ` |
| point | small letters, digits, + and -, beginning with a letter | ` + "`pack+`" + ` |
| place, run, loom, group, state | any text, at most 80 characters | ` + "`seat box`" + ` |

## Keys
`

const referenceLists = `
### A wire list

A CSV file in ` + "`use`" + ` is a layer of wires. Its first line names the columns, in any order, any of
these but always ` + "`wire`" + `:
%s.
Case, underlines and hyphens in these names are forgiven. A heading in parentheses, such as
` + "`(amps)`" + `, is only for people. The separator is a comma, a semicolon or a tab; lines that begin
with ` + "`#`" + ` are skipped; an empty cell says nothing; a ` + "`'`" + ` at the beginning of a cell is dropped.
A wire that is extended by several pieces has them in one cell, parted by ` + "`+`" + `, outwards. Rows
follow the same rules as the wires of a layer, without ranges.
`
