package pdf

import (
	"bytes"
	"image/png"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"github.com/lugwright/lugwright/render/ink"
	"github.com/lugwright/lugwright/render/ink/inktest"
	"github.com/lugwright/lugwright/render/svg"
	"github.com/lugwright/lugwright/render/svg/svgtest"
)

// ask runs an external program on a file and returns what it says.
func ask(t *testing.T, file []byte, program string, args ...string) string {
	t.Helper()
	tool := svgtest.Tool(t, program)
	path := filepath.Join(t.TempDir(), "file.pdf")
	if err := os.WriteFile(path, file, 0o600); err != nil {
		t.Fatal(err)
	}
	for i, a := range args {
		args[i] = strings.ReplaceAll(a, "FILE", path)
	}
	out, err := exec.Command(tool, args...).CombinedOutput()
	if err != nil {
		t.Fatalf("%s: %v\n%s", program, err, out)
	}
	return string(out)
}

// qpdf reads the file strictly: table of objects, lengths, references.
func TestQpdfFindsNoFault(t *testing.T) {
	got := ask(t, write(t, sampleOptions(), inktest.Sample, inktest.Sample), "qpdf", "--check", "FILE")
	if !strings.Contains(got, "No syntax or stream encoding errors found") || strings.Contains(got, "WARNING") {
		t.Error(got)
	}
}

// poppler must see every face embedded, cut down, and with a map to Unicode.
func TestPdffontsFindsEmbeddedSubsets(t *testing.T) {
	out := ask(t, write(t, sampleOptions(), inktest.Sample), "pdffonts", "FILE")
	row := regexp.MustCompile(`(?m)^[A-Z]{6}\+(\S+) +CID TrueType +Identity-H +yes yes yes`)
	var got []string
	for _, m := range row.FindAllStringSubmatch(out, -1) {
		got = append(got, m[1])
	}
	if diff := cmp.Diff([]string{"GoRegular", "GoBold", "GoMono"}, got); diff != "" {
		t.Errorf("%s\n%s", diff, out)
	}
}

// wordBox is a word and where pdftotext finds it.
var wordBox = regexp.MustCompile(`<word xMin="([\d.]+)" yMin="([\d.]+)" xMax="([\d.]+)" yMax="([\d.]+)">(.*)</word>`)

// pdftotext must find each text where it was put and as long as it was measured.
func TestPdftotextFindsEveryTextInItsPlace(t *testing.T) {
	texts := []ink.Text{
		{At: ink.At(5, 10), String: "W37", Capital: 2.5},
		{At: ink.At(30, 15), String: "motor-controller", Capital: 3.5, Face: ink.Bold, Anchor: ink.Middle},
		{At: ink.At(58, 20), String: "0.21mΩ≤µ²", Capital: 2.5, Face: ink.Mono, Anchor: ink.End},
		{At: ink.At(10, 38), String: "upwards", Capital: 2.5, Turned: true},
		{At: ink.At(20, 38), String: "up-from-the-end", Capital: 2.2, Turned: true, Anchor: ink.End, Halo: true},
	}
	texts[4].At.Y = 5
	out := ask(t, write(t, Options{}, func(p ink.Page) {
		for _, text := range texts {
			p.Text(text)
		}
	}), "pdftotext", "-bbox", "FILE", "-")
	found := map[string][4]float64{}
	for _, m := range wordBox.FindAllStringSubmatch(out, -1) {
		var box [4]float64
		for i := range box {
			v, err := strconv.ParseFloat(m[i+1], 64)
			if err != nil {
				t.Fatal(err)
			}
			box[i] = v / pointsPerMM
		}
		if _, twice := found[m[5]]; twice {
			t.Errorf("%q is found twice", m[5])
		}
		found[m[5]] = box
	}
	const near = 0.02 // mm
	for _, text := range texts {
		box, ok := found[text.String]
		if !ok {
			t.Errorf("%q is not found in\n%s", text.String, out)
			continue
		}
		want := text.Box()
		begin, end, wantBegin, wantEnd := box[0], box[2], want.Min.X, want.Max.X
		if text.Turned {
			begin, end, wantBegin, wantEnd = box[1], box[3], want.Min.Y, want.Max.Y
		}
		if math.Abs(begin-wantBegin) > near || math.Abs(end-wantEnd) > near {
			t.Errorf("%q runs from %.3f to %.3f mm, want %.3f to %.3f", text.String, begin, end, wantBegin, wantEnd)
		}
	}
}

// A name that the faces cannot show is found all the same.
func TestPdftotextFindsWhatTheFacesLack(t *testing.T) {
	const words = "🔋 pack ✓"
	got := ask(t, write(t, Options{}, func(p ink.Page) {
		p.Text(ink.Text{At: ink.At(5, 10), String: words, Capital: 2.5})
	}), "pdftotext", "FILE", "-")
	if strings.TrimSpace(got) != words {
		t.Errorf("%q, want %q", got, words)
	}
}

// Every text of the sample is found once, the one with a halo too.
func TestPdftotextReadsTheSample(t *testing.T) {
	got := ask(t, write(t, Options{}, inktest.Sample), "pdftotext", "-raw", "FILE", "-")
	got = strings.Join(strings.Fields(got), " ") // the program breaks turned lines at blanks
	for _, words := range inktest.Words() {
		if strings.Count(got, words) != 1 {
			t.Errorf("%q is not found once in %q", words, got)
		}
	}
}

func TestPdfinfoReadsWhatTheFileIs(t *testing.T) {
	file := write(t, sampleOptions(), inktest.Sample, inktest.Sample)
	got := map[string]string{}
	for line := range strings.Lines(ask(t, file, "pdfinfo", "-custom", "FILE") + ask(t, file, "pdfinfo", "-isodates", "FILE")) {
		key, value, _ := strings.Cut(line, ":")
		got[key] = strings.TrimSpace(value)
	}
	for key, want := range map[string]string{
		"Title": "TP-14 Sample (1)", "Author": "Quay Lane Carts", "Subject": "Every kind of mark, Ω", "Producer": "lugwright",
		"Job": "TP-14", "Revision": "B", "CreationDate": "2026-03-01T12:00:00Z", "Pages": "2", "Page size": "170.079 x 113.386 pts",
		"JavaScript": "no", "Encrypted": "no",
	} {
		if got[key] != want {
			t.Errorf("%s: %q, want %q", key, got[key], want)
		}
	}
}

// poppler must paint what librsvg paints of the SVG that the same marks give, but for how
// the two soften edges.
func TestAnotherFormatLooksTheSame(t *testing.T) {
	const dpi = 254
	picture := ask(t, write(t, Options{}, inktest.Sample), "pdftoppm", "-scale-to-x", "600", "-scale-to-y", "400", "-png", "FILE")
	got, err := png.Decode(strings.NewReader(picture))
	if err != nil {
		t.Fatal(err)
	}
	var drawing bytes.Buffer
	page := svg.New(&drawing, inktest.Width, inktest.Height, svg.Options{})
	inktest.Sample(page)
	if err := page.Finish(); err != nil {
		t.Fatal(err)
	}
	want := svgtest.Render(t, drawing.Bytes(), dpi, svgtest.FontsFrom(t, ink.Regular.TrueType(), ink.Bold.TrueType(), ink.Mono.TrueType()))
	if share := inktest.Differing(want, got, 96); share > 0.002 {
		t.Errorf("%.2f %% of the pixels differ", 100*share)
	}
}
