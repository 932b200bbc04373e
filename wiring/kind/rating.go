package kind

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
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

func (r *reader) readRatings(n *source.Node) {
	if n == nil {
		return
	}
	for _, e := range n.Entries {
		spec := ratingSpec{name: e.Key.Text, value: e.Value}
		switch {
		case slices.Contains(PartKeys, spec.name):
			r.fault(e.Key, "rating "+spec.name+" is a key that every part has", "Give the rating another name")
			continue
		case e.Value.Kind == source.Map:
			spec.isMap = true
		case e.Value.Kind == source.List:
			r.fault(e.Value, "rating "+spec.name+" is one quantity, or {} for one by channel number")
			continue
		case e.Value.Text == "needed" && !e.Value.Quoted:
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
		}
		switch {
		case value == nil || value.Kind == source.Null:
			b.missing(spec)
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
	message := fmt.Sprintf("%s: %s has no rating %s: %s", b.part.Designation, article(b.d.Name), key.Text, has)
	var advice []string
	if s := source.Suggest(key.Text, append(slices.Clone(PartKeys), names...)); s != "" {
		advice = append(advice, "Did you mean "+s+"?")
	}
	b.fault(key.Span, message, advice...)
}

func (b *builder) missing(spec ratingSpec) {
	if !spec.needed {
		return
	}
	b.fault(b.part.At, fmt.Sprintf("%s: %s needs %s, for example %s: %s",
		b.part.Designation, article(b.d.Name), spec.name, spec.name, b.d.uses[spec.name].example()))
}

// rateOne reads a rating as what it is used for; one that nothing uses is taken as a
// quantity if it is one, else as a word.
func (b *builder) rateOne(spec ratingSpec, value *source.Node, own bool) {
	rating := wiring.Rating{Word: value.Text}
	if own {
		rating.At = value.Span
		b.part.Where[spec.name] = value.Span
	}
	if value.Kind != source.Scalar {
		b.fault(value.Span, fmt.Sprintf("%s: %s is one value", b.part.Designation, spec.name))
		return
	}
	u := b.d.uses[spec.name]
	if !u.known {
		guessRating(&rating, value.Text)
	} else if err := readRating(&rating, value.Text, u); err != nil {
		b.fault(value.Span, spec.name+" "+err.Error())
	}
	b.part.Ratings[spec.name] = rating
}

func (b *builder) rateMap(spec ratingSpec, value *source.Node, own bool) {
	rating := wiring.Rating{Channel: map[int]quantity.Amount{}}
	if own {
		rating.At = value.Span
		b.part.Where[spec.name] = value.Span
	}
	if value.Kind != source.Map {
		b.fault(value.Span, fmt.Sprintf("%s: %s is a map by channel number, such as %s: {1: %s}",
			b.part.Designation, spec.name, spec.name, b.d.uses[spec.name].example()))
		return
	}
	for _, e := range value.Entries {
		n, err := strconv.Atoi(e.Key.Text)
		if err != nil || n < 1 {
			b.fault(e.Key.Span, fmt.Sprintf("%s: %s is no channel number of %s", b.part.Designation, e.Key.Text, spec.name))
			continue
		}
		if strings.EqualFold(e.Value.Text, "none") || e.Value.Kind == source.Null {
			continue
		}
		if strings.EqualFold(e.Value.Text, "auto") {
			b.auto[n] = true
			continue
		}
		a, err := quantity.Parse(e.Value.Text, b.d.uses[spec.name].dim)
		if err != nil {
			b.fault(e.Value.Span, fmt.Sprintf("%s %d: %s", spec.name, n, err))
			continue
		}
		rating.Channel[n] = a
		if own {
			b.part.Where[spec.name+"."+strconv.Itoa(n)] = e.Value.Span
		}
	}
	b.part.Ratings[spec.name] = rating
	b.mapKeys = append(b.mapKeys, mapKey{spec.name, value})
}

// readRating reads a rating's text as what it is used for.
func readRating(r *wiring.Rating, text string, u use) (err error) {
	if strings.EqualFold(text, "auto") && u.shape == aQuantity && u.dim == quantity.Current {
		return nil
	}
	switch u.shape {
	case aQuantity:
		r.Amount, err = quantity.Parse(text, u.dim)
	case quantityAt:
		if pair, perr := quantity.ParsePair(text, u.dim, quantity.Voltage, quantity.At); perr == nil {
			r.Pair = &pair
			return nil
		}
		r.Amount, err = quantity.Parse(text, u.dim)
	case atPair:
		r.Pair, err = parsePair(text, u.dim, quantity.Voltage, quantity.At)
	case forPair:
		r.Pair, err = parsePair(text, u.dim, quantity.Time, quantity.For)
	case aBand:
		r.Pair, err = parsePair(text, quantity.Voltage, quantity.Voltage, quantity.To)
	case aCount:
		r.Count, err = quantity.ParseCount(text)
	}
	return err
}

// guessRating reads a text that nothing says the use of.
func guessRating(r *wiring.Rating, text string) {
	if a, err := quantity.ParseAny(text); err == nil {
		r.Amount = a
	} else if n, err := quantity.ParseCount(text); err == nil {
		r.Count = n
	}
}

func parsePair(text string, first, second quantity.Dimension, j quantity.Joint) (*quantity.Pair, error) {
	p, err := quantity.ParsePair(text, first, second, j)
	if err != nil {
		return nil, err
	}
	return &p, nil
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
		most := b.channels[k.name]
		for _, e := range k.node.Entries {
			if n, err := strconv.Atoi(e.Key.Text); err == nil && n > most {
				b.fault(e.Key.Span, fmt.Sprintf("%s: %s has no channel %d: it has %d",
					b.part.Designation, article(b.d.Name), n, most))
			}
		}
	}
}

func (b *builder) fault(at diag.Span, message string, advice ...string) {
	b.findings = append(b.findings, source.Fault(at, message, advice...))
}
