package job

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"strings"

	"github.com/lugwright/lugwright/wiring/source"
)

// shopFile marks the root folder of a shop's files.
const shopFile = "shop.yaml"

// errOutside is what a store says of a name that leaves its root.
var errOutside = errors.New("lies outside the root")

// mostLinks bounds the symbolic links that are followed for one name.
const mostLinks = 40

// store reads files below one root folder and no others. Names are slash-separated and
// relative to the root.
type store struct {
	fsys   fs.FS
	prefix string // put before a name where people see it; empty: the root is the current folder
	root   string // as people see it
	linked bool   // links must be followed here, because fsys does not watch the root
	closer io.Closer
}

func (s *store) close() {
	if s.closer != nil {
		s.closer.Close()
	}
}

// shown is a name as people would write it from where they are.
func (s *store) shown(name string) string {
	if s.prefix == "" {
		return name
	}
	return path.Clean(s.prefix + "/" + name)
}

// openStore finds the root for a file, and the file's name below it.
func openStore(file string, o Options) (*store, string, error) {
	if file == "" {
		return nil, "", errors.New("no file was named")
	}
	if o.FS != nil {
		return openVirtual(file, o)
	}
	return openReal(file, o)
}

// openVirtual opens a root inside Options.FS.
func openVirtual(file string, o Options) (*store, string, error) {
	file = path.Clean(strings.ReplaceAll(file, `\`, "/"))
	if !fs.ValidPath(file) || file == "." {
		return nil, "", fmt.Errorf("%s is no path inside the file system that was given", file)
	}
	root := path.Dir(file)
	if o.Root != "" {
		root = path.Clean(strings.ReplaceAll(o.Root, `\`, "/"))
	} else if above, ok := findRoot(root, path.Dir, func(name string) bool {
		_, err := fs.Stat(o.FS, name)
		return err == nil
	}); ok {
		root = above
	}
	name, ok := below(root, file)
	if !ok {
		return nil, "", fmt.Errorf("%s %w %s", file, errOutside, root)
	}
	sub, err := fs.Sub(o.FS, root)
	if err != nil {
		return nil, "", err
	}
	s := &store{fsys: sub, root: root, linked: true}
	if root != "." {
		s.prefix = root
	}
	return s, name, nil
}

// openReal opens a root folder of the operating system, which then guards it itself.
func openReal(file string, o Options) (*store, string, error) {
	full, err := filepath.Abs(file)
	if err != nil {
		return nil, "", err
	}
	dir := filepath.Dir(full)
	if o.Root != "" {
		if dir, err = filepath.Abs(o.Root); err != nil {
			return nil, "", err
		}
	} else if above, ok := findRoot(dir, filepath.Dir, func(name string) bool {
		_, err := os.Stat(filepath.FromSlash(name))
		return err == nil
	}); ok {
		dir = above
	}
	prefix := shownFolder(file, dir)
	name, ok := below(filepath.ToSlash(dir), filepath.ToSlash(full))
	if !ok {
		return nil, "", fmt.Errorf("%s %w %s", filepath.ToSlash(file), errOutside, prefix)
	}
	root, err := os.OpenRoot(dir)
	if err != nil {
		return nil, "", plain(err, filepath.ToSlash(dir))
	}
	s := &store{fsys: root.FS(), root: prefix, closer: root}
	if prefix != "." {
		s.prefix = prefix
	}
	return s, name, nil
}

// shownFolder writes the root the way in which the file was named: relative to the current
// folder, or in full.
func shownFolder(file, root string) string {
	if filepath.IsAbs(file) {
		return filepath.ToSlash(root)
	}
	here, err := os.Getwd()
	if err != nil {
		return filepath.ToSlash(root)
	}
	relative, err := filepath.Rel(here, root)
	if err != nil {
		return filepath.ToSlash(root)
	}
	return filepath.ToSlash(relative)
}

// findRoot goes upwards from a folder to the nearest that holds the shop's file.
func findRoot(from string, up func(string) string, exists func(string) bool) (string, bool) {
	for dir := from; ; dir = up(dir) {
		if exists(path.Join(filepath.ToSlash(dir), shopFile)) {
			return dir, true
		}
		if up(dir) == dir {
			return "", false
		}
	}
}

// below returns name relative to root, both slash-separated and clean.
func below(root, name string) (string, bool) {
	if root == "." {
		return name, fs.ValidPath(name)
	}
	rest, ok := strings.CutPrefix(name, strings.TrimSuffix(root, "/")+"/")
	return rest, ok && fs.ValidPath(rest)
}

// stat looks at a file. An error that wraps errOutside means that it leaves the root.
func (s *store) stat(name string) (fs.FileInfo, error) {
	real, err := s.follow(name)
	if err != nil {
		return nil, err
	}
	info, err := fs.Stat(s.fsys, real)
	if err != nil {
		return nil, outside(err)
	}
	if info.IsDir() {
		return nil, errors.New("is a folder")
	}
	return info, nil
}

// read reads a file of at most source.MostBytes; of a longer one it returns one byte more
// than that, so that whoever parses it can tell.
func (s *store) read(name string) ([]byte, error) {
	if _, err := s.stat(name); err != nil {
		return nil, err
	}
	real, err := s.follow(name)
	if err != nil {
		return nil, err
	}
	f, err := s.fsys.Open(real)
	if err != nil {
		return nil, outside(err)
	}
	defer f.Close()
	return io.ReadAll(io.LimitReader(f, source.MostBytes+1))
}

// list names the files of a folder with an ending, without it, sorted. A folder that is
// not there has none.
func (s *store) list(dir, ending string) []string {
	entries, err := fs.ReadDir(s.fsys, dir)
	if err != nil {
		return nil
	}
	var names []string
	for _, e := range entries {
		if base, ok := strings.CutSuffix(e.Name(), ending); ok && base != "" && !e.IsDir() {
			names = append(names, base)
		}
	}
	return names
}

// follow resolves symbolic links below the root where the file system does not do so
// itself, and refuses those that leave it.
func (s *store) follow(name string) (string, error) {
	links, ok := s.fsys.(fs.ReadLinkFS)
	if !s.linked || !ok {
		return name, nil
	}
	done, rest := ".", strings.Split(name, "/")
	for hops := 0; len(rest) > 0; {
		next := path.Join(done, rest[0])
		info, err := links.Lstat(next)
		if err != nil {
			return "", err
		}
		if info.Mode()&fs.ModeSymlink == 0 {
			done, rest = next, rest[1:]
			continue
		}
		target, err := links.ReadLink(next)
		if err != nil {
			return "", err
		}
		hops++
		target = path.Join(path.Dir(next), target)
		if path.IsAbs(target) || !fs.ValidPath(target) || hops > mostLinks {
			return "", errOutside
		}
		done, rest = ".", append(strings.Split(target, "/"), rest[1:]...)
	}
	return done, nil
}

// outside names the refusal of an [os.Root], whose error has no name of its own.
func outside(err error) error {
	if strings.Contains(err.Error(), "escapes") {
		return errOutside
	}
	return err
}

// plain words an error of the file system as "NAME: no such file".
func plain(err error, name string) error {
	var inner *fs.PathError
	switch {
	case errors.Is(err, errOutside):
		return fmt.Errorf("%s %w", name, errOutside)
	case errors.Is(err, fs.ErrNotExist):
		return fmt.Errorf("%s: %w", name, fs.ErrNotExist)
	case errors.As(err, &inner):
		return fmt.Errorf("%s: %w", name, inner.Err)
	}
	return fmt.Errorf("%s %w", name, err)
}
