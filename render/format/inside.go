package format

import (
	"bytes"
	"crypto/sha256"
	"encoding/binary"
	"encoding/hex"
	"hash/crc32"
	"slices"
)

// Some sorts of file may have nothing behind their end. They carry the stamp inside, and its
// digest is that of the file without it.

// stampPDF puts the stamp as a comment before the last lines of a PDF file, which no offset
// of the file counts.
func stampPDF(file []byte) []byte {
	at := bytes.LastIndex(file, []byte("startxref\n"))
	return slices.Concat(file[:at], pdfStamp(file), file[at:])
}

// What the stamps begin with, in front of their words.
const (
	pdfBegin = "% "
	pngBegin = "\x00\x00\x00\x81tEXtComment\x00" // the length of the chunk comes first
)

func pdfStamp(file []byte) []byte {
	return slices.Concat([]byte(pdfBegin+stampWords), exactDigest(file), []byte("\n"))
}

// stampPNG puts the stamp as a text chunk before the last chunk of a PNG file, which has
// twelve bytes (PNG specification, 11.2.5 and 11.3.4.3).
func stampPNG(file []byte) []byte {
	at := len(file) - pngEnd
	return slices.Concat(file[:at], pngStamp(file), file[at:])
}

const pngEnd = 12

func pngStamp(file []byte) []byte {
	const length = 4 // bytes that its checksum does not count
	chunk := slices.Concat([]byte(pngBegin+stampWords), exactDigest(file))
	return binary.BigEndian.AppendUint32(chunk, crc32.ChecksumIEEE(chunk[length:]))
}

// stampedInside reports whether a file carries its stamp inside: what is left without it
// must give the same stamp.
func stampedInside(file []byte, stampOf func([]byte) []byte, begin string) bool {
	at := bytes.LastIndex(file, []byte(begin+stampWords))
	long := len(stampOf(nil))
	if at < 0 || at+long > len(file) {
		return false
	}
	rest := slices.Concat(file[:at], file[at+long:])
	return bytes.Equal(file[at:at+long], stampOf(rest))
}

// exactDigest is the SHA-256 of a file whose every byte counts, in hexadecimal digits.
func exactDigest(file []byte) []byte {
	sum := sha256.Sum256(file)
	return hex.AppendEncode(nil, sum[:])
}
