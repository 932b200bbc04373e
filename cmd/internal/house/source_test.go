package house

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

// root is the top folder of the repository.
const root = "../../.."

// module is the path under which our packages are imported.
const module = "github.com/lugwright/lugwright/"

// goFile is one source file of the repository.
type goFile struct {
	name string // from the top folder, with forward slashes
	test bool
	*ast.File
}

// folder is the file's package, from the top folder.
func (f goFile) folder() string { return path.Dir(f.name) }

// imports lists what the file imports; our own packages without the module's path.
func (f goFile) imports() []string {
	var all []string
	for _, spec := range f.Imports {
		name, err := strconv.Unquote(spec.Path.Value)
		if err != nil {
			panic(err) // the parser accepts string literals alone
		}
		all = append(all, strings.TrimPrefix(name, module))
	}
	return all
}

// goFiles parses every source file of the repository.
func goFiles(t *testing.T, mode parser.Mode) []goFile {
	t.Helper()
	var all []goFile
	set := token.NewFileSet()
	err := fs.WalkDir(os.DirFS(root), ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		base := path.Base(name)
		if d.IsDir() && name != "." && (base == "testdata" || strings.HasPrefix(base, ".") || strings.HasPrefix(base, "_")) {
			return fs.SkipDir
		}
		if d.IsDir() || path.Ext(name) != ".go" {
			return nil
		}
		parsed, err := parser.ParseFile(set, filepath.Join(root, filepath.FromSlash(name)), nil, mode)
		if err != nil {
			return err
		}
		all = append(all, goFile{name: name, test: strings.HasSuffix(name, "_test.go"), File: parsed})
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return all
}

// within reports whether a folder is the one named, or lies in it if the name ends in
// "/...".
func within(folder, name string) bool {
	if above, ok := strings.CutSuffix(name, "/..."); ok {
		return folder == above || strings.HasPrefix(folder, above+"/")
	}
	return folder == name
}
