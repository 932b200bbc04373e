package pdf

import (
	"fmt"
	"strings"

	"github.com/lugwright/lugwright/render/ink"
)

// assemble makes the file of what was drawn.
func (d *Document) assemble() ([]byte, error) {
	out := newFile()
	resources, err := d.putFonts(out)
	if err != nil {
		return nil, err
	}
	a := d.anchors()
	tree := out.reserve()
	pages := make([]ref, len(d.pages))
	for i := range pages {
		pages[i] = out.reserve()
	}
	for i, page := range d.pages {
		content := out.reserve()
		out.stream(content, "", page.content.Bytes())
		out.put(pages[i], fmt.Sprintf("<</Type/Page/Parent %s/MediaBox%s/Resources %s/Contents %s%s>>",
			tree, page.boxInPoints(ink.Rect{Max: ink.At(page.width, page.height)}), resources, content, page.annotations(a, pages)))
	}
	kids := make([]string, len(pages))
	for i, page := range pages {
		kids[i] = page.String()
	}
	out.put(tree, fmt.Sprintf("<</Type/Pages/Count %d/Kids[%s]>>", len(pages), strings.Join(kids, " ")))
	root := out.add(d.catalog(tree, putOutline(out, d.bookmarks(a), pages)))
	return out.finish(root, out.add(d.info())), nil
}

// putFonts writes the faces that are used and the resources that all pages share.
func (d *Document) putFonts(out *file) (ref, error) {
	fonts := ""
	for _, f := range d.fonts {
		if len(f.characters) == 0 {
			continue
		}
		r, err := f.put(out)
		if err != nil {
			return 0, err
		}
		fonts += fmt.Sprintf("%s %s", fontName(f.face), r)
	}
	return out.add("<</Font<<" + fonts + ">>>>"), nil
}

// catalog is the root of the file (7.7.2). Viewers show the bookmarks and the title, and
// offer to print without scaling: lettering has the height that was asked for.
func (d *Document) catalog(pages, outline ref) string {
	return fmt.Sprintf("<</Type/Catalog/Pages %s/Outlines %s/PageMode/UseOutlines/PageLayout/SinglePage/Lang %s"+
		"/ViewerPreferences<</DisplayDocTitle true/PrintScaling/None>>>>", pages, outline, text(d.opt.Language))
}

// producer is the program, without a version: the same sheets are the same file whichever
// version drew them.
const producer = "lugwright"

// info describes the document (14.3.3). Job and Revision are entries of our own.
func (d *Document) info() string {
	var b strings.Builder
	for _, e := range []struct{ key, value string }{
		{"Title", d.opt.Title}, {"Author", d.opt.Author}, {"Subject", d.opt.Subject},
		{"Job", d.opt.Job}, {"Revision", d.opt.Revision}, {"Producer", producer},
	} {
		if value := ink.Clean(e.value); value != "" {
			b.WriteString("/" + e.key + " " + text(value))
		}
	}
	if !d.opt.Made.IsZero() {
		b.WriteString("/CreationDate " + date(d.opt.Made) + "/ModDate " + date(d.opt.Made))
	}
	return "<<" + b.String() + ">>"
}
