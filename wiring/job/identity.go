package job

import (
	"fmt"
	"time"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/source"
)

// identity fills the title block from the file that was asked for, and the shop from its
// own file. Revisions of a job below come before those of the job on top.
func (r *reading) identity() {
	top := r.top()
	id := &r.h.Identity
	id.Kind, id.At, id.About = top.Kind, top.At, top.About
	id.Number, id.Title = top.Title, top.Title
	for key, text := range map[string]*string{
		"title": &id.Title, "cart": &id.Cart, "customer": &id.Customer, "by": &id.By, "approved": &id.Approved,
	} {
		if n := top.get(key); n != nil {
			*text = r.text(n, key)
		}
	}
	at := map[string]int{}
	for _, l := range r.layers {
		if l.Kind == wiring.ShopLayer {
			r.shop(l)
		}
		r.revisions(l, at)
	}
}

func (r *reading) shop(l *layer) {
	s := &r.h.Shop
	s.Name = l.Title
	if n := l.get("address"); n != nil {
		s.Address = r.text(n, "address")
	}
	if n := l.get("phone"); n != nil {
		s.Phone = r.text(n, "phone")
	}
}

// revisions takes each revision whole: a later layer's of the same index replaces it.
func (r *reading) revisions(l *layer, at map[string]int) {
	r.eachNamed(l, "revisions", func(_ *layer, e source.Entry) { r.putRevision(r.revision(e), at) })
}

func (r *reading) putRevision(rev wiring.Revision, at map[string]int) {
	key := wiring.Fold(rev.Index)
	if i, ok := at[key]; ok {
		r.h.Identity.History[i] = rev
		return
	}
	at[key] = len(r.h.Identity.History)
	r.h.Identity.History = append(r.h.Identity.History, rev)
}

func (r *reading) revision(e source.Entry) wiring.Revision {
	rev := wiring.Revision{Index: e.Key.Text, At: e.Key.Span}
	f := r.fields(e.Value, revisionKeys, "in revision "+rev.Index)
	for key, text := range map[string]*string{"date": &rev.Date, "by": &rev.By, "note": &rev.Note} {
		if v, ok := f[key]; ok {
			*text = r.text(v.Value, key)
		}
	}
	if v, ok := f["date"]; ok && rev.Date != "" {
		if _, err := time.Parse(time.DateOnly, rev.Date); err != nil {
			r.fault(v.Value.Span, fmt.Sprintf("date %s is no day of the calendar", rev.Date), "Write year, month and day: 2026-03-02")
		}
	}
	return rev
}
