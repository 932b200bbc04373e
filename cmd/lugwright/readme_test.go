package main

import (
	"bytes"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// workshop is a fresh folder with a copy of the shipped examples, and the current one.
func workshop(t *testing.T) {
	t.Helper()
	examples, err := filepath.Abs(filepath.Join("..", "..", "examples"))
	if err != nil {
		t.Fatal(err)
	}
	dir := t.TempDir()
	if err := os.CopyFS(filepath.Join(dir, "examples"), os.DirFS(examples)); err != nil {
		t.Fatal(err)
	}
	t.Chdir(dir)
}

// typed runs a line as a person types it, and returns what the terminal shows.
func typed(t *testing.T, line string) (exit, string) {
	t.Helper()
	words := shellWords(line)
	if len(words) == 0 || words[0] != "lugwright" {
		t.Fatalf("%q is no call of lugwright", line)
	}
	var out bytes.Buffer
	code := run(system{
		args:   words[1:],
		stdout: stream{Writer: &out},
		stderr: stream{Writer: &out},
		getenv: func(string) string { return "" },
	})
	return code, out.String()
}

// shellWord is a word as a shell takes it: bare, or with a part in quotes.
var shellWord = regexp.MustCompile(`(?:[^\s'"]|'[^']*'|"[^"]*")+`)

// shellWords splits a call as a shell does, as far as our examples go.
func shellWords(line string) []string {
	words := shellWord.FindAllString(line, -1)
	for i, w := range words {
		words[i] = strings.NewReplacer("'", "", `"`, "").Replace(w)
	}
	return words
}

var (
	readmeFile    = regexp.MustCompile("(?s)<!-- file: (\\S+) -->\n```yaml\n(.*?)```\n")
	readmeConsole = regexp.MustCompile("(?s)```console\n(.*?)```\n")
)

// TestReadmeTour lays the files that README.md shows, types what it types, and compares
// every answer. With -update the answers are rewritten.
func TestReadmeTour(t *testing.T) {
	readme, err := filepath.Abs(filepath.Join("..", "..", "README.md"))
	if err != nil {
		t.Fatal(err)
	}
	text, err := os.ReadFile(readme)
	if err != nil {
		t.Fatal(err)
	}
	workshop(t)
	files := readmeFile.FindAllSubmatch(text, -1)
	for _, m := range files {
		if err := os.WriteFile(filepath.FromSlash(string(m[1])), m[2], 0o644); err != nil {
			t.Fatal(err)
		}
	}
	calls := 0
	got := readmeConsole.ReplaceAllFunc(text, func(block []byte) []byte {
		var out bytes.Buffer
		out.WriteString("```console\n")
		for line := range strings.Lines(string(readmeConsole.FindSubmatch(block)[1])) {
			if call, ok := strings.CutPrefix(line, "$ "); ok {
				_, answer := typed(t, call)
				out.WriteString(line + answer)
				calls++
			}
		}
		out.WriteString("```\n")
		return out.Bytes()
	})
	if len(files) == 0 || calls == 0 {
		t.Fatalf("README.md shows %d files and %d calls: are they still found?", len(files), calls)
	}
	if *update {
		if err := os.WriteFile(readme, got, 0o644); err != nil {
			t.Fatal(err)
		}
	} else if diff := cmp.Diff(string(text), string(got)); diff != "" {
		t.Errorf("README.md is not true any more (-says +is); go test ./cmd/lugwright -update mends the answers\n%s", diff)
	}
}

// Every command is in the table of README.md, called as its help says.
func TestReadmeCommands(t *testing.T) {
	text, err := os.ReadFile(filepath.Join("..", "..", "README.md"))
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range commands() {
		call := strings.TrimSpace(c.name + " " + c.operands.String())
		if !strings.Contains(string(text), "| `"+call+"` |") && !strings.Contains(string(text), "| `"+call+" ") {
			t.Errorf("README.md has no row for %s", call)
		}
	}
}

// The examples of every help text work as they stand.
func TestHelpExamples(t *testing.T) {
	workshop(t)
	for _, c := range commands() {
		for _, e := range c.examples {
			code, out := typed(t, e)
			if code > findings || out == "" {
				t.Errorf("%s: exit %d\n%s", e, code, out)
			}
		}
	}
}
