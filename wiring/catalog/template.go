package catalog

import (
	"embed"
	"strings"
)

//go:embed templates/*.yaml
var templateFiles embed.FS

// Template is a commented file from which a shop writes its own layer of a sort,
// "platform" or "kit"; false for other sorts.
func Template(sort string) ([]byte, bool) {
	if strings.ContainsAny(sort, `/\.`) {
		return nil, false
	}
	text, err := templateFiles.ReadFile("templates/" + sort + extension)
	return text, err == nil
}
