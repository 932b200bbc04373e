package kind

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/source"
)

// ratingSpec is one parameter of a kind.
type ratingSpec struct {
	name   string
	needed bool
	isMap  bool
	value  *source.Node // the default; nil if needed
}

const (
	neededWord = "needed"
	noneWord   = "none" // unsets a channel
)

func (r *reader) readRatings(n *source.Node) {
	if n == nil {
		return
	}
	for _, e := range r.entries(n, "ratings", "{amps: 10 A}") {
		if slices.Contains(PartKeys, e.Key.Text) {
			r.fault(e.Key, "rating "+e.Key.Text+" is a key that every part has", "Give the rating another name")
			continue
		}
		r.checkName(e.Key, "rating")
		spec := ratingSpec{name: e.Key.Text, value: e.Value}
		switch {
		case e.Value.Kind == source.Null:
			continue
		case e.Value.Kind == source.List:
			r.fault(e.Value, "rating "+spec.name+" is one quantity, or {} for one by channel number")
			continue
		case e.Value.Kind == source.Map:
			spec.isMap = true
		case e.Value.Text == neededWord && !e.Value.Quoted:
			spec.needed, spec.value = true, nil
		}
		r.setRating(spec)
	}
}

// setRating adds a parameter, or replaces the one of that name which `like` brought.
func (r *reader) setRating(spec ratingSpec) {
	public := wiring.RatingSpec{Name: spec.name, Needed: spec.needed, Map: spec.isMap}
	if spec.value != nil && !spec.isMap {
		public.Default = spec.value.Text
	}
	for i := range r.d.ratings {
		if r.d.ratings[i].name == spec.name {
			r.d.ratings[i], r.d.Kind.Ratings[i] = spec, public
			return
		}
	}
	r.d.ratings = append(r.d.ratings, spec)
	r.d.Kind.Ratings = append(r.d.Kind.Ratings, public)
}

// rate fills the part's ratings from what the layers gave and the kind's defaults.
func (b *builder) rate(given Given) {
	b.part.Ratings = map[string]wiring.Rating{}
	for _, e := range given.ratings {
		if _, ok := b.d.Rating(e.Key.Text); !ok {
			b.unknownRating(e.Key)
		}
	}
	for _, spec := range b.d.ratings {
		value, own := spec.value, false
		if e, ok := given.rating(spec.name); ok {
			value, own = e.Value, true
			b.part.Where[spec.name] = value.Span
		}
		switch {
		case value == nil:
			b.missing(spec)
		case value.Kind == source.Null: // reported by the file's reader
		case spec.isMap:
			b.rateMap(spec, value, own)
		default:
			b.rateOne(spec, value, own)
		}
	}
}

func (b *builder) unknownRating(key *source.Node) {
	names := b.d.RatingNames()
	has := "it has no ratings"
	if len(names) > 0 {
		has = "it has " + strings.Join(names, ", ")
	}
	var advice []string
	if s := source.Suggest(key.Text, append(slices.Clone(PartKeys), names...)); s != "" {
		advice = append(advice, "Did you mean "+s+"?")
	}
	b.fault(key, fmt.Sprintf("%s: %s has no rating %s: %s", b.part.Designation, article(b.d.Name), key.Text, has), advice...)
}

func (b *builder) missing(spec ratingSpec) {
	message := fmt.Sprintf("%s: %s needs %s", b.part.Designation, article(b.d.Name), spec.name)
	if example := b.d.uses[spec.name].example(); example != "" {
		message += fmt.Sprintf(", for example %s: %s", spec.name, example)
	}
	b.findings = append(b.findings, source.Fault(b.part.At, message))
}

// rateOne reads a rating as what it is used for.
func (b *builder) rateOne(spec ratingSpec, value *source.Node, own bool) {
	if value.Kind != source.Scalar {
		b.fault(value, fmt.Sprintf("%s: %s is one value, not a list or a map", b.part.Designation, spec.name))
		return
	}
	rating, err := b.d.uses[spec.name].read(value.Text)
	if err != nil {
		if own { // a wrong default was reported when the kind was read
			b.fault(value, spec.name+" "+err.Error())
		}
		return
	}
	if own {
		rating.At = value.Span
	}
	b.part.Ratings[spec.name] = rating
}

// rateMap reads a rating by channel. What it says of channels that the part does not have
// is looked at when the elements are made.
func (b *builder) rateMap(spec ratingSpec, value *source.Node, own bool) {
	if value.Kind != source.Map {
		b.fault(value, fmt.Sprintf("%s: %s is a map by channel number, such as %s: {1: %s}",
			b.part.Designation, spec.name, spec.name, b.d.uses[spec.name].example()))
		return
	}
	rating := wiring.Rating{Channel: map[int]quantity.Amount{}}
	if own {
		rating.At = value.Span
	}
	c := &channelReader{builder: b, spec: spec, u: b.d.uses[spec.name], rating: &rating, auto: map[int]bool{}, own: own}
	for _, e := range value.Entries {
		if e.Value.Kind != source.Null {
			c.entry(e)
		}
	}
	b.part.Ratings[spec.name] = rating
	b.auto[spec.name] = c.auto
	b.mapKeys = append(b.mapKeys, mapKey{spec.name, value})
}

// channelReader reads the entries of a rating by channel.
type channelReader struct {
	*builder
	spec   ratingSpec
	u      use
	rating *wiring.Rating
	auto   map[int]bool
	own    bool
}

func (c *channelReader) entry(e source.Entry) {
	channels, ok := channelsOf(e.Key.Text)
	if !ok {
		c.fault(e.Key, fmt.Sprintf("%s: %s is no channel number of %s", c.part.Designation, e.Key.Text, c.spec.name))
		return
	}
	if e.Value.Kind != source.Scalar {
		c.fault(e.Value, fmt.Sprintf("%s: %s %s is one value", c.part.Designation, c.spec.name, e.Key.Text))
		return
	}
	value := wiring.Rating{}
	none := strings.EqualFold(e.Value.Text, noneWord)
	if !none {
		var err error
		if value, err = c.u.read(e.Value.Text); err != nil {
			c.fault(e.Value, fmt.Sprintf("%s %s %s", c.spec.name, e.Key.Text, err))
			return
		}
	}
	for _, n := range channels {
		delete(c.rating.Channel, n)
		c.auto[n] = value.Word == autoWord
		if value.Amount.Known() {
			c.rating.Channel[n] = value.Amount
		}
		if c.own {
			c.part.Where[c.spec.name+"."+strconv.Itoa(n)] = e.Value.Span
		}
	}
}

// channelsOf reads the key of a rating by channel: a number, or a range of them.
func channelsOf(text string) ([]int, bool) {
	members, ok := source.Expand(text)
	if !ok {
		return nil, false
	}
	channels := make([]int, len(members))
	for i, m := range members {
		n, err := quantity.ParseCount(m)
		if err != nil || n < 1 {
			return nil, false
		}
		channels[i] = n
	}
	return channels, true
}

// mapKey is a map rating with the node that gave it, to check its channel numbers when
// the elements are known.
type mapKey struct {
	name string
	node *source.Node
}

// checkChannels reports entries of map ratings for channels that the part does not have.
func (b *builder) checkChannels() {
	for _, k := range b.mapKeys {
		most, used := b.channels[k.name]
		for _, e := range k.node.Entries {
			channels, ok := channelsOf(e.Key.Text)
			if !ok || !used || channels[len(channels)-1] <= most {
				continue
			}
			b.fault(e.Key, fmt.Sprintf("%s: this %s has no channel %d: it has %d",
				b.part.Designation, b.d.Name, channels[len(channels)-1], most))
		}
	}
}
