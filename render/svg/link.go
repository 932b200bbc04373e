package svg

import (
	"fmt"
	"strings"

	"github.com/lugwright/lugwright/render/ink"
)

// ID is what a group is called in a file with links: its class and its name, of which
// letters and figures stay and all else is written as its number, "pin-T2_2e_enable". It is
// the same wherever it stands, so that files can lead into each other.
func ID(key string) string {
	class, name, _ := strings.Cut(key, " ")
	var b strings.Builder
	b.WriteString(class)
	b.WriteByte('-')
	for _, r := range name {
		if r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9' || r == '-' {
			b.WriteRune(r)
		} else {
			fmt.Fprintf(&b, "_%x_", r)
		}
	}
	return b.String()
}

// idFor is the id of a group that can be led to: in a file with links, the first one of its
// class and name.
func (r *raw) idFor(g ink.Group) string {
	if r.opt.Link == nil || g.Name == "" || g.Link != "" {
		return ""
	}
	id := ID(g.Key())
	if r.ids[id] {
		return ""
	}
	r.ids[id] = true
	return id
}

// openLink begins a link if it leads anywhere.
func (r *raw) openLink(link string) bool {
	if link == "" || r.opt.Link == nil {
		return false
	}
	to := r.opt.Link(link)
	if to == "" {
		return false
	}
	fmt.Fprintf(r.out, "<a %s>\n", attributes(attr{"href", to}))
	return true
}
