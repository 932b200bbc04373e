package position

import (
	"fmt"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/settle"
)

// NoDriveOnCharge says that the cart cannot move while its plug is in and live. It depends
// on amounts: all positions with a plug in are settled.
func NoDriveOnCharge() *Property {
	return &Property{
		ID:      "no-drive-on-charge",
		Title:   "the cart cannot be driven while it charges",
		Means:   "With a plug in, and AC or the charger behind it live, no part that moves the cart is on, in any position of all other controls.",
		Premise: pluggedIn,
		Judge:   func(c *Cart, p *settle.Point) []Violation { return c.driving(p, "with the plug in") },
	}
}

func pluggedIn(c *Cart, s *Space) ([]*Space, string) { return c.plugged(s, "in") }

// plugged has a space for each plug, with that plug in the first of some positions that it
// has.
func (c *Cart) plugged(s *Space, positions ...string) ([]*Space, string) {
	if !c.moves() {
		return nil, "no part moves this cart"
	}
	spaces, err := s.each("plug", positions...)
	if err != nil {
		return nil, err.Error()
	}
	return spaces, ""
}

// moves reports whether any part moves the cart.
func (c *Cart) moves() bool {
	for _, p := range c.Harness.Parts {
		if p.Kind != nil && p.Kind.Traction {
			return true
		}
	}
	return false
}

// driving lists the parts that move the cart at a point.
func (c *Cart) driving(p *settle.Point, when string) []Violation {
	var vs []Violation
	for _, part := range c.Harness.Parts {
		if part.Kind == nil || !part.Kind.Traction || !p.On(part) {
			continue
		}
		on := settle.WhatTurnsOn(part)
		vs = append(vs, Violation{
			Subject: part.Designation,
			Element: on,
			Says:    fmt.Sprintf("%s moves the cart %s: it takes %v.", titled(part), when, p.Watts(on)),
			Ways:    func() []Way { return c.because(p, on) },
		})
	}
	return vs
}

// titled is a part with what it is: "M1 (Series motor)".
func titled(p *wiring.Part) string {
	if p.Title == "" && (p.Kind == nil || p.Kind.Title == "") {
		return p.Designation
	}
	return p.Designation + " (" + p.Name() + ")"
}
