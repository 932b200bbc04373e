package report

import (
	_ "embed"
	"io"
	"math"
	"slices"

	"github.com/lugwright/lugwright/wiring/figure"
	"github.com/lugwright/lugwright/wiring/quantity"
)

const (
	headroomFormat  = "lugwright headroom"
	headroomVersion = 1
)

//go:embed headroom.schema.json
var headroomSchema []byte

// HeadroomSchema returns the JSON Schema (draft 2020-12) of what [HeadroomJSON] writes.
func HeadroomSchema() []byte { return slices.Clone(headroomSchema) }

type jsonHeadroom struct {
	Format    string         `json:"format"`
	Version   int            `json:"version"`
	Program   jsonProgram    `json:"program"`
	Job       jsonJobName    `json:"job"`
	State     string         `json:"state,omitempty"`
	Reducers  []jsonRoom     `json:"reducers"`
	Blocks    []jsonBlock    `json:"fuseBlocks"`
	Negatives []jsonLandings `json:"negatives"`
	Packs     []jsonRoom     `json:"packs"`
	Lights    *float64       `json:"standingHours,omitempty"`
	Parked    *float64       `json:"parkedDays,omitempty"`
	Charge    *float64       `json:"chargeHours,omitempty"`
	Unknown   []string       `json:"unknown"`
}

type jsonRoom struct {
	Name  string   `json:"name"`
	Limit float64  `json:"limitAmps,omitempty"`
	Amps  float64  `json:"amps"`
	Peak  float64  `json:"peakAmps,omitempty"`
	Left  *float64 `json:"leftAmps"`
}

type jsonBlock struct {
	Part     string        `json:"part"`
	Channels []jsonChannel `json:"channels"`
	Feeds    []jsonRoom    `json:"feeds"`
}

type jsonChannel struct {
	Number int      `json:"number"`
	Fuse   *float64 `json:"fuseAmps"`
	Free   bool     `json:"free"`
	Amps   float64  `json:"amps"`
	Left   *float64 `json:"leftAmps"`
}

type jsonLandings struct {
	Terminal string `json:"terminal"`
	Holds    int    `json:"holds"`
	Free     int    `json:"free"`
}

// HeadroomJSON writes what is left for a program. The shape is described by
// headroom.schema.json beside this file. The error is that of w.
func HeadroomJSON(w io.Writer, r Headroom) error {
	doc := jsonHeadroom{
		Format: headroomFormat, Version: headroomVersion, Program: jsonProgram{Name: "lugwright", Version: r.Version},
		Job:      jsonJobName{File: r.File, Number: r.Harness.Identity.Number},
		Reducers: []jsonRoom{}, Blocks: []jsonBlock{}, Negatives: []jsonLandings{}, Packs: []jsonRoom{},
		Unknown: append([]string{}, r.Unknown...),
	}
	if r.State != nil {
		doc.State = r.State.Name
	}
	for _, x := range r.Reducers {
		doc.Reducers = append(doc.Reducers, jsonRoom{x.Converter.Ref(), amount(x.Limit), amount(x.Continuous), amount(x.Peak), rest(x.Left())})
	}
	for _, b := range r.Blocks {
		doc.Blocks = append(doc.Blocks, jsonBlockOf(b))
	}
	for _, n := range r.Negatives {
		doc.Negatives = append(doc.Negatives, jsonLandings{n.Terminal.Ref(), n.Terminal.Holds, n.Free()})
	}
	for _, x := range r.Packs {
		doc.Packs = append(doc.Packs, jsonRoom{x.Source.Base().Part.Designation, amount(x.Continuous), amount(x.Amps), amount(x.Peak.Amps), rest(x.Left())})
	}
	if r.Lights != nil {
		doc.Lights = finite(r.Lights.Hours())
	}
	if r.Parked != nil {
		doc.Parked = finite(r.Parked.Days())
	}
	if r.Charge != nil {
		doc.Charge = finite(float64(r.Charge.Total()) / 3600)
	}
	return writeJSON(w, doc)
}

func jsonBlockOf(b figure.BlockRoom) jsonBlock {
	one := jsonBlock{Part: b.Part.Designation, Channels: []jsonChannel{}, Feeds: []jsonRoom{}}
	for _, k := range b.Channels {
		c := jsonChannel{Number: k.Number, Free: k.Free(), Amps: amount(k.Amps), Left: rest(k.Left())}
		if k.Fuse.Fitted {
			c.Fuse = thousandths(float64(k.Fuse.Rating))
		}
		one.Channels = append(one.Channels, c)
	}
	for _, f := range b.Feeds {
		one.Feeds = append(one.Feeds, jsonRoom{Name: f.Terminal.Ref(), Limit: amount(f.Limit), Amps: amount(f.Amps), Left: rest(f.Left())})
	}
	return one
}

func amount(a quantity.Ampere) float64 { return *thousandths(float64(a)) }

// rest is null where a limit is not stated.
func rest(a quantity.Ampere, known bool) *float64 {
	if !known {
		return nil
	}
	return thousandths(float64(a))
}

// finite leaves out what never ends, which JSON cannot say.
func finite(v float64) *float64 {
	if math.IsInf(v, 0) || math.IsNaN(v) {
		return nil
	}
	return thousandths(v)
}
