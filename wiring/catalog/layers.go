package catalog

import (
	"embed"
	"io/fs"
	"path"
	"slices"
	"strings"

	"github.com/lugwright/lugwright/wiring/diag"
)

//go:embed layers
var layerFiles embed.FS

const layersFolder = "layers"

// Layer is a platform, a kit or an add-on that ships.
type Layer struct {
	Name  string // as `use` names it: "48v-ac"
	Sort  string // "platform", "kit" or "addon"
	Title string // its header
	About string // empty if it says nothing
	File  string // as spans call it: "built-in/platforms/48v-ac.yaml"
	Text  []byte
}

// sorts are the sorts of layer that ship, by the folders that hold them.
var sorts = []struct{ word, folder string }{{"platform", "platforms"}, {"kit", "kits"}, {"addon", "addons"}}

// Prefix stands before the names of shipped files in spans.
const Prefix = prefix

// LayerFS is the shipped layers as a shop keeps its own: in platforms/, kits/ and addons/.
func LayerFS() fs.FS {
	sub, err := fs.Sub(layerFiles, layersFolder)
	if err != nil {
		panic("catalog: " + err.Error()) // the files are part of the program
	}
	return sub
}

// Layers lists the shipped layers of a sort ("platform"), or of all sorts for "": platforms,
// then kits, then add-ons, each by name.
func Layers(sort string) []Layer {
	var all []Layer
	for _, s := range sorts {
		if sort != "" && sort != s.word {
			continue
		}
		names, err := fs.Glob(LayerFS(), s.folder+"/*"+extension)
		if err != nil {
			panic("catalog: " + err.Error()) // the pattern is our own
		}
		for _, name := range names {
			all = append(all, readLayer(s.word, name))
		}
	}
	return all
}

func readLayer(sort, name string) Layer {
	text, err := fs.ReadFile(LayerFS(), name)
	if err != nil {
		panic("catalog: " + err.Error()) // the file is part of the program
	}
	l := Layer{Name: strings.TrimSuffix(path.Base(name), extension), Sort: sort, File: prefix + name, Text: text}
	l.Title, l.About = heading(string(text), sort), heading(string(text), "about")
	return l
}

// heading is what stands behind a key at the left margin of a shipped layer.
func heading(text, key string) string {
	for line := range strings.Lines(text) {
		if value, ok := strings.CutPrefix(line, key+":"); ok {
			return strings.Trim(strings.TrimSpace(value), `"`)
		}
	}
	return ""
}

// LayerNamed finds a shipped layer by its name, without regard to case.
func LayerNamed(name string) (Layer, bool) {
	all := Layers("")
	i := slices.IndexFunc(all, func(l Layer) bool { return strings.EqualFold(l.Name, name) })
	if i < 0 {
		return Layer{}, false
	}
	return all[i], true
}

func addLayersTo(f *diag.Files) {
	for _, l := range Layers("") {
		f.Add(l.File, l.Text)
	}
}
