package accessory

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/job"
)

// choose finds the channel, the negative, the names and the colour.
func (a *adding) choose() error {
	if a.before.Identity.Kind != wiring.JobLayer {
		return refusef("this is a %s: an accessory is added to a job", a.before.Identity.Kind)
	}
	if err := a.chooseChannel(); err != nil {
		return err
	}
	if err := a.chooseNegative(); err != nil {
		return err
	}
	if err := a.chooseModel(); err != nil {
		return err
	}
	a.part = a.free(a.model.Kind.Letter)
	if a.switchKind() != "none" {
		a.control = a.free("S")
	}
	a.numbers = a.freeWires(3)
	a.colour = a.freeColour()
	return nil
}

// chooseChannel takes the first channel of the first block on which nothing lands.
func (a *adding) chooseChannel() error {
	blocks, free := 0, 0
	var full []string
	for _, p := range a.before.Parts {
		count := 0
		for _, e := range p.Elements {
			f, ok := e.(*wiring.Fuse)
			if !ok || f.Channel == 0 {
				continue
			}
			count++
			t := p.Terminal(strconv.Itoa(f.Channel))
			if t == nil || len(t.Wires) > 0 || a.request.Channel > 0 && a.request.Channel != f.Channel {
				continue
			}
			if free++; a.feed == nil {
				a.block, a.channel, a.feed = p, f, t
			}
		}
		if count > 0 {
			blocks++
			full = append(full, fmt.Sprintf("all %d channels of %s are taken", count, p.Designation))
		}
	}
	switch {
	case a.feed != nil:
		return nil
	case blocks == 0:
		return refusef("the cart has no fuse block")
	case a.request.Channel > 0:
		return refusef("channel %d is taken or not there", a.request.Channel)
	}
	return refusef("no fused channel is free: %s", strings.Join(full, ", "))
}

// chooseNegative takes the point negative-12v, if it has room.
func (a *adding) chooseNegative() error {
	p, ok := a.before.Point("negative-12v")
	if !ok || p.Terminal == nil {
		return refusef("the cart has no point negative-12v: say in the job where negatives of 12 V land: points: {negative-12v: A1.n}")
	}
	if len(p.Terminal.Wires) >= p.Terminal.Holds {
		return refusef("no negative is free: %s holds %d wires and has %d", p.Terminal.Ref(), p.Terminal.Holds, len(p.Terminal.Wires))
	}
	a.negative = p.Terminal
	return nil
}

// chooseModel builds the device alone, to see its terminals.
func (a *adding) chooseModel() error {
	const probe = "X9999" // beyond what anybody numbers
	text, err := job.Insert(a.text, job.Insertion{Section: "parts", Lines: []string{probe + ": " + a.device(nil)}})
	if err != nil {
		return refusef("%s", strings.TrimPrefix(err.Error(), "job: "))
	}
	h, err := read(a.load, text)
	if err != nil {
		return err
	}
	a.model = h.Part(probe)
	for _, e := range a.model.Elements {
		l, ok := e.(*wiring.Load)
		if !ok {
			continue
		}
		plus, minus := terminalAt(a.model, l.A), terminalAt(a.model, l.B)
		if plus != nil && minus != nil {
			a.plus, a.minus = plus.Name, minus.Name
			return nil
		}
	}
	return refusef("a %s is no accessory: it has no consumer between two terminals of its own", a.request.Kind)
}

func terminalAt(p *wiring.Part, n wiring.NodeID) *wiring.Terminal {
	for _, t := range p.Terminals {
		if t.Node == n && t.Form.Type != wiring.Port {
			return t
		}
	}
	return nil
}

// switchKind is the kind of the switch, "none" for a device that has one itself, a button
// for a horn.
func (a *adding) switchKind() string {
	if a.request.Switch != "" {
		return a.request.Switch
	}
	for _, c := range a.model.Controls {
		if c.Name == "switch" || c.Name == "button" {
			return "none"
		}
	}
	if a.model.Kind.Symbol == "horn" { // sounds while a hand is on it
		return "push-button"
	}
	return "rocker"
}

// taken reports whether a name belongs to a part or wire, gone ones among them.
func (a *adding) taken(name string) bool {
	h := a.before
	if h.Part(name) != nil || h.Wire(name) != nil {
		return true
	}
	return slices.ContainsFunc(h.Before, func(p wiring.RemovedPart) bool { return strings.EqualFold(p.Part.Designation, name) }) ||
		slices.ContainsFunc(h.BeforeWires, func(w wiring.RemovedWire) bool { return strings.EqualFold(w.Wire.Number, name) })
}

// free is the first free designation of a letter.
func (a *adding) free(letter string) string {
	for n := 1; ; n++ {
		if name := letter + strconv.Itoa(n); !a.taken(name) {
			return name
		}
	}
}

// The numbers of a job's own wires begin at 70, by custom.
const firstWire = 70

func (a *adding) freeWires(count int) []string {
	var all []string
	for n := firstWire; len(all) < count; n++ {
		if name := "W" + strconv.Itoa(n); !a.taken(name) {
			all = append(all, name)
		}
	}
	return all
}

// colours are tried in this order for the positive: red, yellow and orange are common on
// the supply side, black is the negative.
var colours = []string{"OG", "VT", "BU", "GN", "BN", "WH", "GY", "PK", "TQ",
	"OG/BK", "VT/WH", "BU/WH", "GN/WH", "BN/WH", "WH/BK", "GY/BK", "PK/BK", "TQ/BK"}

// freeColour is the first that no wire on the block has, so that channels can be told apart.
func (a *adding) freeColour() string {
	used := map[string]bool{}
	for _, t := range a.block.Terminals {
		for _, w := range t.Wires {
			for _, p := range w.Pieces {
				used[p.Colour.String()] = true
			}
		}
	}
	for _, c := range colours {
		if !used[c] {
			return c
		}
	}
	return colours[0]
}
