package job

import (
	"io/fs"

	"github.com/lugwright/lugwright/wiring/catalog"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/kind"
)

// Catalog is what a reading takes for built in.
type Catalog struct {
	Kind   kind.Lookup
	Names  func() []string                   // of the kinds
	States func() (file string, text []byte) // the layer of operating states
	AddTo  func(*diag.Files)                 // remembers the texts, for quoting
	Layers fs.FS                             // platforms/, kits/ and addons/ that ship; nil: none
}

func (o Options) catalog() *Catalog {
	if o.Catalog != nil {
		return o.Catalog
	}
	return &Catalog{Kind: catalog.Kind, Names: catalog.Names, States: catalog.States, AddTo: catalog.AddTo, Layers: catalog.LayerFS()}
}
