package report

import (
	"cmp"
	"slices"
	"strings"

	"github.com/lugwright/lugwright/wiring/meter"
	"github.com/lugwright/lugwright/wiring/path"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// liveGroup is the live places that the same things stand before.
type liveGroup struct {
	title     string // "G1.+ through F1 and F11"
	names     []string
	low, high quantity.Volt
	supply    int // place of its supply among those that come up
	behind    int // how many things it stands behind
}

// volts is what the places of a group read: "52.8", or "50.1 to 52.8".
func (g liveGroup) volts() string {
	low, high := meter.Tenths(g.low), meter.Tenths(g.high)
	if low == high {
		return high
	}
	return low + " to " + high
}

// liveGroups puts live places together by what stands between them and their supply.
func liveGroups(b *meter.Bench, s *meter.Sheet) []liveGroup {
	var all []liveGroup
	order := map[string]int{} // of supplies, as they come up
	for _, l := range s.Live() {
		title := behindWhat(b, l.Feed)
		i := slices.IndexFunc(all, func(g liveGroup) bool { return g.title == title })
		if i < 0 {
			i = len(all)
			begin := b.Name(l.Feed.Begin)
			if _, known := order[begin]; !known {
				order[begin] = len(order)
			}
			all = append(all, liveGroup{
				title: title, low: l.Reading.Volts, high: l.Reading.Volts,
				supply: order[begin], behind: len(l.Feed.Elements(^(path.Wire | path.Link))),
			})
		}
		g := &all[i]
		g.names = append(g.names, oneLine(l.Name))
		g.low, g.high = min(g.low, l.Reading.Volts), max(g.high, l.Reading.Volts)
	}
	slices.SortStableFunc(all, func(a, b liveGroup) int {
		return cmp.Or(a.supply-b.supply, a.behind-b.behind)
	})
	return all
}

// behindWhat names the supply of a feed and what it passes besides copper.
func behindWhat(b *meter.Bench, feed path.Path) string {
	words, begin := breaker{b}, b.Name(feed.Begin)
	var passed []string
	for _, e := range feed.Elements(^(path.Wire | path.Link)) {
		if name := words.elementName(e); len(passed) == 0 || passed[len(passed)-1] != name {
			passed = append(passed, name)
		}
	}
	if passed == nil {
		return oneLine(begin + " directly")
	}
	return oneLine(begin + " through " + strings.Join(passed, ", "))
}
