package job

import (
	"fmt"
	"io/fs"
	"path"
	"regexp"
	"strings"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/catalog"
	"github.com/lugwright/lugwright/wiring/source"
)

var suffixForm = regexp.MustCompile(`^[A-Za-z]$`)

// useAll visits what a layer uses, in its order.
func (g *gatherer) useAll(l *layer) {
	n := l.get("use")
	if n == nil {
		return
	}
	for _, item := range g.items(n, "use") {
		word, u := g.useEntry(item)
		if word == nil {
			continue
		}
		if name, ok := g.find(word, l); ok {
			g.visit(name, l, u)
		}
	}
}

// useEntry reads "48v-ac" or {layer: work-light, suffix: R, points: {…}}.
func (g *gatherer) useEntry(item *source.Node) (*source.Node, usage) {
	if item.Kind != source.Map {
		if g.text(item, "use") == "" {
			return nil, usage{}
		}
		return item, usage{at: item.Span}
	}
	f := g.fields(item, useKeys, "in use")
	word := f["layer"].Value
	if word == nil {
		g.gaps = true
		g.fault(item.Span, "this entry of use names no layer", "Write {layer: work-light, suffix: R}")
		return nil, usage{}
	}
	if g.text(word, "layer") == "" {
		return nil, usage{}
	}
	u := usage{at: word.Span}
	if n := f["points"].Value; n != nil {
		u.given = n
	}
	if n := f["suffix"].Value; n != nil {
		u.suffix = g.suffix(n)
	}
	return word, u
}

func (g *gatherer) suffix(n *source.Node) string {
	text := g.text(n, "suffix")
	if text != "" && !suffixForm.MatchString(text) {
		g.fault(n.Span, fmt.Sprintf("suffix %s is not one letter", text), "A designation takes one letter at its end: E1R")
		return ""
	}
	return text
}

// find turns a word of `use` into the name of a file.
func (g *gatherer) find(word *source.Node, user *layer) (string, bool) {
	text := strings.ReplaceAll(word.Text, `\`, "/")
	switch fold := wiring.Fold(text); {
	case strings.HasSuffix(fold, ".yaml"), strings.HasSuffix(fold, ".csv"):
		return g.findPath(word, text, user)
	case strings.Contains(text, "/"), strings.HasSuffix(fold, ".yml"):
		g.gaps = true
		g.fault(word.Span, fmt.Sprintf("no layer %s: a path ends in .yaml or .csv", word.Text),
			"A layer in "+strings.Join(layerFolders, "/, ")+"/ needs no path: its name is enough")
		return "", false
	}
	return g.findWord(word, text)
}

// findPath takes a path from the file that uses it.
func (g *gatherer) findPath(word *source.Node, text string, user *layer) (string, bool) {
	if user.path == "" {
		g.gaps = true
		g.fault(word.Span, "a built-in layer names no files")
		return "", false
	}
	name := path.Join(path.Dir(user.path), text)
	if path.IsAbs(text) || strings.Contains(text, ":") || !fs.ValidPath(name) {
		g.outsideRoot(word.Span, word.Text)
		return "", false
	}
	if _, err := g.store.stat(name); err != nil {
		g.unreadable(name, usage{at: word.Span}, err)
		return "", false
	}
	return name, true
}

// findWord looks for NAME.yaml in the folders of layers under the root, then built in.
func (g *gatherer) findWord(word *source.Node, text string) (string, bool) {
	var found, known []string
	for _, folder := range layerFolders {
		for _, name := range g.folder(folder) {
			known = append(known, name)
			if wiring.Fold(name) == wiring.Fold(text) {
				found = append(found, folder+"/"+name+".yaml")
			}
		}
	}
	if len(found) == 1 {
		return found[0], true
	}
	switch len(found) {
	case 0:
		if name, ok := g.builtIn(text, &known); ok {
			return name, true
		}
		g.fault(word.Span, fmt.Sprintf("no layer %s in platforms/, kits/, addons/ or built in%s", text, source.DidYouMean(text, known)))
		g.gaps = true
	default:
		g.gaps = true
		for i, name := range found {
			found[i] = g.store.shown(name)
		}
		g.fault(word.Span, fmt.Sprintf("the layer %s is found twice: %s", text, strings.Join(found, " and ")), "Rename one of them")
	}
	return "", false
}

// folder lists the layers in a folder under the root.
func (g *gatherer) folder(name string) []string {
	names, ok := g.folders[name]
	if !ok {
		names = g.store.list(name, ".yaml")
		g.folders[name] = names
	}
	return names
}

// builtIn looks for a layer that ships, and adds those there are to known.
func (g *gatherer) builtIn(text string, known *[]string) (string, bool) {
	if g.catalog.Layers == nil {
		return "", false
	}
	ships := &store{fsys: g.catalog.Layers}
	for _, folder := range layerFolders {
		for _, name := range ships.list(folder, ".yaml") {
			*known = append(*known, name)
			if wiring.Fold(name) != wiring.Fold(text) {
				continue
			}
			file := folder + "/" + name + ".yaml"
			key := builtInMark + file
			if _, done := g.parsed[key]; !done {
				content, err := ships.read(file)
				if err != nil {
					return "", false
				}
				g.parsed[key] = g.parse(key, catalog.Prefix+file, content)
			}
			return key, true
		}
	}
	return "", false
}

// findOwn collects what a layer itself defines, for its suffix: parts with a kind, wires
// with both ends, looms.
func (g *gatherer) findOwn(l *layer) {
	defines := func(section string, keys ...string) {
		n := l.get(section)
		if n == nil || n.Kind != source.Map {
			return
		}
		for _, e := range n.Entries {
			if !has(e.Value, keys...) {
				continue
			}
			for _, name := range g.quietly(e.Key.Text) {
				l.own[wiring.Fold(name)] = true
			}
		}
	}
	defines("parts", "kind")
	defines("wires", "from", "to")
	if n := l.get("looms"); n != nil {
		for _, e := range n.Entries {
			l.looms[wiring.Fold(e.Key.Text)] = true
		}
	}
}

func has(n *source.Node, keys ...string) bool {
	for _, key := range keys {
		if n.Get(key) == nil {
			return false
		}
	}
	return true
}
