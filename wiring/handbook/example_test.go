package handbook_test

import (
	"fmt"
	"strings"

	"github.com/lugwright/lugwright/wiring/handbook"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// What may 35 mm2 at 105 C carry under a hot seat, in a bundle of four?
func ExampleTables_Ampacity() {
	h := handbook.Default()
	c, err := h.Ampacity(quantity.Size{System: quantity.MM2, Number: 35}, 105)
	if err != nil {
		fmt.Println(err)
		return
	}
	hot := handbook.Derate(c.Amps, handbook.AmbientFactor(105, 50), h.BundleFactor(4))
	fmt.Println(c.Amps, "alone;", hot, "there;", c.Note())
	// Output:
	// 210 A alone; 108 A there; 35 mm2 counts as the next smaller row, 2 AWG
}

// What does a 12 AWG loop of 20 ft lose at 15 A?
func ExampleTables_RunDrop() {
	drop, _ := handbook.Default().RunDrop(quantity.Gauge(12), quantity.Feet(20), 15, 20)
	fmt.Println(drop, "=", handbook.DropShare(drop, 12.8))
	// Output:
	// 0.4765 V = 3.72 %
}

// How does a shop put its own table in place?
func ExampleTables_With() {
	own := "# source: our own bench, 2026; status: read\n" +
		"gauge,cmil\n2,61000\n4,37000\n"
	h, err := handbook.Default().With("sae", strings.NewReader(own))
	if err != nil {
		fmt.Println(err)
		return
	}
	area, _ := h.Area(quantity.Size{System: quantity.SAE, Number: 2})
	source, _ := h.Source("sae")
	fmt.Println(area, "from", source.Text)

	_, err = h.With("sae", strings.NewReader("# source: a guess; status: memory\ngauge,cmil\n2,thick\n"))
	fmt.Println(err)
	// Output:
	// 30.9 mm2 from our own bench, 2026
	// table sae: line 3, column cmil: "thick" is no number
}
