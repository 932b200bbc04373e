package schematictest

import (
	"fmt"
	"io/fs"
	"math/rand/v2"
	"strings"
	"testing/fstest"
)

// Variant is a generated job, in a file system of its own with the layers that it uses.
type Variant struct {
	Name string
	FS   fs.FS
	File string
	Text string // of the job
}

// Family is the variants of one shipped cart: what they stand on, and what they may lack.
type Family struct {
	Name      string
	platforms []string
	kits      []string
	channels  []int    // of the fuse block
	drops     []string // lists of what a `remove` may take away together
	spare     string   // a terminal with pack voltage while the cart is on
}

// Families lists the families, in the order of the shipped examples.
func Families() []Family {
	return []Family{
		{
			Name: "two-seat", platforms: []string{"48v-separately-excited", "48v-separately-excited-across"},
			kits: []string{"16s-onboard-charger"}, channels: []int{8, 6, 12},
			drops: []string{"P1, W28, W29", "U2, W68", "P2, W67", "V1, W23, W24", "F5, W62, W69", "F4, W57, W66"}, spare: "X13",
		},
		{
			Name: "shuttle", platforms: []string{"36v-series"},
			kits: []string{"12s-inlet"}, channels: []int{6, 8, 12},
			drops: []string{"P1, W28, W29", "P2, W67", "V1, W22, W23", "X14, W43, W44", "E13, E14, W37, W38, W41, W42", "R1, W20, W21"}, spare: "X13",
		},
		{
			Name: "truck", platforms: []string{"48v-ac", "48v-ac", "48v-separately-excited"},
			kits: []string{"16s-onboard-charger-loop", "16s-onboard-charger"}, channels: []int{12, 10, 8},
			drops: []string{"U2, W68", "P2, W67", "F5, W62, W69"}, spare: "X13",
		},
	}
}

// asFound is how many variants there are for one that shows the cart before the work.
const asFound = 25

// Variant makes the variant of a number. Shipped is the folder of the shipped carts.
func (f Family) Variant(shipped fs.FS, number int) (Variant, error) {
	name := fmt.Sprintf("%s-%03d", f.Name, number)
	files, err := copied(shipped)
	if err != nil {
		return Variant{}, err
	}
	v := Variant{Name: name, FS: files, File: "jobs/" + name + ".yaml", Text: f.job(number)}
	files[v.File] = &fstest.MapFile{Data: []byte(v.Text)}
	return v, nil
}

// copied reads a folder into memory.
func copied(from fs.FS) (fstest.MapFS, error) {
	to := fstest.MapFS{}
	err := fs.WalkDir(from, ".", func(path string, e fs.DirEntry, err error) error {
		if err != nil || e.IsDir() {
			return err
		}
		data, err := fs.ReadFile(from, path)
		to[path] = &fstest.MapFile{Data: data}
		return err
	})
	return to, err
}

// job writes the job of a number.
func (f Family) job(number int) string {
	r := rand.New(rand.NewPCG(uint64(number), uint64(len(f.Name))))
	var b strings.Builder
	fmt.Fprintf(&b, "job: V-%d\ntitle: Variant %d of the %s cart\nabout: Invented, made for a test.\nby: test\n", number, number, f.Name)
	platform := f.platforms[number%len(f.platforms)]
	if number%asFound == asFound-1 {
		fmt.Fprintf(&b, "use: [%s]\n", platform)
		return b.String()
	}
	kit := f.kits[0]
	if platform != f.platforms[0] {
		kit = f.kits[len(f.kits)-1]
	}
	channels := f.channels[r.IntN(len(f.channels))]
	g := &outfit{r: r, long: r.IntN(4) == 0, colourful: r.IntN(2) == 0, spare: f.spare}
	for c := 1; c <= channels; c++ {
		if r.IntN(channels+2) < channels-2 {
			g.fit(c)
		}
	}
	fmt.Fprintf(&b, "use: [%s]\n", strings.Join(append([]string{platform, kit}, g.addons...), ", "))
	if gone := f.dropped(r, kit); gone != "" {
		fmt.Fprintf(&b, "remove: [%s]\n", gone)
	}
	fmt.Fprintf(&b, "\nparts:\n  A1: {channels: %d, fuses: {%s}}\n%s", channels, strings.Join(g.fuses, ", "), g.parts.String())
	if g.wires.Len() > 0 {
		fmt.Fprintf(&b, "\nwires:\n%s", g.wires.String())
	}
	return b.String()
}

// dropped lists what a variant lacks: at most two of the lists.
func (f Family) dropped(r *rand.Rand, kit string) string {
	var gone []string
	for _, d := range f.drops {
		if kit == "16s-onboard-charger-loop" && strings.HasPrefix(d, "F4") {
			continue
		}
		if len(gone) < 2 && r.IntN(4) == 0 {
			gone = append(gone, d)
		}
	}
	return strings.Join(gone, ", ")
}
