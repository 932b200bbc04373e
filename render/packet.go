package render

import (
	"bytes"
	"fmt"
	"strconv"
	"strings"

	"github.com/lugwright/lugwright/render/ink"
	"github.com/lugwright/lugwright/render/report"
	"github.com/lugwright/lugwright/render/schematic"
	"github.com/lugwright/lugwright/render/sheet/frame"
	"github.com/lugwright/lugwright/render/svg"
	"github.com/lugwright/lugwright/wiring"
)

// Options of a packet. The zero Options draw every sheet on A4.
type Options struct {
	Paper  frame.Paper // zero: A4
	Sheets []string    // numbers or titles of the sheets that are wanted, without regard to case; empty: all
}

// Files is where a packet goes. Put is called once for each file, with a name that every
// file system takes and a content that does not change afterwards.
type Files interface {
	Put(name string, content []byte) error
}

// Drawn is one sheet that was put among the files.
type Drawn struct {
	Name       string // of the file
	Number     int
	Title      string
	Undrawn    []string // wires for which there was no way
	Unlabelled []string // words for which there was no place
}

// Whole reports whether everything is on the sheet. One that is not must not be built from;
// it says so itself.
func (d Drawn) Whole() bool { return len(d.Undrawn)+len(d.Unlabelled) == 0 }

// A SheetError says that a sheet was asked for which the job does not have.
type SheetError struct {
	Asked string
	Have  []string // "1 (48 V)"
}

func (e *SheetError) Error() string {
	return fmt.Sprintf("no sheet %s: this job has %s", e.Asked, strings.Join(e.Have, ", "))
}

// Packet draws a harness and puts the sheets among files, and beside them the list of what
// was found: open, waived and not checked. Open errors and warnings stand on each sheet
// over the drawing too, and so does what the job waives, with the reason. Every file ends in
// a stamp; see [Stamped].
//
// An error is a *SheetError, or that of files, or a fault of the drawing itself; files may
// then have been put and should not be kept.
func Packet(h *wiring.Harness, found report.Job, files Files, o Options) ([]Drawn, error) {
	if o.Paper == (frame.Paper{}) {
		o.Paper = frame.A4()
	}
	content := contentOf(h, found.Findings)
	// Every sheet has the same content around the drawing, so all have the same room.
	room := frame.Layout(o.Paper, content)
	corner := room.Area.Min
	sheets, err := schematic.Sheets(h, schematic.Options{
		Width:  room.Area.Width(),
		Height: room.Area.Height(),
		Zone:   func(at ink.Point) string { return room.Zone(ink.At(at.X+corner.X, at.Y+corner.Y)) },
	})
	if err != nil {
		return nil, fmt.Errorf("render: %w", err)
	}
	wanted, err := choose(sheets, o.Sheets)
	if err != nil {
		return nil, err
	}
	content.Sheets = len(sheets)
	var all []Drawn
	for _, s := range wanted {
		one, err := put(h, s, content, files, o)
		if err != nil {
			return all, err
		}
		all = append(all, one)
	}
	return all, putList(h, found, files)
}

// putList puts the list of what was found among the files.
func putList(h *wiring.Harness, found report.Job, files Files) error {
	var list bytes.Buffer
	if err := report.Text(&list, report.Report{Jobs: []report.Job{found}}, report.TextOptions{}); err != nil {
		return err
	}
	return files.Put(plainName(h.Identity.Number, "job")+"-findings.txt", stamp(list.Bytes(), plain))
}

// choose picks the sheets that are wanted, in their own order.
func choose(sheets []*schematic.Sheet, asked []string) ([]*schematic.Sheet, error) {
	if len(asked) == 0 {
		return sheets, nil
	}
	want := map[*schematic.Sheet]bool{}
	for _, word := range asked {
		s := find(sheets, word)
		if s == nil {
			return nil, &SheetError{word, names(sheets)}
		}
		want[s] = true
	}
	var chosen []*schematic.Sheet
	for _, s := range sheets {
		if want[s] {
			chosen = append(chosen, s)
		}
	}
	return chosen, nil
}

func find(sheets []*schematic.Sheet, word string) *schematic.Sheet {
	for _, s := range sheets {
		if word == strconv.Itoa(s.Number) || s.Title != "" && strings.EqualFold(plainName(word, ""), plainName(s.Title, "")) {
			return s
		}
	}
	return nil
}

func names(sheets []*schematic.Sheet) []string {
	var all []string
	for _, s := range sheets {
		name := strconv.Itoa(s.Number)
		if s.Title != "" {
			name += " (" + s.Title + ")"
		}
		all = append(all, name)
	}
	return all
}

// put draws one sheet and puts it among the files.
func put(h *wiring.Harness, s *schematic.Sheet, content frame.Content, files Files, o Options) (Drawn, error) {
	one := Drawn{
		Name:       fileName(h.Identity.Number, s.Number, s.Title, "svg"),
		Number:     s.Number,
		Title:      s.Title,
		Undrawn:    s.Stats.Unrouted,
		Unlabelled: s.Stats.Unlabelled,
	}
	content.Sheet, content.Subtitle = s.Number, s.Title
	if !one.Whole() {
		content.Note = "INCOMPLETE: do not build from this sheet"
	}
	drawing, err := draw(s, frame.Layout(o.Paper, content), svg.Options{
		Title:      strings.TrimSpace(h.Identity.Number + " " + s.Title),
		EmbedFonts: true,
	})
	if err != nil {
		return one, fmt.Errorf("render: sheet %d: %w", s.Number, err)
	}
	return one, files.Put(one.Name, stamp(drawing, markup))
}

// draw makes the document of a sheet in its frame.
func draw(s *schematic.Sheet, f *frame.Frame, o svg.Options) ([]byte, error) {
	var out bytes.Buffer
	page := svg.New(&out, f.Paper.Width, f.Paper.Height, o)
	f.Draw(page)
	s.Draw(ink.Move(page, f.Area.Min.X, f.Area.Min.Y))
	if err := page.Finish(); err != nil {
		return nil, err
	}
	return out.Bytes(), nil
}
