package svg

import (
	"encoding/xml"
	"fmt"
	"strings"

	"github.com/lugwright/lugwright/render/ink"
)

// escape writes text for the inside of a quoted attribute.
func escape(b *strings.Builder, s string) {
	// A strings.Builder never fails.
	_ = xml.EscapeText(b, []byte(s))
}

// pathData writes a path with the absolute commands M, L, C and Z alone, which is all that
// a reader of the file has to know.
func pathData(p ink.Path) string {
	var b strings.Builder
	point := func(command string, q ink.Point) {
		b.WriteString(command)
		b.WriteString(ink.Decimal(q.X))
		b.WriteByte(' ')
		b.WriteString(ink.Decimal(q.Y))
	}
	for _, s := range p {
		switch s.Op {
		case ink.MoveTo:
			point("M", s.P)
		case ink.LineTo:
			point("L", s.P)
		case ink.CurveTo:
			point("C", s.C)
			point(" ", s.D)
			point(" ", s.P)
		case ink.ClosePath:
			b.WriteByte('Z')
		}
	}
	return b.String()
}

func hex(c ink.Color) string {
	long := fmt.Sprintf("#%02x%02x%02x", c.R, c.G, c.B)
	if long[1] == long[2] && long[3] == long[4] && long[5] == long[6] {
		return "#" + long[1:2] + long[3:4] + long[5:6]
	}
	return long
}

func styleOf(s ink.Style) []attr {
	var list []attr
	if s.Fill != nil {
		list = append(list, attr{"fill", hex(*s.Fill)})
	}
	if s.Stroke == nil {
		return list
	}
	list = append(list, attr{"stroke", hex(*s.Stroke)}, attr{"stroke-width", ink.Decimal(s.Width)})
	if len(s.Dash) > 0 {
		lengths := make([]string, len(s.Dash))
		for i, d := range s.Dash {
			lengths[i] = ink.Decimal(d)
		}
		list = append(list, attr{"stroke-dasharray", strings.Join(lengths, " ")})
		if s.Offset != 0 {
			list = append(list, attr{"stroke-dashoffset", ink.Decimal(s.Offset)})
		}
	}
	if s.Round {
		list = append(list, attr{"stroke-linecap", "round"}, attr{"stroke-linejoin", "round"})
	}
	return list
}

// families lists for each face its own name, then free and usual fonts of nearly the same
// widths, then a generic one. The first is the name that an embedded face is given. On a
// Linux machine with few fonts the generic one is DejaVu Sans, up to a fifth wider than the
// Go faces in bold; its condensed cut is installed with it and stays within a tenth.
var families = [...]string{
	ink.Regular: "Go,'Go Regular',Arimo,'Liberation Sans',Arial,Helvetica,'DejaVu Sans Condensed',sans-serif",
	ink.Bold:    "Go,'Go Regular',Arimo,'Liberation Sans',Arial,Helvetica,'DejaVu Sans Condensed',sans-serif",
	ink.Mono:    "'Go Mono',Cousine,'Liberation Mono','Courier New','DejaVu Sans Mono',monospace",
}

func textStyle(t ink.Text) []attr {
	list := []attr{{"font-size", ink.Decimal(ink.Em(t.Face, t.Capital))}, {"fill", hex(t.Color)}}
	switch t.Face {
	case ink.Bold:
		list = append(list, attr{"font-weight", "bold"})
	case ink.Mono:
		list = append(list, attr{"font-family", families[ink.Mono]})
	}
	switch t.Anchor {
	case ink.Middle:
		list = append(list, attr{"text-anchor", "middle"})
	case ink.End:
		list = append(list, attr{"text-anchor", "end"})
	}
	if t.Turned {
		list = append(list, attr{"transform", "rotate(-90 " + ink.Decimal(t.At.X) + " " + ink.Decimal(t.At.Y) + ")"})
	}
	if t.Halo {
		list = append(list, attr{"stroke", "#fff"}, attr{"stroke-width", ink.Decimal(0.4 * t.Capital)},
			attr{"stroke-linejoin", "round"}, attr{"paint-order", "stroke"})
	}
	return list
}
