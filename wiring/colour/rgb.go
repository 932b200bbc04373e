package colour

import (
	"encoding/hex"
	"fmt"
	"math"
	"strings"
)

// RGB is a colour of the sRGB space (IEC 61966-2-1), eight bits a channel.
type RGB struct{ R, G, B uint8 }

// white is the paper.
var white = RGB{255, 255, 255}

// Hex returns "#1A1A1A".
func (c RGB) Hex() string { return fmt.Sprintf("#%02X%02X%02X", c.R, c.G, c.B) }

// ParseHex reads "#1A1A1A".
func ParseHex(s string) (RGB, error) {
	digits, hash := strings.CutPrefix(s, "#")
	channels, err := hex.DecodeString(digits)
	if !hash || err != nil || len(channels) != 3 {
		return RGB{}, fmt.Errorf("%q is no colour of the form #1A1A1A", s)
	}
	return RGB{channels[0], channels[1], channels[2]}, nil
}

// linear returns the channels as shares of light, 0 to 1, by the sRGB transfer curve of
// IEC 61966-2-1.
func (c RGB) linear() [3]float64 {
	var out [3]float64
	for i, v := range [3]uint8{c.R, c.G, c.B} {
		x := float64(v) / 255
		if x <= 0.04045 {
			out[i] = x / 12.92
		} else {
			out[i] = math.Pow((x+0.055)/1.055, 2.4)
		}
	}
	return out
}

// Luminance returns the relative luminance, 0 for black to 1 for white (WCAG 2.1).
func (c RGB) Luminance() float64 {
	v := c.linear()
	return 0.2126*v[0] + 0.7152*v[1] + 0.0722*v[2]
}

// Contrast returns the contrast ratio of two colours, 1 to 21 (WCAG 2.1).
func Contrast(a, b RGB) float64 {
	la, lb := a.Luminance(), b.Luminance()
	if la < lb {
		la, lb = lb, la
	}
	return (la + 0.05) / (lb + 0.05)
}

// mixed returns c moved towards another colour by a share, 0 to 1, in sRGB values.
func (c RGB) mixed(to RGB, share float64) RGB {
	mix := func(a, b uint8) uint8 {
		return uint8(math.Round(float64(a) + share*(float64(b)-float64(a))))
	}
	return RGB{mix(c.R, to.R), mix(c.G, to.G), mix(c.B, to.B)}
}
