package quantity_test

import (
	"fmt"

	"github.com/lugwright/lugwright/wiring/quantity"
)

// How is a text read, and what does a reader say of one that is wrong?
func ExampleParse() {
	length, _ := quantity.Parse("about 4 ft 6 in", quantity.Length)
	fmt.Println(length, "=", length.Metres(), length.About)

	_, err := quantity.Parse("14", quantity.Length)
	fmt.Println("length", err)
	// Output:
	// about 4 ft 6 in = 1.37 m true
	// length 14 has no unit: 14 in, 14 mm or 14 cm?
}

// How is a range read whose first unit is left out?
func ExampleParsePair() {
	works, _ := quantity.ParsePair("10 to 15 V", quantity.Voltage, quantity.Voltage, quantity.To)
	fmt.Println(works, "ends at", works.Second.Volts())
	// Output:
	// 10 V to 15 V ends at 15 V
}

// How is a conductor size read?
func ExampleParseSize() {
	for _, text := range []string{"00 AWG", "35 mm²", "2 ga"} {
		size, err := quantity.ParseSize(text)
		fmt.Println(size, err)
	}
	// Output:
	// 2/0 AWG <nil>
	// 35 mm2 <nil>
	//  2 ga does not say which gauge: 2 AWG, or 2 SAE, which is 3 to 11 % less copper?
}

// How is a length printed for a shop that works in inches?
func ExampleMetre_In() {
	fmt.Println(quantity.Metre(1.3716).In(quantity.Inch))
	fmt.Println(quantity.Metre(1.3716).In(quantity.Metric))
	// Output:
	// 4 ft 6 in
	// 1.37 m
}
