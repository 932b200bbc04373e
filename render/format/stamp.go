package format

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
)

// A stamp is the last line of a file that was written here, with a digest of all that
// stands before it. It tells our own files, as we left them, from those that somebody else
// wrote or has worked on since, which must not be replaced without asking.
const stampWords = "made by lugwright; change the job, not this file: sha256 "

// comment is how a sort of file marks a line that is not content.
type comment struct{ begin, end string }

// The comments of the sorts of file that are written.
var (
	markup = comment{"<!-- ", " -->"}
	plain  = comment{"# ", ""}
)

// stamp returns a document with its stamp. The document may not have one.
func stamp(document []byte, c comment) []byte {
	document = bytes.TrimRight(document, "\r\n")
	out := append(bytes.Clone(document), '\n')
	out = append(out, c.begin...)
	out = append(out, stampWords...)
	out = append(out, digest(document)...)
	out = append(out, c.end...)
	return append(out, '\n')
}

// Stamped reports whether a file was written here and has not been changed since.
// Line ends do not count: version control may have turned them.
func Stamped(file []byte) bool {
	switch {
	case bytes.HasPrefix(file, []byte("%PDF-")):
		return stampedInside(file, pdfStamp, pdfBegin)
	case bytes.HasPrefix(file, []byte("\x89PNG")):
		return stampedInside(file, pngStamp, pngBegin)
	}
	file = plainLines(file)
	return isStamped(file, markup) || isStamped(file, plain)
}

func isStamped(file []byte, c comment) bool {
	at := bytes.LastIndex(file, []byte("\n"+c.begin+stampWords))
	if at < 0 {
		return false
	}
	last := string(file[at:])
	return last == "\n"+c.begin+stampWords+string(digest(file[:at]))+c.end+"\n"
}

// plainLines takes out what line ends of other systems add.
func plainLines(file []byte) []byte { return bytes.ReplaceAll(file, []byte("\r"), nil) }

// digest is the SHA-256 (FIPS 180-4) of a document in hexadecimal digits.
func digest(document []byte) []byte {
	sum := sha256.Sum256(plainLines(document))
	return hex.AppendEncode(nil, sum[:])
}
