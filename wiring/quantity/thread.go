package quantity

import (
	"math"
	"math/big"
	"regexp"
	"strconv"
)

// ThreadSystem says which standard a thread is counted in.
type ThreadSystem uint8

// The systems of thread.
const (
	NoThread       ThreadSystem = iota
	MetricThread                // ISO 261: M8, M8x1.25
	InchThread                  // ASME B1.1, by nominal diameter: 5/16 in, 5/16-18
	NumberedThread              // ASME B1.1, by number: 10-32
)

// Thread is the size of a stud, a screw or the hole of a ring lug. It is comparable; the
// zero Thread means "not stated".
type Thread struct {
	System ThreadSystem
	Size   float64 // MetricThread: mm; InchThread: inches; NumberedThread: the number
	Pitch  float64 // MetricThread: mm; the others: threads an inch; 0: not stated
}

// Known reports whether a thread was stated.
func (t Thread) Known() bool { return t.System != NoThread }

// Diameter returns the nominal outside diameter; 0 for the zero Thread. Number n of the
// numbered series is 0.060 in + n x 0.013 in (ASME B1.1).
func (t Thread) Diameter() Metre {
	switch t.System {
	case MetricThread:
		return Millimetres(t.Size)
	case InchThread:
		return Inches(t.Size)
	case NumberedThread:
		return Inches(0.060 + 0.013*t.Size)
	}
	return 0
}

// DiameterMM returns the nominal outside diameter in millimetres.
func (t Thread) DiameterMM() float64 {
	if t.System == MetricThread {
		return t.Size
	}
	return t.Diameter().Millimetres()
}

// Nominal returns the thread without its pitch: a ring lug does not care.
func (t Thread) Nominal() Thread {
	t.Pitch = 0
	return t
}

// String prints the thread as the trade writes it: "M8", "M8x1", "5/16 in", "5/16-18",
// "10-32", "#10" where the numbered series has no pitch. It returns "" for the zero Thread.
func (t Thread) String() string {
	pitch := strconv.FormatFloat(t.Pitch, 'f', -1, 64)
	size := strconv.FormatFloat(t.Size, 'f', -1, 64)
	switch {
	case t.System == MetricThread && t.Pitch != 0:
		return "M" + size + "x" + pitch
	case t.System == MetricThread:
		return "M" + size
	case t.System == InchThread && t.Pitch != 0:
		return inchName(t.Size) + "-" + pitch
	case t.System == InchThread:
		return inchName(t.Size) + " in"
	case t.System == NumberedThread && t.Pitch != 0:
		return size + "-" + pitch
	case t.System == NumberedThread:
		return "#" + size
	}
	return ""
}

// inchName writes sixty-fourths of an inch as a fraction: 0.3125 is 5/16.
func inchName(inches float64) string {
	r := new(big.Rat).SetFloat64(inches)
	if r == nil {
		return strconv.FormatFloat(inches, 'f', -1, 64)
	}
	if r.IsInt() {
		return r.Num().String()
	}
	if r.Num().Cmp(r.Denom()) < 0 {
		return r.RatString()
	}
	whole, part := new(big.Int).DivMod(r.Num(), r.Denom(), new(big.Int))
	return whole.String() + "-" + part.String() + "/" + r.Denom().String()
}

const exampleThreads = "such as M8, 5/16 in or 10-32"

var (
	metricThread   = regexp.MustCompile(`^[Mm] ?(\d{1,2}(?:\.\d)?)(?: ?[xX×] ?([1-9](?:\.\d{1,2})?|0\.[1-9]\d?))?$`)
	numberedThread = regexp.MustCompile(`^(\d{1,2})-([1-9]\d)$`)
	inchThread     = regexp.MustCompile(`^(\d{1,2}/\d{1,2}|\d-\d{1,2}/\d{1,2})-([1-9]\d?)$`)
	hashThread     = regexp.MustCompile(`^#(\d{1,2})(?:-(\d{2}))?$`)
)

// ParseThread reads the size of a stud or screw: "M8", "M8x1.25", "5/16 in", "5/16-18",
// "10-32". The error is always an [*Error].
func ParseThread(text string) (Thread, error) {
	cleaned, err := clean(text)
	if err != nil {
		return Thread{}, err
	}
	t, err := parseThread(cleaned)
	if err != nil {
		return Thread{}, err
	}
	return t, nil
}

func parseThread(text string) (Thread, *Error) {
	switch {
	case text == "":
		return Thread{}, fault(text, "has no value", exampleThreads)
	case metricThread.MatchString(text):
		m := metricThread.FindStringSubmatch(text)
		return checkedThread(text, Thread{MetricThread, float(m[1]), float(m[2])})
	case inchThread.MatchString(text):
		m := inchThread.FindStringSubmatch(text)
		n, rest, ok := cutNumeral(m[1])
		if !ok || rest != "" || n.value.IsInt() { // 1-8 would pass for a number
			return Thread{}, fault(text, "is no thread", exampleThreads)
		}
		inches, _ := n.value.Float64()
		return checkedThread(text, Thread{InchThread, inches, float(m[2])})
	case numberedThread.MatchString(text):
		m := numberedThread.FindStringSubmatch(text)
		return checkedThread(text, Thread{NumberedThread, float(m[1]), float(m[2])})
	case hashThread.MatchString(text):
		return Thread{}, hashedThread(text)
	}
	return inchDiameter(text)
}

// inchDiameter reads a thread given by its nominal diameter: 5/16 in.
func inchDiameter(text string) (Thread, *Error) {
	a, err := parse(text, Length)
	switch {
	case err != nil:
		return Thread{}, bareThread(text)
	case a.Unit == "mm":
		return Thread{}, fault(text, "is no thread", "write M"+rounded(a.Value*1000, digits))
	case a.Unit != "in" || a.About:
		return Thread{}, fault(text, "is no thread", exampleThreads)
	}
	n, _, _ := cutNumeral(a.Text)
	inches, _ := n.value.Float64()
	return checkedThread(text, Thread{System: InchThread, Size: inches})
}

// bareThread offers readings of a number without a system.
func bareThread(text string) *Error {
	n, rest, ok := cutNumeral(text)
	switch {
	case ok && rest == "" && n.fraction:
		return fault(text, "has no unit", "write "+text+" in")
	case ok && rest == "" && n.value.Cmp(big.NewRat(3, 1)) >= 0:
		return fault(text, "is no thread", "write M"+text)
	}
	return fault(text, "is no thread", exampleThreads)
}

// hashedThread explains "#10", which in a job file would begin a comment.
func hashedThread(text string) *Error {
	m := hashThread.FindStringSubmatch(text)
	if m[2] != "" {
		return fault(text, "", "write "+m[1]+"-"+m[2])
	}
	if pitches, ok := numberedPitches[m[1]]; ok {
		return fault(text, "", "write "+pitches)
	}
	return fault(text, "is no thread", exampleThreads)
}

// numberedPitches are the coarse and fine threads of the numbered series (ASME B1.1).
var numberedPitches = map[string]string{
	"4": "4-40 or 4-48", "5": "5-40 or 5-44", "6": "6-32 or 6-40",
	"8": "8-32 or 8-36", "10": "10-24 or 10-32", "12": "12-24 or 12-28",
}

// Bounds of a thread: our own, beyond both ends of what holds a wire.
const (
	finestThread  = 1.0  // mm
	largestThread = 52.0 // mm
	largestNumber = 14   // of the numbered series; inch threads come in sixty-fourths
)

func checkedThread(text string, t Thread) (Thread, *Error) {
	mm := t.DiameterMM()
	odd := t.System == InchThread && t.Size*64 != math.Trunc(t.Size*64) ||
		t.System == NumberedThread && t.Size > largestNumber
	if mm < finestThread || mm > largestThread || odd {
		return Thread{}, fault(text, "is no size of a stud or screw", exampleThreads)
	}
	return t, nil
}

// float reads digits that a pattern has matched; "" is 0.
func float(s string) float64 {
	f, err := strconv.ParseFloat(s, 64)
	if err != nil {
		return 0
	}
	return f
}
