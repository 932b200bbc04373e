// Package folder puts a set of files into one folder, all of them or none: a reader of the
// folder never meets half a file, and a file that the program did not write is not
// replaced unless that is asked for.
package folder

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
)

// Options says what may be replaced. The zero Options replace nothing.
type Options struct {
	// Own reports whether the content of a file that exists already is the program's own and
	// unchanged, so that it may be replaced.
	Own func(content []byte) bool
	// Force replaces every file, whoever wrote it.
	Force bool
}

// Folder collects files for one folder of the operating system. Nothing is written before
// Commit.
type Folder struct {
	dir   string
	opt   Options
	files []file
}

type file struct {
	name    string
	content []byte
}

// New begins a set of files for a folder, which need not exist.
func New(dir string, opt Options) *Folder { return &Folder{dir: dir, opt: opt} }

// Put adds a file by its name within the folder. The content must not be changed
// afterwards. A name with a path in it, and one that was put before, is an error.
func (f *Folder) Put(name string, content []byte) error {
	if name == "" || name == "." || name == ".." || strings.ContainsAny(name, `/\`) {
		return fmt.Errorf("folder: %q is no file name", name)
	}
	for _, one := range f.files {
		if strings.EqualFold(one.name, name) { // some file systems do not tell them apart
			return fmt.Errorf("folder: %s and %s would be one file", one.name, name)
		}
	}
	f.files = append(f.files, file{name, content})
	return nil
}

// Commit writes the files and returns their paths, in the order in which they were put. It
// first makes sure that every file may be written, so that a file of someone else's stops
// all of them. After an error the folder is as it was, unless the error came while files
// took their final names: then some are new and the others as they were.
func (f *Folder) Commit() ([]string, error) {
	if err := f.mayReplace(); err != nil {
		return nil, err
	}
	undo, err := makeFolder(f.dir)
	if err != nil {
		return nil, err
	}
	temps, err := f.stage()
	if err != nil {
		removeAll(temps)
		undo()
		return nil, err
	}
	return f.rename(temps)
}

// A ForeignError names files that the program did not write, or that were changed since.
type ForeignError struct{ Files []string }

func (e *ForeignError) Error() string {
	if len(e.Files) == 1 {
		return e.Files[0] + " exists and was not written by this program, or was changed since"
	}
	return "these files exist and were not written by this program, or were changed since: " + strings.Join(e.Files, ", ")
}

// mayReplace returns a *ForeignError if files stand in the way.
func (f *Folder) mayReplace() error {
	var foreign []string
	for _, one := range f.files {
		path := filepath.Join(f.dir, one.name)
		own, err := f.own(path)
		if err != nil {
			return err
		}
		if !own {
			foreign = append(foreign, filepath.ToSlash(path))
		}
	}
	if foreign != nil {
		return &ForeignError{foreign}
	}
	return nil
}

// own reports whether a path is free or may be replaced. Links, devices and folders are
// nobody's files.
func (f *Folder) own(path string) (bool, error) {
	info, err := os.Lstat(path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return true, nil
	case err != nil:
		return false, err
	case info.IsDir():
		return false, fmt.Errorf("%s is a folder", filepath.ToSlash(path))
	case f.opt.Force:
		return true, nil
	case !info.Mode().IsRegular() || f.opt.Own == nil:
		return false, nil
	}
	content, err := os.ReadFile(path)
	if err != nil {
		return false, err
	}
	return f.opt.Own(content), nil
}

// makeFolder makes a folder and those above it, and returns how to take back what it made.
func makeFolder(dir string) (undo func(), err error) {
	var made []string // deepest first
	for at := filepath.Clean(dir); ; at = filepath.Dir(at) {
		if _, err := os.Lstat(at); err == nil || at == filepath.Dir(at) {
			break
		}
		made = append(made, at)
	}
	undo = func() {
		for _, at := range made {
			// One that is not empty by now is someone's and stays.
			_ = os.Remove(at)
		}
	}
	if err := os.MkdirAll(dir, 0o777); err != nil {
		undo()
		return nil, err
	}
	return undo, nil
}

// stage writes every file under a temporary name in the folder itself, since a rename is
// atomic within one file system only. It returns what it wrote, also after an error.
func (f *Folder) stage() (temps []string, err error) {
	for _, one := range f.files {
		temp := filepath.Join(f.dir, fmt.Sprintf(".%s.%d.tmp", one.name, os.Getpid()))
		if err := writeNew(temp, one.content); err != nil {
			return temps, err
		}
		temps = append(temps, temp)
	}
	return temps, nil
}

// writeNew writes a file that does not exist yet, and makes sure that it is on the disk
// before it takes another's place. After an error it leaves nothing behind.
func writeNew(path string, content []byte) error {
	out, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
	if err != nil {
		return err
	}
	_, err = out.Write(content)
	if err = errors.Join(err, out.Sync(), out.Close()); err != nil {
		removeAll([]string{path})
	}
	return err
}

func (f *Folder) rename(temps []string) ([]string, error) {
	var written []string
	for i, one := range f.files {
		path := filepath.Join(f.dir, one.name)
		if err := os.Rename(temps[i], path); err != nil {
			removeAll(temps[i:])
			return written, err
		}
		written = append(written, filepath.ToSlash(path))
	}
	return written, nil
}

// removeAll removes temporary files as far as it can: the error that led here is the one
// to report.
func removeAll(paths []string) {
	for _, path := range paths {
		_ = os.Remove(path)
	}
}
