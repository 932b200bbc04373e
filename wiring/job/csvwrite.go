package job

import (
	"encoding/csv"
	"io"
	"slices"
	"strconv"
	"strings"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// WriteCSV writes wires as a list that a layer can use and a spreadsheet can open: UTF-8
// with commas, one row a wire, lengths and sizes as they were written. Read over the same
// parts it gives the same wires. What the program reckoned or filled in is left out, as is
// an end that is loose. Cells that a spreadsheet would take for a formula begin with '.
func WriteCSV(w io.Writer, wires []*wiring.Wire) error {
	out := csv.NewWriter(w)
	if err := out.Write(listColumns); err != nil {
		return err
	}
	for _, wire := range wires {
		cells := listCells(wire)
		row := make([]string, len(listColumns))
		for i, column := range listColumns {
			row[i] = guarded(cells[column])
		}
		if err := out.Write(row); err != nil {
			return err
		}
	}
	out.Flush()
	return out.Error()
}

// guarded puts ' before a text that a spreadsheet would compute, or that begins with '.
func guarded(text string) string {
	if text != "" && strings.ContainsRune("=+-@'\t\r", rune(text[0])) {
		return "'" + text
	}
	return text
}

// listCells is one wire by column.
func listCells(w *wiring.Wire) map[string]string {
	cells := map[string]string{
		wireColumn: w.Name(), "to": listEnd(w.To),
		"loom": w.Loom, "for": w.For, "note": w.Note,
	}
	if w.Number != "" {
		cells["from"] = listEnd(w.From)
	}
	if w.From.Stated {
		cells["from lug"] = w.From.Lug
	}
	if w.To.Stated {
		cells["to lug"] = w.To.Lug
	}
	if _, stated := w.Where["insulation"]; stated {
		cells["insulation"] = exactly(float64(w.Insulation), quantity.Temperature, w.Insulation.String(), w.Insulation.In(quantity.Inch))
	}
	if _, stated := w.Where["volts"]; stated {
		cells["volts"] = exactly(float64(w.Volts), quantity.Voltage, w.Volts.String())
	}
	listPieces(w, cells)
	return cells
}

func listEnd(e wiring.End) string {
	switch {
	case e.Terminal != nil:
		return e.Terminal.Ref()
	case e.Capped:
		return cappedWord
	case e.Loose == "":
		return e.Point
	}
	return ""
}

// listPieces fills the columns of the wire that is cut and of what extends it.
func listPieces(w *wiring.Wire, cells map[string]string) {
	var inward, outward []wiring.Piece // extensions at from, in writing order, and at to
	cut := slices.IndexFunc(w.Pieces, func(p wiring.Piece) bool {
		return p.Kind == wiring.CutPiece || p.Kind == wiring.CordPiece
	})
	for i, p := range w.Pieces {
		switch {
		case p.Kind == wiring.LeadPiece:
		case i == cut:
			cells["colour"], cells["size"], cells["length"] = p.Colour.String(), sizeText(p), lengthText(p)
		case i < cut, cut < 0 && !startsWithLead(w):
			inward = append([]wiring.Piece{p}, inward...)
		default:
			outward = append(outward, p)
		}
		if p.Joint != "" && p.Joint != jointWords[0] {
			cells["joint"] = p.Joint
		}
	}
	var colours, sizes, lengths, sides []string
	for i, p := range append(inward, outward...) {
		colours = append(colours, p.Colour.String())
		sizes = append(sizes, sizeText(p))
		lengths = append(lengths, lengthText(p))
		sides = append(sides, to.String())
		if i < len(inward) {
			sides[i] = from.String()
		}
	}
	mark := " " + severalMark + " "
	if len(colours) > 0 {
		cells["extend colour"] = strings.Join(colours, mark)
		cells["extend size"] = strings.Join(sizes, mark)
		cells["extend length"] = strings.Join(lengths, mark)
		cells["extend at"] = strings.Join(sides, mark)
	}
}

func startsWithLead(w *wiring.Wire) bool { return w.Pieces[0].Kind == wiring.LeadPiece }

func sizeText(p wiring.Piece) string {
	if p.Auto {
		return "auto"
	}
	return p.Size.String()
}

func lengthText(p wiring.Piece) string {
	if p.Reckoned {
		return ""
	}
	return p.Length.String()
}

// exactly is the first of some texts that reads back as the value, else the value with all
// its digits.
func exactly(value float64, d quantity.Dimension, texts ...string) string {
	for _, text := range texts {
		if a, err := quantity.Parse(text, d); err == nil && a.Value == value {
			return text
		}
	}
	return strconv.FormatFloat(value, 'f', -1, 64) + " " + d.Units()[0]
}
