package job

import (
	"fmt"
	"strings"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/source"
)

// header is what the first key of a layer says.
type header struct {
	kind  wiring.LayerKind
	title string
	at    diag.Span
}

// headers are the keys that say what sort of layer a file is.
var headers = []wiring.LayerKind{
	wiring.JobLayer, wiring.PlatformLayer, wiring.KitLayer, wiring.AddonLayer, wiring.ShopLayer, wiring.CatalogLayer,
}

func isHeader(key string) (wiring.LayerKind, bool) {
	for _, h := range headers {
		if string(h) == key {
			return h, true
		}
	}
	return "", false
}

// header reads the header of a layer, and its other keys by name.
func (r *reading) header(root *source.Node, file string) (header, map[string]source.Entry) {
	if root.Kind != source.Map {
		r.gaps = true
		r.fault(root.Span, "this file is no layer: it has no keys", "Begin with job: and the number of the job")
		return header{at: topOf(file)}, nil
	}
	_, findings := source.Header(root)
	r.findings = append(r.findings, findings...)
	head := r.findHeader(root, file)
	keys := map[string]source.Entry{}
	for _, e := range root.Entries {
		key := e.Key.Text
		if _, ok := isHeader(key); ok || key == "format" {
			continue
		}
		if k, known := layerKeys.find(key); !known && e.Key.Span == head.at {
			continue // reported as no header
		} else if !known {
			r.unknownKey(e.Key, layerKeys.names(head.kind), headerPhrase(head))
		} else if !k.allowed(head.kind) {
			r.fault(e.Key.Span, fmt.Sprintf("%s is no key of %s", key, article(string(head.kind))), "It belongs to "+k.home())
		} else {
			keys[key] = e
		}
	}
	return head, keys
}

func headerPhrase(h header) string {
	if h.kind == "" {
		return "in this file"
	}
	return "in this " + spoken(h.kind)
}

// findHeader finds the key that says what sort of file this is.
func (r *reading) findHeader(root *source.Node, file string) header {
	head := header{at: topOf(file)}
	first := true
	for _, e := range root.Entries {
		key := e.Key.Text
		if key == "format" && !first {
			r.fault(e.Key.Span, "format: stands on top of the file, before all else")
		}
		if key == "format" {
			continue
		}
		k, ok := isHeader(key)
		switch {
		case key == "kind" && head.kind == "":
			r.fault(e.Key.Span, "this file describes a kind, it is no layer", "Kinds are found by their names; they are not listed in use")
			r.gaps = true
			head.at = e.Key.Span
			return head
		case ok && head.kind != "":
			r.fault(e.Key.Span, fmt.Sprintf("this file is %s already", article(string(head.kind))), "One file is one layer")
		case ok:
			if !first {
				r.fault(e.Key.Span, fmt.Sprintf("%s: comes first: it says what sort of file this is", key))
			}
			head = header{kind: k, title: r.text(e.Value, key), at: e.Key.Span}
		}
		first = false
	}
	if head.kind == "" {
		r.gaps = true
		if len(root.Entries) > 0 {
			head.at = root.Entries[0].Key.Span
		}
		r.noHeader(root, head.at)
	}
	return head
}

// noHeader reports a file that does not say what it is.
func (r *reading) noHeader(root *source.Node, at diag.Span) {
	names := make([]string, len(headers))
	for i, h := range headers {
		names[i] = string(h) + ":"
	}
	message := "this file does not say what it is"
	if len(root.Entries) > 0 {
		if meant := source.Suggest(root.Entries[0].Key.Text+":", names); meant != "" {
			message += ": did you mean " + meant + "?"
		}
	}
	r.fault(at, message, "Begin with "+orList(names)+" and a title")
}

// article puts "a" or "an" before a word.
func article(word string) string {
	if word == "" {
		return "a file"
	}
	if strings.ContainsRune("aeiouAEIOU", rune(word[0])) {
		return "an " + word
	}
	return "a " + word
}

// orList is "a, b or c".
func orList(words []string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:len(words)-1], ", ") + " or " + words[len(words)-1]
}
