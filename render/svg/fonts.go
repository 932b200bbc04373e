package svg

import (
	"encoding/base64"
	"fmt"
	"maps"
	"slices"

	"github.com/lugwright/lugwright/render/ink"
	"github.com/lugwright/lugwright/render/ink/subset"
)

// note remembers which characters of a face the file needs.
func (r *raw) note(t ink.Text) {
	if !r.opt.EmbedFonts {
		return
	}
	if r.used[t.Face] == nil {
		r.used[t.Face] = map[rune]bool{}
	}
	for _, c := range t.String {
		r.used[t.Face][c] = true
	}
}

// fontRules name the embedded faces so that the first entry of families finds them.
var fontRules = [...]string{
	ink.Regular: "font-family:Go;font-weight:normal",
	ink.Bold:    "font-family:Go;font-weight:bold",
	ink.Mono:    "font-family:'Go Mono'",
}

// embedFonts writes a style element with the faces that were used, cut down to their used
// characters.
func (r *raw) embedFonts() error {
	css := ""
	for _, face := range ink.Faces() {
		if len(r.used[face]) == 0 {
			continue
		}
		characters := slices.Sorted(maps.Keys(r.used[face]))
		font, err := subset.TrueType(face.TrueType(), characters)
		if err != nil {
			return err
		}
		css += fmt.Sprintf("@font-face{%s;src:url(data:font/ttf;base64,%s)}\n",
			fontRules[face], base64.StdEncoding.EncodeToString(font))
	}
	if css != "" {
		r.svg.Style("text/css", css)
	}
	return nil
}
