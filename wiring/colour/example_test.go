package colour_test

import (
	"fmt"

	"github.com/lugwright/lugwright/wiring/colour"
)

// How are colours read, and which are mistaken for each other?
func ExampleParse() {
	striped, _ := colour.Parse("black with yellow")
	fmt.Println(striped, striped.Base.Screen().Hex(), striped.NeedsOutline())

	_, err := colour.Parse("RDBU")
	fmt.Println(err)

	black, _ := colour.Parse("BLK")
	brown, _ := colour.Parse("BRN")
	fmt.Println(colour.LookAlike(black, brown), colour.LookAlike(black, striped))
	// Output:
	// BK/YE #1A1A1A true
	// RDBU does not say which is the tracer: RD/BU or BU/RD
	// true false
}
