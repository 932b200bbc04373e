package job

import (
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/source"
)

// setting is one key of a state or of its `expect`.
type setting struct {
	key   string
	value *source.Node
	at    diag.Span
	layer *layer
}

// settings are keys with their values, in the order in which they were first written.
type settings struct {
	list []setting
	at   map[string]int // by folded key
}

// put adds a setting, or replaces the one of the same key.
func (s *settings) put(x setting) {
	key := wiring.Fold(x.key)
	if i, ok := s.at[key]; ok {
		s.list[i] = x
		return
	}
	if s.at == nil {
		s.at = map[string]int{}
	}
	s.at[key] = len(s.list)
	s.list = append(s.list, x)
}

// settings puts entries, ranges written out.
func (r *reading) settings(s *settings, entries []source.Entry, l *layer) {
	for _, e := range entries {
		if e.Value.Kind == source.Null {
			continue
		}
		for _, name := range r.expand(e.Key) {
			s.put(setting{l.name(name), e.Value, e.Key.Span, l})
		}
	}
}
