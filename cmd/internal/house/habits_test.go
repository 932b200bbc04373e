package house

import (
	"go/ast"
	"go/parser"
	"strings"
	"testing"
)

// banned is what code may not use, and why. Tests may.
var banned = []struct{ where, pkg, names, why string }{
	{"wiring/...", "os", "Stdout Stderr Stdin Exit", "wiring never prints"},
	{"wiring/...", "fmt", "Print Printf Println", "wiring never prints"},
	{"wiring/...", "log", "*", "wiring never prints"},
	{"render/...", "os", "Stdout Stderr Stdin Exit", "render writes to what it is given"},
	{"render/...", "fmt", "Print Printf Println", "render writes to what it is given"},
	{"render/...", "log", "*", "render writes to what it is given"},
	{"cmd/...", "fmt", "Print Printf Println", "streams are handed in"},
	{"cmd/...", "log", "*", "streams are handed in"},
	{"wiring/...", "time", "Now Since Until", "the same input gives the same answer at any time"},
	{"render/...", "time", "Now Since Until", "work is bounded by counts, never by the clock"},
	{"wiring/...", "math/rand", "*", "the same input gives the same answer"},
	{"render/...", "math/rand", "*", "the same input gives the same drawing"},
}

func TestNothingBannedIsUsed(t *testing.T) {
	for _, f := range goFiles(t, 0) {
		if f.test {
			continue
		}
		names := importNames(f)
		ast.Inspect(f.File, func(n ast.Node) bool {
			selector, ok := n.(*ast.SelectorExpr)
			if !ok {
				return true
			}
			x, ok := selector.X.(*ast.Ident)
			if !ok {
				return true
			}
			if why := ban(f.folder(), names[x.Name], selector.Sel.Name); why != "" {
				t.Errorf("%s uses %s.%s: %s", f.name, x.Name, selector.Sel.Name, why)
			}
			return true
		})
	}
}

// importNames tells under which name a file knows each package that it imports.
func importNames(f goFile) map[string]string {
	names := map[string]string{}
	for i, name := range f.imports() {
		short := name[strings.LastIndex(name, "/")+1:]
		if alias := f.Imports[i].Name; alias != nil {
			short = alias.Name
		}
		names[short] = name
	}
	return names
}

// ban returns why a folder may not use a name of a package, "" if it may.
func ban(folder, pkg, name string) string {
	for _, b := range banned {
		if within(folder, b.where) && b.pkg == pkg && (b.names == "*" || strings.Contains(" "+b.names+" ", " "+name+" ")) {
			return b.why
		}
	}
	return ""
}

// The ban itself must bite.
func TestBan(t *testing.T) {
	for _, c := range []struct {
		folder, pkg, name string
		want              bool
	}{
		{"wiring/rules", "fmt", "Println", true},
		{"wiring", "os", "Stdout", true},
		{"wiring/rules", "fmt", "Sprintf", false},
		{"wiring/rules", "fmt", "Print", true},
		{"render/svg", "log", "Fatal", true},
		{"wiringx", "fmt", "Println", false},
		{"cmd/lugwright", "os", "Stdout", false},
	} {
		if got := ban(c.folder, c.pkg, c.name) != ""; got != c.want {
			t.Errorf("%s may not use %s.%s: %v, want %v", c.folder, c.pkg, c.name, got, c.want)
		}
	}
}

// Every package says once what it is for.
func TestPackageComments(t *testing.T) {
	comments := map[string]int{}
	for _, f := range goFiles(t, parser.ParseComments|parser.PackageClauseOnly) {
		if f.test {
			continue
		}
		n := 0
		if f.Doc != nil {
			n = 1
		}
		comments[f.folder()] += n
	}
	if len(comments) < 10 {
		t.Errorf("only %d packages were found", len(comments))
	}
	for folder, n := range comments {
		if n != 1 {
			t.Errorf("%s has %d package comments, want 1", folder, n)
		}
	}
}
