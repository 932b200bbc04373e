package schematic

import (
	"path/filepath"
	"strings"
	"testing"

	"github.com/lugwright/lugwright/render/sheet/frame"
)

// BenchmarkSheets lays out every shipped example on both usual papers.
func BenchmarkSheets(b *testing.B) {
	for _, paper := range []frame.Paper{frame.A4(), frame.Letter()} {
		for _, file := range examples(b) {
			b.Run(paper.Name+"/"+strings.TrimSuffix(filepath.Base(file), ".yaml"), func(b *testing.B) {
				o := areaOn(paper)
				h := load(b, file)
				for b.Loop() {
					if _, err := Sheets(h, o); err != nil {
						b.Fatal(err)
					}
				}
			})
		}
	}
}
