package accessory

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/job"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// draft is the job with the accessory in it.
func (a *adding) draft(rating string, size func(number string) string) ([]byte, error) {
	parts := []string{a.part + ": " + a.device(a.model)}
	if a.control != "" {
		parts = append(parts, a.control+": "+a.switchEntry())
	}
	text, err := job.Insert(a.text,
		job.Insertion{Section: "parts", Lines: parts},
		job.Insertion{Section: "wires", Lines: a.wireLines(size)})
	if err == nil {
		text, err = job.PutFuse(text, a.block.Designation, a.channel.Channel, rating)
	}
	if err != nil {
		return nil, refusef("%s", strings.TrimPrefix(err.Error(), "job: "))
	}
	return text, nil
}

// device is the entry of the part; model is nil while its ratings are not known.
func (a *adding) device(model *wiring.Part) string {
	r := a.request
	entry := "{kind: " + r.Kind
	if model != nil {
		entry += a.rated(model)
	}
	if r.Title != "" {
		entry += ", title: " + Quote(r.Title)
	}
	if r.Critical {
		entry += ", critical: true"
	}
	if r.Place != "" {
		entry += ", place: " + Quote(r.Place)
	}
	return entry + "}"
}

// busVolts is what the current of a device is turned into power with.
const busVolts = 12.5

// rated is the rating that the request gives in the place of the kind's own.
func (a *adding) rated(model *wiring.Part) string {
	watts := float64(a.request.Watts)
	if watts == 0 {
		watts = math.Round(float64(a.request.Amps)*busVolts*10) / 10
	}
	amps := float64(a.request.Amps)
	if amps == 0 {
		amps = math.Round(watts/busVolts*100) / 100
	}
	if watts == 0 {
		return ""
	}
	for _, s := range model.Kind.Ratings {
		switch s.Name {
		case "amps":
			return ", amps: " + quantity.Ampere(amps).String()
		case "power":
			if r := model.Ratings["power"]; r.Pair != nil {
				return fmt.Sprintf(", power: %v at %g V", quantity.Watt(watts), busVolts)
			}
			return ", power: " + quantity.Watt(watts).String()
		}
	}
	return ""
}

func (a *adding) switchEntry() string {
	entry := "{kind: " + a.switchKind()
	title := a.request.Title
	if title == "" {
		title = a.part
	}
	entry += ", title: " + Quote(title)
	place := a.request.SwitchPlace
	if place == "" && a.before.Place("dash") != nil {
		place = "dash"
	}
	if place != "" {
		entry += ", place: " + Quote(place)
	}
	return entry + "}"
}

// wireLines are the wires: to the switch and on, or straight; and back.
func (a *adding) wireLines(size func(string) string) []string {
	r, n := a.request, 0
	next := func(from, to, colour string, length quantity.Amount) string {
		number := a.numbers[n]
		n++
		line := fmt.Sprintf("%s: {from: %s, to: %s, colour: %s, size: %s", number, from, to, colour, size(number))
		if length.Known() {
			line += ", length: " + Quote(length.String())
		}
		return line + "}"
	}
	var lines []string
	feed := a.feed.Ref()
	if a.control != "" {
		lines = append(lines, next(feed, a.control+".in", a.colour, r.SwitchLength))
		feed = a.control + ".out"
	}
	lines = append(lines, next(feed, a.part+"."+a.plus, a.colour, r.Length))
	lines = append(lines, next(a.part+"."+a.minus, a.negative.Ref(), "BK", r.Length))
	for _, t := range a.model.Terminals {
		if t.Form.Type == wiring.Lead && t.Name != a.plus && t.Name != a.minus {
			lines = append(lines, a.part+"."+t.Name+": {to: capped}")
		}
	}
	return lines
}

// Quote puts a text in quotes if YAML could read it otherwise.
func Quote(text string) string {
	if text != "" && !strings.ContainsAny(text, "{}[],#&*!|>'\"%@`:\\\n\r\t") && text == strings.TrimSpace(text) && !strings.ContainsAny(text[:1], "-?") {
		return text
	}
	return strconv.Quote(text)
}
