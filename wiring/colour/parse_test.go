package colour

import "testing"

func TestParse(t *testing.T) {
	tests := []struct {
		text string
		want Colour
	}{
		{"BK", Colour{"BK", ""}},
		{"bk/ye", Colour{"BK", "YE"}},
		{" BK / YE ", Colour{"BK", "YE"}},
		{"grey", Colour{"GY", ""}},
		{"Gray", Colour{"GY", ""}},
		{"purple", Colour{"VT", ""}},
		{"black/yellow", Colour{"BK", "YE"}},
		{"black with yellow", Colour{"BK", "YE"}},
		{"Black with a yellow stripe", Colour{"BK", "YE"}},
		{"black w/ yellow tracer", Colour{"BK", "YE"}},
		{"black\u00a0with\u00a0yellow", Colour{"BK", "YE"}},
		{"BLK/YEL", Colour{"BK", "YE"}},
		{"ORG", Colour{"OG", ""}},
		{"GNYE", Colour{"GNYE", ""}},
		{"gnye", Colour{"GNYE", ""}},
		{"green-and-yellow", Colour{"GNYE", ""}},
		{"YE/GN", Colour{"YE", "GN"}},
		{"TN", Colour{"TN", ""}},
		{"clear", Colour{"CL", ""}},
		{"LBU", Colour{"LBU", ""}},
		{"dgn/wh", Colour{"DGN", "WH"}},
		{"light blue", Colour{"LBU", ""}},
		{"dark green with white", Colour{"DGN", "WH"}},
		{"bare", Colour{"bare", ""}},
		{"BARE", Colour{"bare", ""}},
	}
	for _, test := range tests {
		got, err := Parse(test.text)
		if err != nil || got != test.want {
			t.Errorf("Parse(%q) = %q, %v; want %q", test.text, got, err, test.want)
		}
	}
}

func TestParseFaults(t *testing.T) {
	tests := []struct{ text, says string }{
		{"", "no colour is given: such as BK, BK/YE or black with yellow"},
		{"RDX", "no colour RDX: did you mean RD?"},
		{"BK/YX", "no colour YX in BK/YX: did you mean YE?"},
		{"B", "no colour B: did you mean BK, BN or BU?"},
		{"gr", "no colour gr: did you mean GN or GY?"},
		{"yelow", "no colour yelow: did you mean YE?"},
		{"plaid", "no colour plaid: such as BK, BK/YE or black with yellow"},
		{"RDBU", "RDBU does not say which is the tracer: RD/BU or BU/RD"},
		{"BK-YE", "BK-YE does not say which is the tracer: BK/YE or YE/BK"},
		{"black yellow", "black yellow does not say which is the tracer: BK/YE or YE/BK"},
		{"BLKYEL", "BLKYEL does not say which is the tracer: BK/YE or YE/BK"},
		{"GN/YE", "GN/YE is the protective earth bicolour: write GNYE"},
		{"green/yellow", "green/yellow is the protective earth bicolour: write GNYE"},
		{"YEGN", "YEGN is the protective earth bicolour: write GNYE"},
		{"RD/RD", "RD/RD has a tracer of its own colour: write RD"},
		{"BK/", "BK/ lacks a colour beside the stroke: such as BK, BK/YE or black with yellow"},
		{"BK/YE/RD", "BK/YE/RD has more than one tracer: such as BK, BK/YE or black with yellow"},
		{"bare/RD", "bare/RD is no base and tracer: such as BK, BK/YE or black with yellow"},
		{"LBK", "no colour LBK: did you mean BK?"},
	}
	for _, test := range tests {
		got, err := Parse(test.text)
		if err == nil || err.Error() != test.says {
			t.Errorf("Parse(%q) = %q, %v; want %q", test.text, got, err, test.says)
		}
	}
}
