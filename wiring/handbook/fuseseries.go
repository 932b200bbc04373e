package handbook

import (
	"strings"

	"github.com/lugwright/lugwright/wiring/quantity"
)

// FuseSeries is the ratings that one class of fuse is made in.
type FuseSeries struct {
	Name    string // "blade standard"
	Style   string // the word by which a fuse names its class: "blade"
	Ratings []quantity.Ampere
	Status  Status
}

var seriesDefinition = table{
	name:    "fuse_series",
	about:   "ratings that each class of fuse is made in",
	columns: []string{"series", "style", "ratings_A"},
	load: func(t *Tables, s *sheet) {
		t.series = nil
		for _, r := range s.rows {
			series := FuseSeries{Name: r.word("series"), Style: r.word("style"), Status: r.status()}
			for _, a := range r.numbers("ratings_A") {
				series.Ratings = append(series.Ratings, quantity.Ampere(a))
			}
			if _, taken := t.FuseSeries(series.Style); taken {
				r.fail("style", "%s stands twice", series.Style)
			}
			t.series = append(t.series, series)
		}
	},
}

// FuseSeries finds a series by its name or its style, without regard to case. Breakers are
// taken in the standard ratings of NEC 240.6(A).
//
// Source: usual catalogue ratings and NEC 240.6(A); from memory.
func (t *Tables) FuseSeries(nameOrStyle string) (FuseSeries, bool) {
	for _, s := range t.series {
		if strings.EqualFold(s.Name, nameOrStyle) || strings.EqualFold(s.Style, nameOrStyle) {
			return s, true
		}
	}
	return FuseSeries{}, false
}

// AllFuseSeries lists the series as the table has them.
func (t *Tables) AllFuseSeries() []FuseSeries { return append([]FuseSeries(nil), t.series...) }

// Has reports whether a rating is one of the series.
func (s FuseSeries) Has(rating quantity.Ampere) bool {
	up, ok := s.AtLeast(rating)
	return ok && up == rating
}

// AtLeast returns the smallest rating that is not below a current; false if the series
// ends below it.
func (s FuseSeries) AtLeast(amps quantity.Ampere) (quantity.Ampere, bool) {
	for _, r := range s.Ratings {
		if r >= amps {
			return r, true
		}
	}
	return 0, false
}

// AtMost returns the largest rating that is not above a current; false if the series
// begins above it.
func (s FuseSeries) AtMost(amps quantity.Ampere) (quantity.Ampere, bool) {
	for i := len(s.Ratings) - 1; i >= 0; i-- {
		if s.Ratings[i] <= amps {
			return s.Ratings[i], true
		}
	}
	return 0, false
}
