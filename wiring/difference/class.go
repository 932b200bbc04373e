package difference

import "strings"

// Class is a way in which something changed.
type Class string

// The classes. Each is undone by one of them, see [Class.Inverse].
const (
	Added      Class = "added"
	Removed    Class = "removed"
	Replaced   Class = "replaced" // another kind of device under the same designation
	Renumbered Class = "renumbered"

	Moved    Class = "moved" // an end of a wire, or a part to another place
	Landed   Class = "landed"
	Loosened Class = "loosened"
	Covered  Class = "capped"
	Freed    Class = "uncapped"
	Relugged Class = "re-lugged" // another lug at the same place

	Recoloured Class = "recoloured"
	Resized    Class = "resized"
	Recut      Class = "recut" // another length
	Extended   Class = "extended"
	Shortened  Class = "shortened" // an extension taken off again
	Respliced  Class = "respliced" // other extensions, or otherwise joined

	Refused Class = "re-fused" // a fuse of another rating, fitted, or taken out
	Rerated Class = "re-rated"
	Retold  Class = "reworded" // what is said of it, and nothing that carries current
	Relaid  Class = "relaid"   // into another loom
	Stacked Class = "restacked"
)

var undoneBy = map[Class]Class{
	Added: Removed, Removed: Added, Landed: Loosened, Loosened: Landed,
	Covered: Freed, Freed: Covered, Extended: Shortened, Shortened: Extended,
}

// Inverse is the class of the same change made backwards.
func (c Class) Inverse() Class {
	if other, ok := undoneBy[c]; ok {
		return other
	}
	return c
}

// partClass is the class of another value of a fact of a part.
func partClass(key string) Class {
	switch {
	case key == "place":
		return Moved
	case key == "title" || key == "note" || key == "serial":
		return Retold
	case strings.HasPrefix(key, fuseKey):
		return Refused
	}
	return Rerated
}

// wireClass is the class of another value of a fact of a wire.
func wireClass(key string) Class {
	switch key {
	case "colour":
		return Recoloured
	case "size":
		return Resized
	case "length":
		return Recut
	case "joint":
		return Respliced
	case "loom":
		return Relaid
	case "for", "note":
		return Retold
	}
	return Rerated
}

// endClass is the class of an end that is somewhere else.
func endClass(old, new Landing) Class {
	switch {
	case old == new:
		return Moved
	case old == Loose:
		return Landed
	case new == Loose:
		return Loosened
	case new == Capped:
		return Covered
	}
	return Freed
}

// pieceClass is the class of other extensions at an end.
func pieceClass(old, new []Value) Class {
	shorter := min(len(old), len(new))
	for i := range shorter {
		if old[i].Exact != new[i].Exact {
			return Respliced
		}
	}
	if len(old) > shorter {
		return Shortened
	}
	return Extended
}
