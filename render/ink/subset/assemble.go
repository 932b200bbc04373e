package subset

import (
	"encoding/binary"
	"maps"
	"math/bits"
	"slices"
)

// characterMap makes a cmap table of one format 4 map, with a segment for each character.
func characterMap(glyphOf map[rune]uint16, number map[uint16]uint16) []byte {
	characters := slices.Sorted(maps.Keys(glyphOf))
	segments := len(characters) + 1 // the last one is the terminator that the format demands
	be := binary.BigEndian
	var ends, starts, deltas []byte
	for _, r := range characters {
		ends = be.AppendUint16(ends, uint16(r))
		starts = be.AppendUint16(starts, uint16(r))
		deltas = be.AppendUint16(deltas, number[glyphOf[r]]-uint16(r))
	}
	ends, starts, deltas = be.AppendUint16(ends, 0xffff), be.AppendUint16(starts, 0xffff), be.AppendUint16(deltas, 1)

	var b []byte
	for _, v := range []uint16{
		0, 1, // version, number of maps
		3, 1, 0, 12, // Unicode, basic plane, where the map begins
		4, uint16(16 + 8*segments), 0, // format, length, language
	} {
		b = be.AppendUint16(b, v)
	}
	b = be.AppendUint16(b, uint16(2*segments))
	b = appendSearch(b, segments, 2)
	b = append(b, ends...)
	b = append(b, 0, 0)
	b = append(b, starts...)
	b = append(b, deltas...)
	return append(b, make([]byte, 2*segments)...) // idRangeOffset: the delta alone decides
}

// appendSearch adds the three numbers by which a reader of old starts a binary search over
// n entries of a size in bytes.
func appendSearch(b []byte, n, size int) []byte {
	power := bits.Len(uint(n)) - 1
	searched := size << power
	b = binary.BigEndian.AppendUint16(b, uint16(searched))
	b = binary.BigEndian.AppendUint16(b, uint16(power))
	return binary.BigEndian.AppendUint16(b, uint16(size*n-searched))
}

// assemble writes a font file: directory, tables in the order of their tags, checksums.
func assemble(t tables) []byte {
	tags := slices.Sorted(maps.Keys(t))
	be := binary.BigEndian
	font := be.AppendUint32(nil, 0x00010000)
	font = be.AppendUint16(font, uint16(len(tags)))
	font = appendSearch(font, len(tags), 16)

	var body []byte
	head := 0
	first := len(font) + 16*len(tags)
	for _, tag := range tags {
		at := first + len(body)
		if tag == "head" {
			head = at
		}
		body = append(body, t[tag]...)
		for len(body)%4 != 0 {
			body = append(body, 0)
		}
		font = append(font, tag...)
		font = be.AppendUint32(font, checksum(body[at-first:]))
		font = be.AppendUint32(font, uint32(at))
		font = be.AppendUint32(font, uint32(len(t[tag])))
	}
	font = append(font, body...)
	be.PutUint32(font[head+8:], 0xb1b0afba-checksum(font))
	return font
}

// checksum adds up the big-endian words of data, whose length is a multiple of four.
func checksum(data []byte) uint32 {
	var sum uint32
	for ; len(data) >= 4; data = data[4:] {
		sum += binary.BigEndian.Uint32(data)
	}
	return sum
}
