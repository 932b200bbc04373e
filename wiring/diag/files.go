package diag

import (
	"sort"
	"strings"
	"sync"
)

// Files keeps the text of every file that was read, so that a finding can show its line.
// It is safe for concurrent use.
type Files struct {
	mu   sync.RWMutex
	text map[string][]string
}

// Add remembers a file under the name that spans use. Line ends may be LF or CRLF.
func (f *Files) Add(name string, text []byte) {
	f.mu.Lock()
	defer f.mu.Unlock()
	if f.text == nil {
		f.text = make(map[string][]string)
	}
	lines := strings.Split(string(text), "\n")
	for i, line := range lines {
		lines[i] = strings.TrimSuffix(line, "\r")
	}
	f.text[name] = lines
}

// Line returns a line (from 1) without its end, and whether the file has it.
func (f *Files) Line(name string, line int) (string, bool) {
	f.mu.RLock()
	defer f.mu.RUnlock()
	lines := f.text[name]
	if line < 1 || line > len(lines) {
		return "", false
	}
	return lines[line-1], true
}

// Names lists the files, sorted.
func (f *Files) Names() []string {
	f.mu.RLock()
	defer f.mu.RUnlock()
	names := make([]string, 0, len(f.text))
	for name := range f.text {
		names = append(names, name)
	}
	sort.Strings(names)
	return names
}
