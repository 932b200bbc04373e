package house

import (
	"go/parser"
	"slices"
	"strings"
	"testing"
)

// rooms is who may enter which room. A room may import the packages on its own line and
// any of the standard library; "x/..." is x with all below it. Imports run one way, from
// cmd to render to wiring: an arrow upwards says that something stands in the wrong room.
const rooms = `
wiring/quantity         :
wiring/diag             :
wiring/colour           :
wiring/source           : wiring/diag
wiring/handbook         : wiring/quantity wiring/colour
wiring                  : wiring/quantity wiring/colour wiring/diag
wiring/kind             : wiring wiring/quantity wiring/colour wiring/diag wiring/source
wiring/catalog          : wiring/diag wiring/kind wiring/source
wiring/job              : wiring wiring/quantity wiring/colour wiring/diag wiring/source wiring/kind wiring/catalog wiring/handbook wiring/sizing
wiring/settle/...       : wiring wiring/quantity wiring/handbook wiring/settle/...
wiring/path             : wiring wiring/quantity
wiring/stack            : wiring wiring/quantity wiring/handbook
wiring/difference       : wiring wiring/quantity wiring/handbook wiring/stack
wiring/figure           : wiring wiring/quantity wiring/handbook wiring/settle wiring/path
wiring/position         : wiring wiring/quantity wiring/handbook wiring/settle wiring/path
wiring/list             : wiring wiring/quantity wiring/colour wiring/handbook wiring/settle wiring/path wiring/stack
wiring/meter            : wiring wiring/quantity wiring/settle wiring/path
wiring/fault            : wiring wiring/quantity wiring/handbook wiring/settle wiring/path wiring/meter
wiring/symptom          : wiring wiring/quantity wiring/settle wiring/fault wiring/meter
wiring/diagnosis        : wiring wiring/quantity wiring/settle wiring/fault wiring/symptom
wiring/failuremode      : wiring wiring/fault wiring/diagnosis wiring/symptom
wiring/sizing           : wiring wiring/quantity wiring/handbook wiring/path
wiring/headroom         : wiring wiring/quantity wiring/figure
wiring/rule             : wiring wiring/quantity wiring/diag wiring/source wiring/handbook wiring/settle wiring/path wiring/figure wiring/position wiring/meter
wiring/rules            : wiring wiring/quantity wiring/colour wiring/diag wiring/handbook wiring/settle wiring/path wiring/stack wiring/figure wiring/position wiring/meter wiring/rule
wiring/cases            :

wiring/begin            : wiring wiring/quantity wiring/diag wiring/handbook wiring/settle wiring/job wiring/accessory
wiring/accessory        : wiring wiring/quantity wiring/diag wiring/job wiring/headroom wiring/rule wiring/rules

render/ink              :
render/ink/subset       : render/ink
render/wirepen          : wiring/colour render/ink
render/symbol           : render/ink
render/rank             :
render/arrange          : render/ink render/symbol
render/route            : render/ink render/symbol render/arrange
render/label            : render/ink render/symbol render/arrange render/route
render/schematic        : wiring wiring/quantity wiring/colour wiring/diag render/ink render/rank render/wirepen render/symbol render/arrange render/route render/label
render/sheet/frame      : wiring/colour render/ink render/wirepen
render/sheet            : wiring wiring/quantity wiring/colour wiring/diag wiring/handbook wiring/settle wiring/figure wiring/meter wiring/stack wiring/list wiring/rule render/ink render/sheet/frame
render/sheet/flow       : render/ink
render/qr               : render/ink
render/sheets           : wiring/... render/ink render/report render/qr render/wirepen render/schematic render/sheet render/sheet/...
render/format           : wiring wiring/diag wiring/job render/ink render/report render/svg render/pdf render/png render/sheet render/sheet/...
render/svg              : render/ink render/ink/subset
render/pdf              : render/ink render/ink/subset
render/png              : render/ink
render/proof            : render/ink
render/report           : wiring wiring/quantity wiring/diag wiring/source wiring/settle wiring/path wiring/meter wiring/rule wiring/handbook wiring/sizing wiring/figure wiring/difference wiring/headroom wiring/fault wiring/symptom wiring/diagnosis wiring/failuremode
render                  : wiring/... render/...

cmd/lugwright/folder    :
cmd/lugwright           : wiring/... render/... cmd/lugwright/folder
cmd/internal/house      :
`

// outsiders is every package of other people that we link in, each with the one room that
// may know it, so that its cost and its traps stay in one place.
const outsiders = `
github.com/ajstarks/svgo/float        : render/svg
github.com/goccy/go-graphviz          : render/rank
go.yaml.in/yaml/v3                    : wiring/source
golang.org/x/image/font               : render/ink/...
golang.org/x/image/math/fixed         : render/ink/...
golang.org/x/text/unicode/norm        : render/ink
golang.org/x/text/width               : render/report
golang.org/x/term                     : cmd/lugwright
rsc.io/qr                             : render/qr
github.com/spf13/pflag                : cmd/lugwright
`

// testers is what tests may import besides.
const testers = `
github.com/google/go-cmp/cmp/...
github.com/rogpeppe/go-internal/testscript
github.com/rogpeppe/go-internal/txtar
github.com/santhosh-tekuri/jsonschema/v6
pgregory.net/rapid
`

// supporters are our packages that only tests may import: each ends in "test".
func supporter(name string) bool { return strings.HasSuffix(name, "test") && !outside(name) }

// rule is one line of a table: what stands left of the colon and the words right of it.
type rule struct {
	name string
	may  []string
}

func readTable(table string) []rule {
	var all []rule
	for line := range strings.Lines(table) {
		if name, words, ok := strings.Cut(line, ":"); ok {
			all = append(all, rule{strings.TrimSpace(name), strings.Fields(words)})
		}
	}
	return all
}

// outside reports whether an import is other people's and not of the standard library,
// whose paths have no dot in their first part.
func outside(name string) bool {
	first, _, _ := strings.Cut(name, "/")
	return strings.Contains(first, ".")
}

// ours reports whether an import is a package of this repository.
func ours(name string) bool {
	top, _, _ := strings.Cut(name, "/")
	return slices.Contains([]string{"wiring", "render", "cmd", "internal"}, top)
}

// verdict says what is wrong with an import, "" if nothing.
func verdict(folder string, test bool, name string) string {
	switch {
	case outside(name):
		return outsideVerdict(folder, test || supporter(folder), name)
	case !ours(name) || folder == name:
		return ""
	case test || supporter(folder):
		return testVerdict(folder, name)
	case supporter(name):
		return "is for tests alone"
	}
	for _, room := range readTable(rooms) {
		if within(folder, room.name) {
			if slices.ContainsFunc(room.may, func(may string) bool { return within(name, may) }) {
				return ""
			}
			return "is not among what the room may import"
		}
	}
	return noRoom
}

// noRoom is the verdict on every import of a folder that nobody has thought of.
const noRoom = "cannot be judged: its room is not in the table of rooms"

func outsideVerdict(folder string, test bool, name string) string {
	isName := func(may string) bool { return within(name, may) }
	if test && slices.ContainsFunc(strings.Fields(testers), isName) {
		return ""
	}
	for _, outsider := range readTable(outsiders) {
		if name == outsider.name || strings.HasPrefix(name, outsider.name+"/") {
			if within(folder, outsider.may[0]) {
				return ""
			}
			return "is for " + outsider.may[0] + " alone"
		}
	}
	return "is not in the table of outsiders"
}

// testVerdict lets tests look sideways, but not upwards.
func testVerdict(folder, name string) string {
	order := []string{"wiring", "render", "cmd"}
	from, _, _ := strings.Cut(folder, "/")
	to, _, _ := strings.Cut(name, "/")
	if slices.Index(order, to) > slices.Index(order, from) && slices.Contains(order, from) {
		return "lies above the room"
	}
	return ""
}

func TestImports(t *testing.T) {
	folders, homeless := map[string]bool{}, map[string]bool{}
	for _, f := range goFiles(t, parser.ImportsOnly) {
		folders[f.folder()] = true
		for _, name := range f.imports() {
			switch fault := verdict(f.folder(), f.test, name); fault {
			case "":
			case noRoom:
				homeless[f.folder()] = true
			default:
				t.Errorf("%s imports %s, which %s (see the tables in imports_test.go)", f.name, name, fault)
			}
		}
	}
	for folder := range homeless {
		t.Errorf("%s is not in the table of rooms: say there what it may import", folder)
	}
	for _, room := range readTable(rooms) {
		if top := strings.TrimSuffix(room.name, "/..."); !folders[top] {
			t.Errorf("the table has a room %s that is not there", top)
		}
		for _, may := range room.may {
			if top := strings.TrimSuffix(may, "/..."); !folders[top] {
				t.Errorf("%s may import %s, which is not there", room.name, top)
			}
		}
	}
}

// The tables must refuse what they are there to refuse.
func TestVerdict(t *testing.T) {
	for _, c := range []struct {
		folder string
		test   bool
		name   string
		ok     bool
	}{
		{"wiring", false, "render/ink", false},
		{"wiring/job", true, "render/ink", false},
		{"wiring/quantity", false, "wiring", false},
		{"wiring/job", false, "fmt", true},
		{"wiring/source", false, "go.yaml.in/yaml/v3", true},
		{"wiring/job", false, "go.yaml.in/yaml/v3", false},
		{"wiring/job", true, "go.yaml.in/yaml/v3", false},
		{"render/svg", false, "github.com/ajstarks/svgo/float", true},
		{"render/ink", false, "wiring", false},
		{"render", false, "cmd/lugwright/folder", false},
		{"cmd/lugwright", false, "render/svg", true},
		{"wiring/rules", true, "github.com/google/go-cmp/cmp", true},
		{"wiring/rules", false, "github.com/google/go-cmp/cmp", false},
		{"wiring/path", false, "wiring/path/pathtest", false},
		{"wiring/path", true, "wiring/path/pathtest", true},
		{"wiring/path/pathtest", false, "pgregory.net/rapid", true},
		{"wiring/path", false, "pgregory.net/rapid", false},
		{"wiring/nowhere", false, "wiring", false},
		{"wiring/rules", false, "example.org/thing", false},
	} {
		if fault := verdict(c.folder, c.test, c.name); (fault == "") != c.ok {
			t.Errorf("%s importing %s (test: %v): %q, want fine: %v", c.folder, c.name, c.test, fault, c.ok)
		}
	}
}
