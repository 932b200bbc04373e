package pdf

import (
	"fmt"

	"github.com/lugwright/lugwright/render/ink"
)

// bookmark is an entry of the outline (12.3.3), with those below it.
type bookmark struct {
	title string
	to    place
	below []bookmark
}

// bookmarks lists the pages, and then the indexes that have something to list.
func (d *Document) bookmarks(a anchors) []bookmark {
	var all []bookmark
	for _, page := range d.pages {
		title := page.title
		if title == "" {
			title = fmt.Sprintf("page %d", page.number+1)
		}
		all = append(all, bookmark{title: title, to: place{page: page}})
	}
	for _, index := range d.opt.Indexes {
		var below []bookmark
		for _, key := range a.order {
			if to := a.of[key]; to.group.Class == index.Class {
				below = append(below, bookmark{title: ink.Clean(to.group.Name), to: to})
			}
		}
		if below != nil {
			all = append(all, bookmark{title: ink.Clean(index.Title), to: below[0].to, below: below})
		}
	}
	return all
}

// putOutline writes the bookmarks and returns the number of their root.
func putOutline(out *file, all []bookmark, pages []ref) ref {
	root := out.reserve()
	first, last := putBookmarks(out, all, root, pages)
	out.put(root, fmt.Sprintf("<</Type/Outlines/First %s/Last %s/Count %d>>", first, last, len(all)))
	return root
}

// putBookmarks writes bookmarks of one level and those below, and returns the numbers of
// the first and the last. What is below begins closed: its count is negative.
func putBookmarks(out *file, list []bookmark, parent ref, pages []ref) (first, last ref) {
	refs := make([]ref, len(list))
	for i := range list {
		refs[i] = out.reserve()
	}
	for i, b := range list {
		entry := fmt.Sprintf("<</Title %s/Parent %s/Dest%s", text(b.title), parent, b.to.destination(pages))
		if i > 0 {
			entry += fmt.Sprintf("/Prev %s", refs[i-1])
		}
		if i < len(list)-1 {
			entry += fmt.Sprintf("/Next %s", refs[i+1])
		}
		if len(b.below) > 0 {
			from, to := putBookmarks(out, b.below, refs[i], pages)
			entry += fmt.Sprintf("/First %s/Last %s/Count %d", from, to, -len(b.below))
		}
		out.put(refs[i], entry+">>")
	}
	return refs[0], refs[len(refs)-1]
}
