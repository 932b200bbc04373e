package job

import (
	"errors"
	"fmt"
	"io/fs"
	"path"
	"slices"
	"strings"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/source"
)

// builtInMark begins the names by which layers that ship are remembered. No path below a
// root begins so.
const builtInMark = "built in: "

// layerFolders hold the layers that a word in `use` may name, in the order of search.
var layerFolders = []string{"platforms", "kits", "addons"}

// gatherer visits layers, each before those that use it.
type gatherer struct {
	*reading
	parsed  map[string]*parsed // by path below the root, or built-in name
	used    map[string]usage   // by path and suffix
	open    []string           // paths that are being visited, outermost first
	folders map[string][]string
}

// parsed is a file that has been read.
type parsed struct {
	keys   map[string]source.Entry
	head   header
	column map[*source.Node]string
}

// usage is one entry of a `use` list.
type usage struct {
	at     diag.Span
	given  *source.Node // its points
	suffix string
}

// gather reads a file and all that it uses. Below everything lie the built-in states and
// the shop's own file. A text stands in the place of the file unless it is nil.
func (r *reading) gather(name string, text []byte) {
	g := &gatherer{reading: r, parsed: map[string]*parsed{}, used: map[string]usage{}, folders: map[string][]string{}}
	r.catalog.AddTo(r.files)
	if file, text := r.catalog.States(); len(text) > 0 {
		g.parsed[file] = g.parse(file, file, text)
		g.append(file, "", nil, usage{})
	}
	if name != shopFile {
		if _, err := r.store.stat(shopFile); err == nil {
			g.visit(shopFile, nil, usage{})
		}
	}
	if text != nil {
		g.parsed[name] = g.parse(name, g.store.shown(name), text)
	}
	g.visit(name, nil, usage{})
}

// visit reads one file and what it uses, and puts it above them.
func (g *gatherer) visit(name string, user *layer, u usage) {
	if g.circular(name, u) || g.again(name, u) {
		return
	}
	if len(g.layers)+len(g.open) >= MostLayers {
		g.gaps = true
		g.once("layers", u.at, fmt.Sprintf("more than %d layers", MostLayers))
		return
	}
	p := g.file(name, u)
	if p == nil {
		return
	}
	g.open = append(g.open, name)
	l := g.layer(name, p, user, u)
	g.useAll(l)
	g.open = g.open[:len(g.open)-1]
	g.place(l)
}

// append places a layer that uses nothing.
func (g *gatherer) append(name, pathBelow string, user *layer, u usage) {
	l := g.layer(name, g.parsed[name], user, u)
	l.path = pathBelow
	g.place(l)
}

func (g *gatherer) place(l *layer) {
	l.index = len(g.layers)
	g.layers = append(g.layers, l)
}

// circular reports a layer that leads back to itself.
func (g *gatherer) circular(name string, u usage) bool {
	for i, open := range g.open {
		if open != name {
			continue
		}
		var words []string
		for _, n := range append(g.open[i:len(g.open):len(g.open)], name) {
			words = append(words, strings.TrimSuffix(path.Base(n), path.Ext(n)))
		}
		g.gaps = true
		g.fault(u.at, strings.Join(words, " uses "), "A layer cannot stand on itself")
		return true
	}
	return false
}

// again reports whether a layer has its place already. The same layer with other points
// would lose one set of them, so that is an error.
func (g *gatherer) again(name string, u usage) bool {
	key := name + "|" + wiring.Fold(u.suffix)
	first, ok := g.used[key]
	if !ok {
		g.used[key] = u
		return false
	}
	if u.given != nil && first.at != u.at {
		f := g.fault(u.at, fmt.Sprintf("%s is used already (%s)", strings.TrimSuffix(path.Base(name), path.Ext(name)), where(first.at)),
			"Give this one a suffix, so that its parts and wires get names of their own: suffix: R")
		f.Related = []diag.Place{{Span: first.at, Label: "used here"}}
	}
	return true
}

// file returns a file's content, read at most once.
func (g *gatherer) file(name string, u usage) *parsed {
	if p, ok := g.parsed[name]; ok {
		return p
	}
	text, err := g.store.read(name)
	if err != nil {
		g.unreadable(name, u, err)
		g.parsed[name] = nil
		return nil
	}
	p := g.parse(name, g.store.shown(name), text)
	g.parsed[name] = p
	return p
}

// parse turns a text into the keys of a layer.
func (g *gatherer) parse(name, shown string, text []byte) *parsed {
	g.files.Add(shown, text)
	if isList(name) {
		list, column, findings := parseCSV(shown, text)
		g.findings = append(g.findings, findings...)
		g.gaps = g.gaps || diag.Worst(findings) == diag.Error
		return &parsed{keys: list, head: header{kind: wiring.ListLayer, title: path.Base(name), at: topOf(shown)}, column: column}
	}
	root, findings := source.Parse(shown, text)
	g.took(root, findings)
	if root == nil {
		return nil
	}
	head, keys := g.header(root, shown)
	return &parsed{keys: keys, head: head}
}

func topOf(file string) diag.Span { return diag.Span{File: file, Line: 1, Col: 1, EndCol: 1} }

// unreadable reports a layer's file that cannot be read.
func (g *gatherer) unreadable(name string, u usage, err error) {
	g.gaps = true
	at := u.at
	if !at.Known() {
		at = topOf(g.store.shown(name))
	}
	var inner *fs.PathError
	switch {
	case errors.Is(err, errOutside):
		g.outsideRoot(at, g.store.shown(name))
	case errors.Is(err, fs.ErrNotExist):
		g.fault(at, "there is no file "+g.store.shown(name))
	case errors.As(err, &inner):
		g.fault(at, fmt.Sprintf("%s cannot be read: %v", g.store.shown(name), inner.Err))
	default:
		g.fault(at, fmt.Sprintf("%s cannot be read: it %v", g.store.shown(name), err))
	}
}

func (g *gatherer) outsideRoot(at diag.Span, name string) {
	g.gaps = true
	g.fault(at, fmt.Sprintf("%s lies outside the root %s", name, g.store.root),
		"Layers come from the folder that holds shop.yaml, and from below it")
}

// layer makes the layer of a file that has been read.
func (g *gatherer) layer(name string, p *parsed, user *layer, u usage) *layer {
	l := &layer{
		Layer: &wiring.Layer{
			Kind: p.head.kind, Title: p.head.title, File: p.head.at.File, Suffix: u.suffix, At: p.head.at,
		},
		path: name, keys: p.keys, user: user, column: p.column,
		own: map[string]bool{}, looms: map[string]bool{}, given: map[string]source.Entry{}, goneNames: map[string]diag.Span{},
	}
	if n := l.get("about"); n != nil {
		l.About = g.text(n, "about")
	}
	if u.given != nil {
		for _, e := range g.entries(u.given, "points") {
			l.given[e.Key.Text] = e
		}
	}
	if strings.HasPrefix(name, builtInMark) {
		l.path = ""
	}
	if u.suffix != "" {
		g.findOwn(l)
	}
	g.checkGiven(l)
	return l
}

// checkGiven reports points that a layer is given and does not need.
func (g *gatherer) checkGiven(l *layer) {
	var needs []string
	if n := l.get("needs"); n != nil {
		for _, e := range n.Entries {
			needs = append(needs, e.Key.Text)
		}
	}
	for name, e := range l.given {
		if slices.Contains(needs, name) {
			continue
		}
		message := fmt.Sprintf("%s needs no point %s", l, name)
		switch meant := source.DidYouMean(name, needs); {
		case meant != "":
			message += meant
		case len(needs) > 0:
			message += ": it needs " + strings.Join(needs, " ")
		}
		g.lost(e.Key.Span, message)
	}
}

// cutAtPlatform drops what lies above the topmost platform, and reports whether there is
// a platform at all.
func (r *reading) cutAtPlatform() bool {
	for i := len(r.layers) - 1; i >= 0; i-- {
		if r.layers[i].Kind == wiring.PlatformLayer {
			r.layers = r.layers[:i+1]
			return true
		}
	}
	return false
}
