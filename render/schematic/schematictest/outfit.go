package schematictest

import (
	"fmt"
	"math/rand/v2"
	"strings"
)

// outfit is the accessories of a variant as they are added, channel by channel.
type outfit struct {
	r            *rand.Rand
	long         bool // titles as wordy as a customer writes them
	colourful    bool
	spare        string
	fuses        []string
	addons       []string
	parts, wires strings.Builder
	wire         int
}

// accessories are the ways to use a channel.
var accessories = []func(g *outfit, c int){
	(*outfit).lamp, (*outfit).pair, (*outfit).horn, (*outfit).outlet, (*outfit).soundBar,
	(*outfit).fans, (*outfit).socket, (*outfit).relayed, (*outfit).tracker, (*outfit).workLight, (*outfit).flasher,
}

// fit puts an accessory on a channel.
func (g *outfit) fit(c int) {
	g.fuses = append(g.fuses, fmt.Sprintf("%d: %d A", c, []int{5, 10, 15}[g.r.IntN(3)]))
	accessories[g.r.IntN(len(accessories))](g, c)
}

func (g *outfit) part(format string, args ...any) { fmt.Fprintf(&g.parts, "  "+format+"\n", args...) }

// join adds a wire of a random colour and size.
func (g *outfit) join(from, to string) {
	g.wire++
	fmt.Fprintf(&g.wires, "  W%d: {from: %s, to: %s, colour: %s, size: %d AWG, length: 4 ft}\n", 200+g.wire, from, to, g.colour(), 18-2*g.r.IntN(3))
}

// lead adds a wire that comes with one of the parts.
func (g *outfit) lead(from, to string) {
	g.wire++
	fmt.Fprintf(&g.wires, "  W%d: {from: %s, to: %s}\n", 200+g.wire, from, to)
}

var bases = []string{"BK", "BN", "RD", "OG", "YE", "GN", "BU", "VT", "GY", "WH", "PK", "TQ"}

func (g *outfit) colour() string {
	base := bases[g.r.IntN(len(bases))]
	if g.colourful && g.r.IntN(2) == 0 {
		tracer := bases[g.r.IntN(len(bases))]
		if text := base + "/" + tracer; tracer != base && text != "GN/YE" && text != "YE/GN" { // protective earth is written GNYE
			return text
		}
	}
	return base
}

// title is what the customer calls a thing.
func (g *outfit) title(short string) string {
	if g.long {
		return short + " for the grounds crew at the lower pump house"
	}
	return short
}

func (g *outfit) lamp(c int) {
	g.part("S2%02d: {kind: rocker, title: %s, place: dash}", c, g.title("lights"))
	g.part("E2%02d: {kind: light-bar, power: 60 W, place: front}", c)
	g.join(fmt.Sprintf("A1.%d", c), fmt.Sprintf("S2%02d.in", c))
	g.join(fmt.Sprintf("S2%02d.out", c), fmt.Sprintf("E2%02d.+", c))
	g.join(fmt.Sprintf("E2%02d.-", c), "A1.n")
}

func (g *outfit) pair(c int) {
	g.part("S2%02d: {kind: rocker, title: %s, place: dash}", c, g.title("head lamps"))
	g.part("X2%02d: {kind: splice, title: head lamps, place: front}", c)
	g.part("E2%02d: {kind: lamp, title: head lamp, place: front}", c)
	g.part("E3%02d: {kind: lamp, title: head lamp, place: front}", c)
	g.join(fmt.Sprintf("A1.%d", c), fmt.Sprintf("S2%02d.in", c))
	g.join(fmt.Sprintf("S2%02d.out", c), fmt.Sprintf("X2%02d", c))
	for _, n := range []int{2, 3} {
		g.join(fmt.Sprintf("X2%02d", c), fmt.Sprintf("E%d%02d.+", n, c))
		g.join(fmt.Sprintf("E%d%02d.-", n, c), "A1.n")
	}
}

func (g *outfit) horn(c int) {
	g.part("P2%02d: {kind: horn, title: %s, place: front}", c, g.title("horn"))
	g.part("S2%02d: {kind: push-button, title: horn, place: dash}", c)
	g.join(fmt.Sprintf("A1.%d", c), fmt.Sprintf("P2%02d.+", c))
	g.join(fmt.Sprintf("P2%02d.-", c), fmt.Sprintf("S2%02d.in", c))
	g.join(fmt.Sprintf("S2%02d.out", c), "A1.n")
}

func (g *outfit) outlet(c int) {
	g.part("X2%02d: {kind: usb-outlet, title: %s, place: dash}", c, g.title("USB"))
	g.join(fmt.Sprintf("A1.%d", c), fmt.Sprintf("X2%02d.+", c))
	g.join(fmt.Sprintf("X2%02d.-", c), "A1.n")
}

func (g *outfit) socket(c int) {
	g.part("X2%02d: {kind: power-socket, title: %s, place: dash}", c, g.title("socket"))
	g.join(fmt.Sprintf("A1.%d", c), fmt.Sprintf("X2%02d.+", c))
	g.join(fmt.Sprintf("X2%02d.-", c), "A1.n")
}

func (g *outfit) soundBar(c int) {
	g.part("P2%02d: {kind: sound-bar, place: roof}", c)
	g.join(fmt.Sprintf("A1.%d", c), fmt.Sprintf("P2%02d.+", c))
	g.join(fmt.Sprintf("P2%02d.-", c), "A1.n")
	fmt.Fprintf(&g.wires, "  P2%02d.memory: {to: capped}\n", c)
}

func (g *outfit) fans(c int) {
	g.part("S2%02d: {kind: rocker, title: %s, place: dash}", c, g.title("fans"))
	g.part("X2%02d: {kind: splice, title: fans, place: roof}", c)
	g.part("X3%02d: {kind: splice, title: negative of the fans, place: roof}", c)
	g.join(fmt.Sprintf("A1.%d", c), fmt.Sprintf("S2%02d.in", c))
	g.join(fmt.Sprintf("S2%02d.out", c), fmt.Sprintf("X2%02d", c))
	for _, n := range []int{2, 3} {
		g.part("M%d%02d: {kind: fan, place: roof}", n, c)
		g.lead(fmt.Sprintf("X2%02d", c), fmt.Sprintf("M%d%02d.+", n, c))
		g.lead(fmt.Sprintf("M%d%02d.-", n, c), fmt.Sprintf("X3%02d", c))
	}
	g.join(fmt.Sprintf("X3%02d", c), "A1.n")
}

// relayed is a lamp behind a relay.
func (g *outfit) relayed(c int) {
	g.part("K2%02d: {kind: relay, title: %s, place: dash}", c, g.title("work lamp"))
	g.part("S2%02d: {kind: rocker, title: work lamp, place: dash}", c)
	g.part("E2%02d: {kind: lamp, title: work lamp, place: front}", c)
	g.join(fmt.Sprintf("A1.%d", c), fmt.Sprintf("K2%02d.30", c))
	g.join(fmt.Sprintf("A1.%d", c), fmt.Sprintf("S2%02d.in", c))
	g.join(fmt.Sprintf("S2%02d.out", c), fmt.Sprintf("K2%02d.86", c))
	g.join(fmt.Sprintf("K2%02d.85", c), "A1.n")
	g.join(fmt.Sprintf("K2%02d.87", c), fmt.Sprintf("E2%02d.+", c))
	g.join(fmt.Sprintf("E2%02d.-", c), "A1.n")
}

func (g *outfit) tracker(c int) {
	g.part("A2%02d: {kind: tracker, title: %s, place: dash}", c, g.title("tracker"))
	g.join(fmt.Sprintf("A1.%d", c), fmt.Sprintf("A2%02d.+", c))
	g.join(fmt.Sprintf("A2%02d.-", c), "A1.n")
	fmt.Fprintf(&g.wires, "  A2%02d.ignition: {to: capped}\n", c)
}

func (g *outfit) workLight(c int) {
	suffix := string(rune('A' + c))
	g.addons = append(g.addons, fmt.Sprintf("{layer: work-light, suffix: %s, points: {channel: A1.%d}}", suffix, c))
}

func (g *outfit) flasher(c int) {
	g.part("A2%02d: {kind: flasher, title: %s, place: dash}", c, g.title("flasher"))
	g.part("S2%02d: {kind: rocker, title: flasher, place: dash}", c)
	g.part("E2%02d: {kind: lamp-led, power: 6 W, title: beacon, place: roof}", c)
	g.join(fmt.Sprintf("A1.%d", c), fmt.Sprintf("A2%02d.+", c))
	g.join(fmt.Sprintf("A1.%d", c), fmt.Sprintf("S2%02d.in", c))
	g.join(fmt.Sprintf("S2%02d.out", c), fmt.Sprintf("A2%02d.enable", c))
	g.lead(fmt.Sprintf("A2%02d.out", c), fmt.Sprintf("E2%02d.+", c))
	g.join(fmt.Sprintf("A2%02d.-", c), "A1.n")
	g.join(fmt.Sprintf("E2%02d.-", c), "A1.n")
}
