package png

import (
	"bytes"
	"encoding/binary"
	"hash/crc32"
	"io"

	"github.com/lugwright/lugwright/render/ink"
)

// labelled passes a PNG file on and puts further chunks behind its first, the header: the
// standard library writes none.
type labelled struct {
	w      io.Writer
	chunks []byte
	passed int
}

// afterHeader is the length of the signature and the header (PNG specification, 5.2, 11.2.2).
const afterHeader = 8 + 25

func (l *labelled) Write(p []byte) (int, error) {
	n := min(len(p), max(0, afterHeader-l.passed))
	for _, part := range [][]byte{p[:n], l.due(n), p[n:]} {
		if _, err := l.w.Write(part); err != nil {
			return 0, err
		}
	}
	l.passed += len(p)
	return len(p), nil
}

// due returns the chunks once, when the header is complete.
func (l *labelled) due(n int) []byte {
	if l.chunks == nil || l.passed+n < afterHeader {
		return nil
	}
	chunks := l.chunks
	l.chunks = nil
	return chunks
}

// chunks say how many pixels a metre has, by which programs print the sheet at its true size
// (11.3.5.3), and what the picture shows (11.3.4.5).
func (p *Page) chunks() []byte {
	const inchesPerKilometre = 10_000_000_000 / 254_000
	perMetre := uint32(round(int64(p.opt.DPI)*inchesPerKilometre, 1000))
	size := binary.BigEndian.AppendUint32(nil, perMetre)
	size = binary.BigEndian.AppendUint32(size, perMetre)
	all := chunk("pHYs", append(size, 1))
	if title := ink.Clean(p.opt.Title); title != "" {
		// Not compressed, of no language.
		all = append(all, chunk("iTXt", bytes.Join([][]byte{[]byte("Title"), {0, 0}, nil, []byte(title)}, []byte{0}))...)
	}
	return all
}

// chunk frames data: length, type, data, checksum (5.3).
func chunk(kind string, data []byte) []byte {
	b := binary.BigEndian.AppendUint32(nil, uint32(len(data)))
	b = append(append(b, kind...), data...)
	return binary.BigEndian.AppendUint32(b, crc32.ChecksumIEEE(b[4:]))
}
