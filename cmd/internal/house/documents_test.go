package house

import (
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// documents are the pages that tell people where things are.
var documents = []string{"README.md", "DEVELOPERS.md"}

func readDocument(t *testing.T, name string) string {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(root, name))
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

var (
	quoted = regexp.MustCompile("`([^`\n]+)`")
	linked = regexp.MustCompile(`\]\(([^)#\s]+)\)`)
	fenced = regexp.MustCompile("(?ms)^```.*?^```$")
)

// namedPaths lists the paths of this repository that a document names in its prose: in
// backquotes or as links. NAME and PACKAGE, as in wiring/rules/NAME.go, stand for any
// name, and the path is followed as far as it is plain.
func namedPaths(document string) []string {
	prose := fenced.ReplaceAllString(document, "")
	var all []string
	for _, m := range quoted.FindAllStringSubmatch(prose, -1) {
		if isPath(m[1]) {
			all = append(all, m[1])
		}
	}
	for _, m := range linked.FindAllStringSubmatch(prose, -1) {
		if !strings.Contains(m[1], "://") {
			all = append(all, m[1])
		}
	}
	return all
}

var (
	pathShape   = regexp.MustCompile(`^[\w.@-]+(/[\w.*@-]*)*$`)
	placeholder = regexp.MustCompile(`(^|/)[^/]*(NAME|PACKAGE)[^/]*(/|$)`)
	fileEnding  = regexp.MustCompile(`\.(go|md|yaml|txtar|json|sarif|svg|txt|csv)$`)
)

// isPath reports whether a word in backquotes names something of this repository.
func isPath(word string) bool {
	if !pathShape.MatchString(word) {
		return false
	}
	top, _, below := strings.Cut(word, "/")
	switch top {
	case "wiring", "render", "cmd", "internal", "examples", "testdata", ".ci":
		return below || fs.ValidPath(word)
	}
	return !below && fileEnding.MatchString(word) && isDocument(word)
}

// isDocument reports whether a file name without folder is one of the top folder's.
func isDocument(name string) bool { return strings.ToUpper(name[:1]) == name[:1] || name == "go.mod" }

func TestNamedPathsExist(t *testing.T) {
	for _, name := range documents {
		paths := namedPaths(readDocument(t, name))
		if len(paths) < 3 {
			t.Errorf("%s names %d paths: are they still found?", name, len(paths))
		}
		for _, p := range paths {
			if at := placeholder.FindStringIndex(p); at != nil {
				p = p[:at[0]]
			}
			if p = strings.TrimSuffix(p, "/..."); p == "" {
				continue
			}
			if found, err := filepath.Glob(filepath.Join(root, filepath.FromSlash(p))); err != nil || len(found) == 0 {
				t.Errorf("%s names %s, which is not there", name, p)
			}
		}
	}
}

func TestNamedPaths(t *testing.T) {
	document := "See `wiring/rules/NAME.go`, `render/svg`, `go test ./...`, `W37`, `and/or` and " +
		"[the format](wiring/job/FORMAT.md), [home](https://example.org/a).\n```\n`cmd/not/this`\n```\n"
	got := strings.Join(namedPaths(document), " ")
	if want := "wiring/rules/NAME.go render/svg wiring/job/FORMAT.md"; got != want {
		t.Errorf("named paths are %s, want %s", got, want)
	}
}

// Every package is on the map of DEVELOPERS.md.
func TestMapIsComplete(t *testing.T) {
	text := readDocument(t, "DEVELOPERS.md")
	done := map[string]bool{}
	for _, f := range goFiles(t, 0) {
		folder := f.folder()
		if f.test || done[folder] || supporter(folder) || strings.Contains(folder, "/internal/") {
			continue
		}
		done[folder] = true
		if !strings.Contains(text, "`"+folder+"`") {
			t.Errorf("DEVELOPERS.md does not say what %s is for", folder)
		}
	}
}

// machinePath finds a path of the machine that somebody worked on.
var machinePath = regexp.MustCompile(`(^|[\s"'(=:` + "`" + `])/(work|tmp|root|home|Users)/[\w.]`)

// What is committed must mean the same on every machine.
func TestNoMachinePaths(t *testing.T) {
	err := fs.WalkDir(os.DirFS(root), ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if d.IsDir() {
			if name == ".git" || name == "sheets" {
				return fs.SkipDir
			}
			return nil
		}
		switch path.Ext(name) {
		case ".go", ".md", ".yaml", ".txtar", ".json", ".txt", ".csv", ".mod", "":
		default:
			return nil
		}
		text, err := os.ReadFile(filepath.Join(root, filepath.FromSlash(name)))
		if err != nil {
			return err
		}
		if found := machinePath.Find(text); found != nil {
			t.Errorf("%s names a place of one machine: %s…", name, strings.TrimSpace(string(found)))
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
}

// The two commands with which README.md opens are what .ci/run looks for.
func TestReadmeCommands(t *testing.T) {
	text, script := readDocument(t, "README.md"), readDocument(t, ".ci/run")
	for _, marker := range []string{"the one command", "the test command"} {
		block := regexp.MustCompile("<!-- " + marker + " -->\n```sh\n([^\n]+)\n```\n").FindStringSubmatch(text)
		if block == nil {
			t.Errorf("README.md has no one-line block marked %q", marker)
			continue
		}
		if !strings.Contains(script, `readme_command "`+marker+`"`) {
			t.Errorf(".ci/run does not run %q", block[1])
		}
	}
}
