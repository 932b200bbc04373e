package subset

import (
	"encoding/binary"
	"errors"
	"slices"
)

// Flags of a component in a composite glyph.
const (
	wordArguments   = 0x0001
	oneScale        = 0x0008
	moreComponents  = 0x0020
	twoScales       = 0x0040
	twoByTwo        = 0x0080
	hasInstructions = 0x0100
)

var errDamaged = errors.New("the outline is damaged")

// components returns where in a composite glyph the numbers of its parts stand, and where
// the last part ends. A simple or empty glyph has no parts.
func components(data []byte) (parts []int, end int, err error) {
	if len(data) == 0 || int16(binary.BigEndian.Uint16(data)) >= 0 {
		return nil, 0, nil
	}
	for at := 10; ; {
		if at+4 > len(data) {
			return nil, 0, errDamaged
		}
		flags := binary.BigEndian.Uint16(data[at:])
		parts = append(parts, at+2)
		at += 6
		if flags&wordArguments != 0 {
			at += 2
		}
		switch {
		case flags&oneScale != 0:
			at += 2
		case flags&twoScales != 0:
			at += 4
		case flags&twoByTwo != 0:
			at += 8
		}
		if at > len(data) {
			return nil, 0, errDamaged
		}
		if flags&moreComponents == 0 {
			return parts, at, nil
		}
	}
}

// renumbered returns a glyph without its hinting instructions, and with its parts called
// by their new numbers.
func renumbered(data []byte, number map[uint16]uint16) ([]byte, error) {
	if len(data) == 0 {
		return nil, nil
	}
	parts, end, err := components(data)
	if err != nil {
		return nil, err
	}
	if parts == nil {
		return unhinted(data)
	}
	data = slices.Clone(data[:end])
	for _, at := range parts {
		binary.BigEndian.PutUint16(data[at:], number[binary.BigEndian.Uint16(data[at:])])
		flags := binary.BigEndian.Uint16(data[at-2:])
		binary.BigEndian.PutUint16(data[at-2:], flags&^hasInstructions)
	}
	return data, nil
}

// unhinted drops the instructions of a simple glyph: they stand, with their length, behind
// the ends of the contours.
func unhinted(data []byte) ([]byte, error) {
	contours := int(binary.BigEndian.Uint16(data))
	length := 10 + 2*contours
	if length+2 > len(data) {
		return nil, errDamaged
	}
	after := length + 2 + int(binary.BigEndian.Uint16(data[length:]))
	if after > len(data) {
		return nil, errDamaged
	}
	return slices.Concat(data[:length], []byte{0, 0}, data[after:]), nil
}
