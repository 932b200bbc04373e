package folder

import (
	"bytes"
	"errors"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// own takes files that begin with "own" for the program's.
func own(content []byte) bool { return bytes.HasPrefix(content, []byte("own")) }

// listing is every file below a folder with its content.
func listing(t *testing.T, dir string) map[string]string {
	t.Helper()
	all := map[string]string{}
	err := filepath.WalkDir(dir, func(path string, d os.DirEntry, err error) error {
		if err != nil || path == dir {
			return err
		}
		name, err := filepath.Rel(dir, path)
		if err != nil {
			return err
		}
		if d.IsDir() {
			all[filepath.ToSlash(name)+"/"] = ""
			return nil
		}
		content, err := os.ReadFile(path)
		all[filepath.ToSlash(name)] = string(content)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return all
}

func lay(t *testing.T, dir string, files map[string]string) {
	t.Helper()
	for name, content := range files {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(content), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}

func put(t *testing.T, f *Folder, files ...string) {
	t.Helper()
	for _, name := range files {
		if err := f.Put(name, []byte("own "+name)); err != nil {
			t.Fatal(err)
		}
	}
}

func TestCommit(t *testing.T) {
	for _, c := range []struct {
		name        string
		before      map[string]string
		force       bool
		after       map[string]string
		wantForeign []string // base names
	}{
		{
			name:  "an empty folder",
			after: map[string]string{"a.svg": "own a.svg", "b.svg": "own b.svg"},
		},
		{
			name:   "own files are replaced, others are left",
			before: map[string]string{"a.svg": "own, old", "note.txt": "theirs"},
			after:  map[string]string{"a.svg": "own a.svg", "b.svg": "own b.svg", "note.txt": "theirs"},
		},
		{
			name:        "one foreign file stops all",
			before:      map[string]string{"b.svg": "theirs"},
			after:       map[string]string{"b.svg": "theirs"},
			wantForeign: []string{"b.svg"},
		},
		{
			name:        "all foreign files are named",
			before:      map[string]string{"a.svg": "", "b.svg": "theirs"},
			after:       map[string]string{"a.svg": "", "b.svg": "theirs"},
			wantForeign: []string{"a.svg", "b.svg"},
		},
		{
			name:   "force",
			before: map[string]string{"b.svg": "theirs"},
			force:  true,
			after:  map[string]string{"a.svg": "own a.svg", "b.svg": "own b.svg"},
		},
	} {
		t.Run(c.name, func(t *testing.T) {
			dir := t.TempDir()
			lay(t, dir, c.before)
			f := New(dir, Options{Own: own, Force: c.force})
			put(t, f, "a.svg", "b.svg")
			written, err := f.Commit()
			var foreign *ForeignError
			if errors.As(err, &foreign) {
				for i := range foreign.Files {
					foreign.Files[i] = filepath.Base(foreign.Files[i])
				}
				if diff := cmp.Diff(c.wantForeign, foreign.Files); diff != "" {
					t.Errorf("foreign files (-want +got):\n%s", diff)
				}
			} else if err != nil || c.wantForeign != nil {
				t.Errorf("error %v, want foreign %v", err, c.wantForeign)
			} else if want := []string{filepath.ToSlash(filepath.Join(dir, "a.svg")), filepath.ToSlash(filepath.Join(dir, "b.svg"))}; !slices.Equal(written, want) {
				t.Errorf("written %v, want %v", written, want)
			}
			if diff := cmp.Diff(c.after, listing(t, dir)); diff != "" {
				t.Errorf("folder (-want +got):\n%s", diff)
			}
		})
	}
}

func TestCommitMakesFolders(t *testing.T) {
	dir := t.TempDir()
	f := New(filepath.Join(dir, "carts", "14"), Options{})
	put(t, f, "a.svg")
	if _, err := f.Commit(); err != nil {
		t.Fatal(err)
	}
	want := map[string]string{"carts/": "", "carts/14/": "", "carts/14/a.svg": "own a.svg"}
	if diff := cmp.Diff(want, listing(t, dir)); diff != "" {
		t.Errorf("folder (-want +got):\n%s", diff)
	}
}

// What goes wrong on the way leaves the folder as it was, folders that were made included.
func TestFailureLeavesNothing(t *testing.T) {
	t.Run("a file stands where the folder should be", func(t *testing.T) {
		dir := t.TempDir()
		lay(t, dir, map[string]string{"taken": "theirs"})
		f := New(filepath.Join(dir, "taken", "14"), Options{})
		put(t, f, "a.svg")
		if _, err := f.Commit(); err == nil {
			t.Error("no error")
		}
		if diff := cmp.Diff(map[string]string{"taken": "theirs"}, listing(t, dir)); diff != "" {
			t.Errorf("folder (-want +got):\n%s", diff)
		}
	})
	t.Run("a folder stands where a file should be", func(t *testing.T) {
		dir := t.TempDir()
		if err := os.Mkdir(filepath.Join(dir, "b.svg"), 0o755); err != nil {
			t.Fatal(err)
		}
		f := New(dir, Options{Force: true})
		put(t, f, "a.svg", "b.svg")
		if _, err := f.Commit(); err == nil {
			t.Error("no error")
		}
		if diff := cmp.Diff(map[string]string{"b.svg/": ""}, listing(t, dir)); diff != "" {
			t.Errorf("folder (-want +got):\n%s", diff)
		}
	})
	t.Run("the second file cannot be written", func(t *testing.T) {
		dir := t.TempDir()
		f := New(filepath.Join(dir, "new", "14"), Options{})
		long := string(bytes.Repeat([]byte("n"), 250)) // its temporary name is longer than file systems take
		put(t, f, "a.svg", long+".svg")
		if _, err := f.Commit(); err == nil {
			t.Skip("this file system takes a name of 270 characters")
		}
		if diff := cmp.Diff(map[string]string{}, listing(t, dir)); diff != "" {
			t.Errorf("folder (-want +got):\n%s", diff)
		}
	})
}

func TestLinksAreNobodysFiles(t *testing.T) {
	dir := t.TempDir()
	lay(t, dir, map[string]string{"elsewhere": "own, but elsewhere"})
	if err := os.Symlink("elsewhere", filepath.Join(dir, "a.svg")); err != nil {
		t.Skip("no symbolic links here:", err)
	}
	f := New(dir, Options{Own: own})
	put(t, f, "a.svg")
	var foreign *ForeignError
	if _, err := f.Commit(); !errors.As(err, &foreign) {
		t.Errorf("error %v, want a foreign file", err)
	}
}

func TestPutRefusesNames(t *testing.T) {
	f := New(t.TempDir(), Options{})
	put(t, f, "a.svg")
	for _, name := range []string{"", ".", "..", "../a.svg", "b/a.svg", `b\a.svg`, "a.svg", "A.SVG"} {
		if f.Put(name, nil) == nil {
			t.Errorf("%q is accepted", name)
		}
	}
}
