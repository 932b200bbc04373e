package difference

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// The keys of facts that are more than one word.
const (
	fuseKey   = "fuse "   // and its number in the block, or its name
	ratingKey = "rating " // and the name of the rating
	leadKey   = "lead "   // and the name of the terminal
)

func partOf(p *wiring.Part) Part {
	out := Part{Name: p.Designation, Kind: p.Kind.Name}
	out.Facts = facts(
		Fact{"always-on", Word(p.AlwaysOn)},
		Fact{"critical", Word(map[bool]string{true: "yes"}[p.Critical])},
		Fact{"note", Word(p.Note)},
		Fact{"place", Word(p.Place)},
		Fact{"serial", Word(p.Serial)},
		Fact{"title", Word(p.Title)},
	)
	fuses := fuseFacts(p)
	out.Facts = append(out.Facts, fuses...)
	out.Facts = append(out.Facts, ratingFacts(p, len(fuses) > 0)...)
	out.Facts = append(out.Facts, leadFacts(p)...)
	sortFacts(out.Facts)
	return out
}

func sortFacts(all []Fact) {
	slices.SortFunc(all, func(a, b Fact) int { return strings.Compare(a.Key, b.Key) })
}

// fuseFacts lists the fuses of a part that are fitted.
func fuseFacts(p *wiring.Part) []Fact {
	var all []Fact
	for _, e := range p.Elements {
		f, ok := e.(*wiring.Fuse)
		if !ok || !f.Fitted {
			continue
		}
		key := fuseKey + f.Name
		if f.Channel > 0 {
			key = fuseKey + strconv.Itoa(f.Channel)
		}
		size := Value{f.Rating.String(), f.Rating.String()}
		if f.Auto {
			size = Word("auto")
		}
		all = append(all, Fact{key, size})
	}
	return all
}

// ratingFacts lists the ratings of a part, without those that its fuses say already.
func ratingFacts(p *wiring.Part, fused bool) []Fact {
	var all []Fact
	for name, r := range p.Ratings {
		if fused && (name == "rating" || r.Channel != nil) {
			continue
		}
		all = append(all, Fact{ratingKey + name, ratingValue(r)})
	}
	sortFacts(all)
	return facts(all...)
}

func ratingValue(r wiring.Rating) Value {
	switch {
	case r.Pair != nil:
		return Value{r.Pair.String(), exactly(r.Pair.First) + " " + string(r.Pair.Joint) + " " + exactly(r.Pair.Second)}
	case r.Amount.Known():
		return amountValue(r.Amount)
	case r.Channel != nil:
		return channelValue(r.Channel)
	case r.Word != "":
		return Word(r.Word)
	case r.Count != 0:
		return Word(strconv.Itoa(r.Count))
	}
	return Value{}
}

func channelValue(by map[int]quantity.Amount) Value {
	var numbers []int
	for n := range by {
		numbers = append(numbers, n)
	}
	slices.Sort(numbers)
	var texts, exact []string
	for _, n := range numbers {
		texts = append(texts, fmt.Sprintf("%d: %v", n, by[n]))
		exact = append(exact, fmt.Sprintf("%d: %s", n, exactly(by[n])))
	}
	return Value{strings.Join(texts, ", "), strings.Join(exact, ", ")}
}

// leadFacts lists what the leads of a part are.
func leadFacts(p *wiring.Part) []Fact {
	var all []Fact
	for _, t := range p.Terminals {
		if l := t.Lead; l != nil {
			v := joined(Word(l.Colour.String()), Word(l.Size.String()), amountValue(l.Length), Word(l.Lug))
			all = append(all, Fact{leadKey + t.Name, v})
		}
	}
	return facts(all...)
}

// joined sets values behind each other, without those that say nothing.
func joined(all ...Value) Value {
	var texts, exact []string
	for _, v := range all {
		if v.Text != "" {
			texts, exact = append(texts, v.Text), append(exact, v.Exact)
		}
	}
	return Value{strings.Join(texts, " "), strings.Join(exact, " ")}
}

func amountValue(a quantity.Amount) Value {
	if !a.Known() {
		return Value{}
	}
	return Value{a.String(), exactly(a)}
}

// exactly is an amount in the unit of its dimension, to nine digits: enough to tell all
// lengths and ratings of the trade apart, and few enough for 48 in and 4 ft to be one.
func exactly(a quantity.Amount) string {
	text := strconv.FormatFloat(a.Value, 'g', 9, 64)
	if a.About {
		return "about " + text
	}
	return text
}
