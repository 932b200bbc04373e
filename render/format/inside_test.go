package format

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"image/png"
	"testing"

	"pgregory.net/rapid"

	"github.com/lugwright/lugwright/render/ink/inktest"
	"github.com/lugwright/lugwright/render/pdf"
)

// inside lists the sorts of file with the stamp inside: a file of each, and how it is stamped.
func inside(t testing.TB) map[string][2][]byte {
	t.Helper()
	var document, picture bytes.Buffer
	d := pdf.New(&document, pdf.Options{Title: "sample"})
	inktest.Sample(d.Page(inktest.Width, inktest.Height, "1"))
	if err := d.Finish(); err != nil {
		t.Fatal(err)
	}
	img := image.NewGray(image.Rect(0, 0, 9, 9))
	img.Set(4, 4, color.White)
	if err := png.Encode(&picture, img); err != nil {
		t.Fatal(err)
	}
	return map[string][2][]byte{
		"PDF": {document.Bytes(), stampPDF(document.Bytes())},
		"PNG": {picture.Bytes(), stampPNG(picture.Bytes())},
	}
}

func TestStampedInside(t *testing.T) {
	for name, files := range inside(t) {
		plain, stamped := files[0], files[1]
		if Stamped(plain) {
			t.Errorf("%s: known as our own without a stamp", name)
		}
		if !Stamped(stamped) {
			t.Errorf("%s: not known as our own", name)
		}
		if Stamped(append(bytes.Clone(stamped), "more"...)) {
			t.Errorf("%s: known as our own with something added", name)
		}
		rapid.Check(t, func(t *rapid.T) {
			changed := bytes.Clone(stamped)
			changed[rapid.IntRange(0, len(changed)-1).Draw(t, "place")] ^= byte(rapid.IntRange(1, 255).Draw(t, "change"))
			if Stamped(changed) {
				t.Fatalf("%s: known as our own when changed", name)
			}
		})
	}
}

// An independent reader must still accept the picture: it checks the sums of all chunks.
func TestAStampedPictureIsAPicture(t *testing.T) {
	files := inside(t)["PNG"]
	before, err := png.Decode(bytes.NewReader(files[0]))
	if err != nil {
		t.Fatal(err)
	}
	after, err := png.Decode(bytes.NewReader(files[1]))
	if err != nil {
		t.Fatal(err)
	}
	if inktest.Differing(before, after, 0) != 0 {
		t.Error("the picture has changed")
	}
}

// The last line of a PDF is the end that the format demands, and what it says of the place of
// its table still holds.
func TestAStampedDocumentIsADocument(t *testing.T) {
	stamped := inside(t)["PDF"][1]
	var table int
	at := bytes.LastIndex(stamped, []byte("startxref\n"))
	if _, err := fmt.Sscanf(string(stamped[at:]), "startxref\n%d\n%%%%EOF\n", &table); err != nil {
		t.Fatal(err)
	}
	if !bytes.HasPrefix(stamped[table:], []byte("xref\n")) || !bytes.HasSuffix(stamped, []byte("\n%%EOF\n")) {
		t.Errorf("the table is said to be at %d; the file ends %q", table, stamped[at:])
	}
}
