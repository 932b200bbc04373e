package render

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
)

// A stamp is the last line of a file that was drawn: an XML comment with a digest of all
// that stands before it. It tells our own files, as we left them, from those that somebody
// else wrote or has worked on since, which must not be replaced without asking.
const (
	stampBegin = "<!-- drawn by lugwright; change the job, not this file: sha256 "
	stampEnd   = " -->\n"
)

// Stamp returns an SVG or HTML document with its stamp. The document may not have one.
func Stamp(document []byte) []byte {
	document = bytes.TrimRight(document, "\r\n")
	out := make([]byte, 0, len(document)+len(stampBegin)+2*sha256.Size+len(stampEnd)+1)
	out = append(out, document...)
	out = append(out, '\n')
	out = append(out, stampBegin...)
	out = append(out, digest(document)...)
	return append(out, stampEnd...)
}

// Stamped reports whether a file was written by Stamp and has not been changed since. Line
// ends do not count: version control may have turned them.
func Stamped(file []byte) bool {
	file = plainLines(file)
	at := bytes.LastIndex(file, []byte(stampBegin))
	if at < 1 || !bytes.HasSuffix(file, []byte(stampEnd)) {
		return false
	}
	claimed := file[at+len(stampBegin) : len(file)-len(stampEnd)]
	return bytes.Equal(claimed, digest(file[:at-1]))
}

// plainLines takes out what line ends of other systems add.
func plainLines(file []byte) []byte { return bytes.ReplaceAll(file, []byte("\r"), nil) }

// digest is the SHA-256 (FIPS 180-4) of a document in hexadecimal digits.
func digest(document []byte) []byte {
	sum := sha256.Sum256(plainLines(document))
	return hex.AppendEncode(nil, sum[:])
}
