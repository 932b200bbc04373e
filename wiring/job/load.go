package job

import (
	"fmt"
	"io/fs"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
)

// Limits of one harness. They lie far above what a cart needs.
const (
	MostLayers = 64
	MostParts  = 10_000
	MostWires  = 100_000
	MostStates = 1_000
	MostPlaces = 1_000
	MostRuns   = 2_000
	MostRanged = 1_000_000 // names that ranges stand for, in all files together
)

// Options says where files come from. The zero Options are the usual ones.
type Options struct {
	// FS is read instead of the operating system's files; names are then slash-separated
	// paths inside it, as package fs has them.
	FS fs.FS
	// Root is the folder that no layer may lie outside of. Empty: the nearest folder
	// upwards that holds shop.yaml, else the folder of the file.
	Root string
	// Catalog is used instead of the kinds and states that ship.
	Catalog *Catalog
	// Text is read in the place of the file that is asked for, which need not be there yet;
	// nil: the file.
	Text []byte
}

// Load reads a job, or any other layer alone, with all that it uses.
//
// The harness is nil if and only if there are input errors. The findings are sorted; they
// are errors of the files, and notes and warnings about how a thing is written. A layer
// that is loaded alone and lacks points which it needs yields notes, not errors. The error
// is about the call: the file cannot be opened, or lies outside the root.
func Load(file string, o Options) (*wiring.Harness, []diag.Finding, error) {
	return load(file, o, whole)
}

// LoadBefore reads the cart as it was before the work: the layers of a job up to its
// topmost platform. It returns neither harness nor findings if the job has no platform.
func LoadBefore(file string, o Options) (*wiring.Harness, []diag.Finding, error) {
	return load(file, o, before)
}

// extent says how many of the layers are wanted.
type extent uint8

const (
	whole extent = iota
	before
)

func load(file string, o Options, want extent) (*wiring.Harness, []diag.Finding, error) {
	s, name, err := openStore(file, o)
	if err != nil {
		return nil, nil, fmt.Errorf("job: %w", err)
	}
	defer s.close()
	if _, err := s.stat(name); err != nil && o.Text == nil {
		return nil, nil, fmt.Errorf("job: %w", plain(err, s.shown(name)))
	}
	if isList(name) {
		return nil, nil, fmt.Errorf("job: %s is a wire list: name the job that uses it", s.shown(name))
	}
	r := newReading(s, o.catalog())
	r.gather(name, o.Text)
	if want == before && !r.cutAtPlatform() {
		return nil, nil, nil
	}
	h := r.harness()
	r.closeFlood()
	diag.Sort(r.findings)
	r.findings = dropTwins(r.findings)
	if diag.Worst(r.findings) == diag.Error {
		return nil, r.findings, nil
	}
	return h, r.findings, nil
}

// dropTwins leaves one of findings that say the same of the same place, as a layer that is
// used twice would produce. The list is sorted.
func dropTwins(fs []diag.Finding) []diag.Finding {
	kept := fs[:0]
	for i, f := range fs {
		if i > 0 {
			last := kept[len(kept)-1]
			if last.At == f.At && last.Message == f.Message && last.Level == f.Level {
				continue
			}
		}
		kept = append(kept, f)
	}
	return kept
}
