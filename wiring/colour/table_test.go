package colour

import (
	"encoding/csv"
	"math"
	"strconv"
	"strings"
	"testing"
)

// columnsOf reads one of the embedded tables as maps from column to cell.
func columnsOf(t *testing.T, file string) []map[string]string {
	t.Helper()
	text, err := tables.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	r := csv.NewReader(strings.NewReader(string(text)))
	r.Comment = '#'
	rows, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var out []map[string]string
	for _, row := range rows[1:] {
		m := map[string]string{}
		for i, name := range rows[0] {
			m[name] = row[i]
		}
		out = append(out, m)
	}
	return out
}

// The order of codes is that of IEC 60757 Table 1, typed here from two public copies; ours
// follow.
func TestCodesOrder(t *testing.T) {
	want := "BK BN RD OG YE GN BU VT GY WH PK GD TQ SR GNYE TN CL bare"
	var got []string
	for _, c := range Codes() {
		got = append(got, string(c))
	}
	if strings.Join(got, " ") != want {
		t.Errorf("Codes() = %v\nwant %v", got, want)
	}
}

// The contrast columns were computed outside Go; WCAG 2.1 gives the formula.
func TestContrastAgainstTable(t *testing.T) {
	for _, row := range columnsOf(t, "colour_codes.csv") {
		c := Code(row["code"])
		for column, rgb := range map[string]RGB{"contrast_screen": c.Screen(), "contrast_print": c.Print()} {
			want, err := strconv.ParseFloat(row[column], 64)
			if err != nil {
				t.Fatal(err)
			}
			if got := Contrast(rgb, white); math.Abs(got-want) > 0.006 {
				t.Errorf("%s %s = %.3f, want %.2f", c, column, got, want)
			}
		}
		if got, want := c.NeedsOutline(), row["needs_outline_on_white"] == "yes"; got != want {
			t.Errorf("%s needs an outline: %v, want %v", c, got, want)
		}
		if c.Name() != row["colour"] || !c.Standard() {
			t.Errorf("%s is called %q, standard %v; want %q of the standard", c, c.Name(), c.Standard(), row["colour"])
		}
		if c.Screen().Hex() != row["srgb_screen"] || c.Print().Hex() != row["srgb_print"] {
			t.Errorf("%s shows as %s and %s", c, c.Screen().Hex(), c.Print().Hex())
		}
	}
}

// Black on white is 21:1 and a colour on itself 1:1 (WCAG 2.1, definition of contrast ratio).
func TestContrastEnds(t *testing.T) {
	if got := Contrast(RGB{}, white); math.Abs(got-21) > 1e-9 {
		t.Errorf("black on white = %v, want 21", got)
	}
	if got := Contrast(RGB{9, 99, 199}, RGB{9, 99, 199}); got != 1 {
		t.Errorf("a colour on itself = %v, want 1", got)
	}
}

func TestShades(t *testing.T) {
	blue := Code("BU").Screen().Luminance()
	light, dark := Code("LBU").Screen().Luminance(), Code("DBU").Screen().Luminance()
	if !(dark < blue && blue < light) {
		t.Errorf("luminance of DBU, BU, LBU = %.3f, %.3f, %.3f: want them to rise", dark, blue, light)
	}
	for _, c := range []Code{"LBK", "DWH", "LGNYE", "Lbare", "DCL", "LX", "XBU", ""} {
		if c.Known() {
			t.Errorf("%q is known", c)
		}
	}
	if Code("LBU").Standard() || Code("TN").Standard() {
		t.Error("a code of our own passes for one of IEC 60757")
	}
}

func TestStripe(t *testing.T) {
	if rgb, ok := ProtectiveEarth.Stripe(); !ok || rgb != Code("YE").Screen() {
		t.Errorf("stripe of GNYE = %v, %v; want the yellow of YE", rgb, ok)
	}
	if _, ok := Code("GN").Stripe(); ok {
		t.Error("GN has a stripe")
	}
}

func TestNames(t *testing.T) {
	tests := []struct {
		colour Colour
		want   string
	}{
		{Colour{}, ""},
		{Colour{Base: "BK"}, "black"},
		{Colour{"BK", "YE"}, "black with yellow"},
		{Colour{"LBU", "DGN"}, "light blue with dark green"},
		{Colour{Base: "GNYE"}, "green-and-yellow"},
	}
	for _, test := range tests {
		if got := test.colour.Name(); got != test.want {
			t.Errorf("%q is called %q, want %q", test.colour, got, test.want)
		}
	}
}

func TestParseHexFaults(t *testing.T) {
	for _, text := range []string{"", "#12", "1A1A1A", "#1A1A1G", "#1A1A1A1", "#1A1A1"} {
		if c, err := ParseHex(text); err == nil {
			t.Errorf("ParseHex(%q) = %v, want an error", text, c)
		}
	}
}
