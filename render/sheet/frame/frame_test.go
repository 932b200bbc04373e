package frame

import (
	"bytes"
	"flag"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"github.com/lugwright/lugwright/render/ink"
	"github.com/lugwright/lugwright/render/svg"
	"github.com/lugwright/lugwright/render/svg/svgtest"
	"github.com/lugwright/lugwright/render/wirepen"
	"github.com/lugwright/lugwright/wiring/colour"
)

var update = flag.Bool("update", false, "write the golden files")

// sample is the content of an invented sheet.
func sample() Content {
	return Content{
		Owner: "Quay Lane Carts", Number: "TP-U1-E1", Date: "2026-04-07", Sheet: 1, Sheets: 6, Title: "Utility truck to 16S lithium",
		Subtitle: "48 V storey", Creator: "R. Ames", Approver: "K. Osei", DocumentType: "circuit diagram", Revision: "B",
		Legend:    colours("BK", "RD", "RD/WH", "WH", "GNYE", "TN", "bare"),
		Revisions: []Revision{{"A", "2026-04-07", "RA", "first issue"}, {"B", "2026-05-11", "RA", "second work light"}},
		Findings:  []string{"error  fuse-protects-wire  W12: 16 AWG behind 200 A"},
		Cautions:  []Caution{{Warning, "The cart may move: chocks, and wheels off the ground for the first run."}},
		Note:      "Invented example.",
	}
}

func colours(codes ...string) []colour.Colour {
	var list []colour.Colour
	for _, c := range codes {
		parsed, err := colour.Parse(c)
		if err != nil {
			panic(err)
		}
		list = append(list, parsed)
	}
	return list
}

func record(t interface{ Fatal(...any) }, f *Frame) *ink.Recorder {
	page := ink.NewRecorder(f.Paper.Width, f.Paper.Height)
	checked := ink.Check(page)
	f.Draw(checked)
	if err := checked.Err(); err != nil {
		t.Fatal(err)
	}
	return page
}

// Every word must lie clear of every other and of every line, even where the font is
// replaced by a wider one, and the drawing's area must be free of ink, for any content.
func TestNothingCollides(t *testing.T) {
	words := rapid.SampledFrom([]string{"", "A", "R. Ames", "2026-04-07", "Utility truck to 16S lithium with twelve-channel block and work lights",
		strings.Repeat("W", 200), "工具车 ✓", "two\nlines", "\xff\x00", strings.Repeat("long words of many lines ", 30)})
	rapid.Check(t, func(t *rapid.T) {
		word := func() string { return words.Draw(t, "words") }
		c := Content{Owner: word(), Number: word(), Date: word(), Title: word(), Approver: word(), Creator: word(), DocumentType: word(), Subtitle: word(),
			Revision: word(), Note: word(), Sheet: rapid.IntRange(0, 999).Draw(t, "sheet"), Sheets: rapid.IntRange(0, 999).Draw(t, "sheets"),
			Centring: rapid.Bool().Draw(t, "centring"), MostShown: rapid.IntRange(0, 4).Draw(t, "shown")}
		for range rapid.IntRange(0, 30).Draw(t, "colours") {
			c.Legend = append(c.Legend, colour.Colour{Base: rapid.SampledFrom(colour.Codes()).Draw(t, "base"), Tracer: rapid.SampledFrom([]colour.Code{"", "WH", "TN"}).Draw(t, "tracer")})
		}
		for range rapid.IntRange(0, 5).Draw(t, "revisions") {
			c.Revisions = append(c.Revisions, Revision{word(), word(), word(), word()})
		}
		for range rapid.IntRange(0, 5).Draw(t, "findings") {
			c.Findings = append(c.Findings, word())
		}
		for range rapid.IntRange(0, 6).Draw(t, "cautions") {
			c.Cautions = append(c.Cautions, Caution{SignalWord(rapid.IntRange(0, 4).Draw(t, "signal")), word()})
		}
		f := Layout(rapid.SampledFrom(Papers()).Draw(t, "paper"), c)
		judge(t, f, record(t, f))
	})
}

func judge(t *rapid.T, f *Frame, page *ink.Recorder) {
	if f.Area.Height() < 0.6*f.Paper.Height || f.Area.Width() < f.Paper.Width-2*margin-2*clear-0.01 {
		t.Fatalf("the drawing has %.1f x %.1f mm of %s", f.Area.Width(), f.Area.Height(), f.Paper.Name)
	}
	var texts []ink.Text
	for _, m := range page.Marks {
		if box, some := m.Box(); some && m.Text != nil && box.Meets(f.Area) {
			t.Fatalf("%q stands in the drawing's area", m.Text.String)
		}
		if m.Text == nil {
			for _, stroke := range strokes(m) {
				if stroke.Meets(f.Area) {
					t.Fatalf("a line at %v crosses the drawing's area", stroke)
				}
			}
			continue
		}
		texts = append(texts, *m.Text)
	}
	for i, a := range texts {
		if a.Capital < letter-1e-9 && !isCaption(a.String) || a.Capital < caption-1e-9 {
			t.Fatalf("%q has capitals of %.2f mm", a.String, a.Capital)
		}
		box := tight(a)
		for _, b := range texts[:i] {
			if box.Meets(tight(b)) {
				t.Fatalf("%q and %q collide", a.String, b.String)
			}
		}
		for _, m := range page.Marks {
			if m.Text != nil || m.Style.Stroke == nil {
				continue
			}
			for _, stroke := range strokes(m) {
				if stroke.Meets(box) {
					t.Fatalf("a line at %v crosses %q at %v", stroke, a.String, box)
				}
			}
		}
	}
}

// isCaption reports whether a text is one of the captions of fields, which are constants.
func isCaption(s string) bool {
	for _, row := range titleRows(Content{}, A4()) {
		for _, cell := range row {
			if cell.caption == s {
				return true
			}
		}
	}
	return false
}

// tight is the box of a text from capitals to a third of the descenders, with its slack:
// descenders may touch the line below, as they do in any ruled form.
func tight(a ink.Text) ink.Rect {
	long := a.Width()
	from := a.At.X
	if a.Anchor == ink.Middle {
		from -= long / 2
		return ink.Rect{Min: ink.At(from, a.At.Y-a.Capital), Max: ink.At(from+long, a.At.Y+0.3)}
	}
	return ink.Rect{Min: ink.At(from, a.At.Y-a.Capital), Max: ink.At(from+long*(1+ink.Slack)-0.01, a.At.Y+0.3)}
}

// strokes are the straight pieces of a path's line with their width.
func strokes(m ink.Mark) []ink.Rect {
	var list []ink.Rect
	for _, run := range m.Path.Flatten(0.05) {
		for i := 1; i < len(run); i++ {
			a, b := run[i-1], run[i]
			r := ink.Rect{Min: ink.At(math.Min(a.X, b.X), math.Min(a.Y, b.Y)), Max: ink.At(math.Max(a.X, b.X), math.Max(a.Y, b.Y))}
			list = append(list, r.Grow(m.Style.Width/2))
		}
	}
	return list
}

// fields returns the words of the title block by their captions.
func fields(page *ink.Recorder) map[string]string {
	all := map[string]string{}
	for _, m := range page.Marks {
		for _, g := range m.Groups {
			if g.Class == "field" && m.Text != nil && m.Text.Capital >= letter {
				all[g.Name] = m.Text.String
			}
		}
	}
	return all
}

// ISO 7200:2004 names eight mandatory fields; the others here are optional there.
func TestTitleBlockHasTheFieldsOfISO7200(t *testing.T) {
	for _, paper := range Papers() {
		got := fields(record(t, Layout(paper, sample())))
		want := map[string]string{
			"Legal owner": "Quay Lane Carts", "Identification number": "TP-U1-E1", "Date of issue": "2026-04-07", "Sheet": "1/6",
			"Title": "Utility truck to 16S lithium", "Approved by": "K. Osei", "Created by": "R. Ames", "Document type": "circuit diagram",
			"Rev.": "B", "Supplementary title": "48 V storey", "Paper": paper.Name,
		}
		if diff := cmp.Diff(want, got); diff != "" {
			t.Errorf("%s:\n%s", paper.Name, diff)
		}
	}
}

// The lengths in characters that ISO 7200 recommends fit, in figures and small letters.
func TestRecommendedLengthsFit(t *testing.T) {
	c := sample()
	c.Number, c.Date, c.Title, c.Revision, c.Sheet, c.Sheets = "0123456789-ABCDE", "2026-12-28", "Truck to 16S with charger", "AB", 12, 34
	got := fields(record(t, Layout(A4(), c)))
	for caption, want := range map[string]string{"Identification number": c.Number, "Date of issue": c.Date, "Title": c.Title, "Rev.": c.Revision, "Sheet": "12/34"} {
		if got[caption] != want {
			t.Errorf("%s: %q became %q", caption, want, got[caption])
		}
	}
}

func TestLongTitleShrinksBeforeItIsCut(t *testing.T) {
	for _, test := range []struct {
		title       string
		least, most float64
		cut         bool
	}{
		{"short", 3.5, 3.5, false},
		{"Utility truck to 16S with charger", 2.55, 3.45, false},
		{strings.Repeat("long ", 40), 2.5, 2.5, true},
	} {
		c := sample()
		c.Title = test.title
		found := false
		for _, m := range record(t, Layout(A4(), c)).Marks {
			if m.Text == nil || m.Text.Face != ink.Bold || m.Groups[len(m.Groups)-1].Name != "Title" {
				continue
			}
			found = true
			if m.Text.Capital < test.least || m.Text.Capital > test.most || strings.HasSuffix(m.Text.String, "…") != test.cut {
				t.Errorf("%q became %q at %.2f mm", test.title, m.Text.String, m.Text.Capital)
			}
		}
		if !found {
			t.Errorf("%q is not in the title block", test.title)
		}
	}
}

// Room that the recipe of the drawing asks for: a canvas of 110 units of 2.5 mm across.
func TestUsualSheetLeavesRoom(t *testing.T) {
	c := sample()
	c.Findings, c.Cautions = nil, nil
	for paper, want := range map[Paper]ink.Point{A4(): ink.At(275, 165), Letter(): ink.At(260, 170)} {
		if f := Layout(paper, c); f.Area.Width() < want.X || f.Area.Height() < want.Y {
			t.Errorf("%s leaves %.1f x %.1f mm, want %v", paper.Name, f.Area.Width(), f.Area.Height(), want)
		}
	}
}

// The names in the margin are those that Zone gives.
func TestZonesAreThoseInTheMargin(t *testing.T) {
	for _, paper := range Papers() {
		f := Layout(paper, sample())
		page := record(t, f)
		seen := 0
		for _, m := range page.Marks {
			if m.Text == nil || len(m.Groups) != 1 {
				continue
			}
			at, name := m.Text.At, m.Text.String
			if at.Y < margin || at.Y > paper.Height-margin || at.X < margin || at.X > paper.Width-margin {
				seen++
				if zone := f.Zone(at); !strings.Contains(zone, name) {
					t.Errorf("%s: %q stands in the margin of zone %s", paper.Name, name, zone)
				}
			}
		}
		if want := 2 * (f.columns() + f.rows()); seen != want {
			t.Errorf("%s: %d names in the margin, want %d", paper.Name, seen, want)
		}
		for _, n := range []int{f.columns(), f.rows()} {
			if n%2 != 0 {
				t.Errorf("%s has an odd number of fields: %d", paper.Name, n)
			}
		}
		if long := f.inner.Width() / float64(f.columns()); long < 25 || long > 75 {
			t.Errorf("%s: fields are %.1f mm long, ISO 5457 has 25 to 75", paper.Name, long)
		}
	}
	f := Layout(A4(), sample())
	for at, want := range map[ink.Point]string{ink.At(9, 9): "A1", ink.At(288, 9): "A8", ink.At(9, 201): "F1", ink.At(288, 201): "F8",
		ink.At(-50, 900): "F1", ink.At(148, 104): "C4", ink.At(149, 106): "D5"} {
		if got := f.Zone(at); got != want {
			t.Errorf("Zone(%v) = %s, want %s", at, got, want)
		}
	}
}

// A swatch is drawn by the pen that draws the wires.
func TestLegendShowsTheLinesOfTheSheet(t *testing.T) {
	c := sample()
	f := Layout(A4(), c)
	page := record(t, f)
	for _, want := range c.Legend {
		swatches := ink.NewRecorder(300, 300)
		wirepen.New(want, swatchMM2, colour.Code.Print).Draw(swatches, ink.At(0, 0), ink.At(swatch, 0))
		var styles []ink.Style
		words := ""
		for _, m := range page.Marks {
			if g := m.Groups[len(m.Groups)-1]; g.Class != "colour" || g.Name != want.String() {
				continue
			}
			if m.Text != nil {
				words += m.Text.String + " "
			} else {
				styles = append(styles, m.Style)
			}
		}
		var wantStyles []ink.Style
		for _, m := range swatches.Marks {
			wantStyles = append(wantStyles, m.Style)
		}
		if diff := cmp.Diff(wantStyles, styles); diff != "" {
			t.Errorf("%v:\n%s", want, diff)
		}
		if !strings.Contains(words, want.String()) || !strings.Contains(words, want.Name()) {
			t.Errorf("%v is called %q", want, words)
		}
	}
	if !strings.Contains(all(page), "* no code of IEC 60757") {
		t.Error("our own colour codes are not marked")
	}
}

// all returns all words on a page.
func all(page *ink.Recorder) string {
	var b strings.Builder
	for _, m := range page.Marks {
		if m.Text != nil {
			b.WriteString(m.Text.String + "\n")
		}
	}
	return b.String()
}

func TestWhatHasNoPlaceIsCounted(t *testing.T) {
	many := func(n int) (findings []string, cautions []Caution, revisions []Revision) {
		for i := range n {
			findings = append(findings, fmt.Sprintf("finding %d", i+1))
			cautions = append(cautions, Caution{Careful, fmt.Sprintf("sentence %d", i+1)})
			revisions = append(revisions, Revision{string(rune('A' + i)), "", "", fmt.Sprintf("change %d", i+1)})
		}
		return
	}
	for _, test := range []struct {
		n          int
		most       int
		with, lack []string
	}{
		{3, 0, []string{"finding 3", "sentence 3", "change 1", "change 3"}, []string{"more", "earlier"}},
		{4, 0, []string{"finding 2", "and 2 more\n", "sentence 4", "change 4", "and 2 earlier revisions"}, []string{"finding 3", "see the hand-over", "change 2"}},
		{9, 0, []string{"finding 2", "and 7 more\n", "sentence 3", "and 6 more: see the hand-over sheet", "change 9", "and 7 earlier revisions"}, []string{"finding 3", "sentence 4", "change 7"}},
		{9, 1, []string{"9 findings: see the list of findings"}, []string{"finding 1"}},
	} {
		c := Content{MostShown: test.most}
		c.Findings, c.Cautions, c.Revisions = many(test.n)
		words := all(record(t, Layout(A4(), c)))
		for _, s := range test.with {
			if !strings.Contains(words, s) {
				t.Errorf("%d of each: %q is missing in\n%s", test.n, s, words)
			}
		}
		for _, s := range test.lack {
			if strings.Contains(words, s) {
				t.Errorf("%d of each: %q is there in\n%s", test.n, s, words)
			}
		}
	}
	var c Content
	for range 60 {
		c.Legend = append(c.Legend, colours("RD/WH")...)
	}
	words := all(record(t, Layout(A4(), c)))
	shown := strings.Count(words, "RD/WH")
	if want := fmt.Sprintf("and %d more colours", 60-shown); !strings.Contains(words, want) {
		t.Errorf("%d colours shown, %q is missing", shown, want)
	}
}

func TestSignalWordsReadInGrey(t *testing.T) {
	for w := Danger; w <= Notice; w++ {
		ground, letters := safetyColours(w)
		if d := int(ground.Grey()) - int(letters.Grey()); d*d < 100*100 {
			t.Errorf("%v: greys %d on %d", w, letters.Grey(), ground.Grey())
		}
	}
}

func TestPaperNamed(t *testing.T) {
	for _, p := range Papers() {
		got, err := PaperNamed(strings.ToLower(p.Name))
		if err != nil || got != p {
			t.Errorf("%s: %v, %v", p.Name, got, err)
		}
		if p.Width <= p.Height {
			t.Errorf("%s stands upright", p.Name)
		}
	}
	if _, err := PaperNamed("A5"); err == nil || !strings.Contains(err.Error(), "A4, A3, Letter, Tabloid") {
		t.Errorf("A5: %v", err)
	}
}

func file(t *testing.T, paper Paper) []byte {
	t.Helper()
	var b bytes.Buffer
	page := svg.New(&b, paper.Width, paper.Height, svg.Options{Title: "Frame"})
	Layout(paper, sample()).Draw(page)
	if err := page.Finish(); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func TestGolden(t *testing.T) {
	for _, paper := range []Paper{A4(), Letter()} {
		got := file(t, paper)
		path := filepath.Join("testdata", strings.ToLower(paper.Name)+".svg")
		if *update {
			if err := os.WriteFile(path, got, 0o644); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(string(want), string(got)); diff != "" {
			t.Errorf("%s:\n%s", paper.Name, diff)
		}
	}
}

func TestRendersElsewhere(t *testing.T) {
	for _, paper := range []Paper{A4(), Letter()} {
		img := svgtest.Render(t, file(t, paper), 100)
		if svgtest.Ink(img, img.Bounds()) < 5000 {
			t.Errorf("%s is nearly empty", paper.Name)
		}
	}
}
