package work

import (
	"fmt"
	"slices"

	"github.com/lugwright/lugwright/wiring"
)

// world is the cart in the middle of the work.
type world struct {
	*bench
	on      map[*Device]bool           // devices on the cart
	at      map[*Strand]*[2]end        // strands on the cart
	leads   map[*wiring.Terminal]bool  // leads without a strand that are covered
	out     map[*wiring.Fuse]bool      // fuses that are not in
	set     map[control]string         // controls that are held
	guarded map[*wiring.Terminal]bool  // posts of batteries with their covers on
	charged map[*wiring.Capacitor]bool // capacitors that nobody has proved empty
	stack   map[*wiring.Terminal]lugs  // from the face outwards
	pending map[*Strand][2]bool        // ends that are still too short
	raised  bool                       // the driven wheels are off the ground
}

// end is where an end of a strand is.
type end struct {
	on      *wiring.Terminal // nil: it hangs free
	covered bool
}

type lugs []*Strand

// control names a control across carts.
type control struct{ part, name string }

func controlOf(c *wiring.Control) control {
	return control{wiring.Fold(c.Part.Designation), wiring.Fold(c.Name)}
}

// begin is the cart as it came: every fuse in, every control anywhere.
func (b *bench) begin() *world {
	w := &world{
		bench: b, on: map[*Device]bool{}, at: map[*Strand]*[2]end{}, leads: map[*wiring.Terminal]bool{},
		out: map[*wiring.Fuse]bool{}, set: map[control]string{}, guarded: map[*wiring.Terminal]bool{},
		charged: map[*wiring.Capacitor]bool{}, stack: map[*wiring.Terminal]lugs{}, pending: map[*Strand][2]bool{},
	}
	for _, d := range b.devices {
		w.on[d] = d.Old || d.imaginary()
		if d.Old {
			w.asFound(d)
		}
	}
	for _, s := range b.strands {
		if s.Old != nil {
			w.at[s] = &[2]end{{s.Was[0].Terminal, s.Was[0].Capped}, {s.Was[1].Terminal, s.Was[1].Capped}}
		}
		w.pending[s] = [2]bool{len(s.Extend[0]) > 0, len(s.Extend[1]) > 0}
	}
	for _, d := range b.devices {
		for _, t := range d.Terminals {
			w.stack[t] = w.lugsOf(t, d.Was, b.old)
		}
	}
	return w
}

// asFound takes over the fuses of a device as the old cart has them, and takes the leads
// that nothing is said about for insulated.
func (w *world) asFound(d *Device) {
	for i, e := range d.Elements {
		if f, ok := e.(*wiring.Fuse); ok && i < len(d.Was.Elements) {
			if was, ok := d.Was.Elements[i].(*wiring.Fuse); ok && !was.Fitted {
				w.out[f] = true
			}
		}
		if c, ok := e.(*wiring.Capacitor); ok {
			w.charged[c] = true
		}
	}
	for i, t := range d.Was.Terminals {
		if t.Form.Type == wiring.Lead && len(t.Wires) == 0 {
			w.leads[d.Terminals[i]] = true
		}
	}
}

// do carries an act out. The error says why it cannot be done.
func (w *world) do(a Act) error {
	switch a.Verb {
	case Set:
		w.set[controlOf(a.Control)] = a.Position
	case Free:
		delete(w.set, controlOf(a.Control))
	case Lift:
		return w.lift(a)
	case Cover:
		return w.cover(a)
	case Land:
		return w.land(a)
	case Join:
		return w.join(a)
	case Take:
		return w.take(a.Device)
	case Mount:
		return w.mount(a.Device)
	case Pull:
		w.out[a.Fuse] = true
	case Fit:
		return w.fit(a.Fuse)
	case Guard:
		if !w.on[w.device(a.Terminal)] {
			return fmt.Errorf("%s is not on the cart", a.Terminal.Part.Designation)
		}
		w.guarded[a.Terminal] = true
	case Prove:
		clear(w.charged)
	case Raise:
		w.raised = true
	}
	return nil
}

func (w *world) lift(a Act) error {
	at := w.at[a.Strand]
	switch {
	case at == nil || at[a.End].on == nil:
		return fmt.Errorf("%s is on nothing at this end", a.Strand.Name)
	case w.buried(a.Strand, at[a.End].on, a.Under):
		return fmt.Errorf("other lugs sit on %s at %s", a.Strand.Name, at[a.End].on.Ref())
	}
	t := at[a.End].on
	w.stack[t] = slices.DeleteFunc(slices.Clone(w.stack[t]), func(s *Strand) bool { return s == a.Strand })
	at[a.End] = end{}
	delete(w.guarded, t)
	if w.gone(a.Strand) {
		delete(w.at, a.Strand)
	}
	return nil
}

// gone reports whether a strand that has no place on the new cart is off all terminals.
func (w *world) gone(s *Strand) bool {
	at := w.at[s]
	return s.New == nil && (at[0].on == nil || s.fixedWas(0)) && (at[1].on == nil || s.fixedWas(1))
}

// buried reports whether lugs sit on a strand's that do not come off for it.
func (w *world) buried(s *Strand, t *wiring.Terminal, under []*Strand) bool {
	if t.Form.Type != wiring.Stud {
		return false
	}
	i := slices.Index(w.stack[t], s)
	for _, outer := range w.stack[t][i+1:] {
		if !slices.Contains(under, outer) {
			return true
		}
	}
	return false
}

func (w *world) cover(a Act) error {
	if a.Strand == nil {
		w.leads[a.Terminal] = true
		return nil
	}
	at := w.at[a.Strand]
	if at == nil {
		if a.Strand.New == nil {
			return nil // it came off the cart whole
		}
		at = w.bring(a.Strand)
	}
	at[a.End].covered = true
	return nil
}

// bring puts a new strand on the cart: what is a lead of a device hangs on it.
func (w *world) bring(s *Strand) *[2]end {
	at := &[2]end{}
	for i := range at {
		if s.fixedIs(i) {
			at[i].on = s.Is[i].Terminal
		}
	}
	w.at[s] = at
	return at
}

func (w *world) land(a Act) error {
	at := w.at[a.Strand]
	if at == nil {
		at = w.bring(a.Strand)
	}
	t := a.Terminal
	switch {
	case !w.on[w.device(t)]:
		return fmt.Errorf("%s is not on the cart yet, or no longer", t.Part.Designation)
	case at[a.End].on != nil && at[a.End].on != t:
		return fmt.Errorf("%s is still on %s", a.Strand.Name, at[a.End].on.Ref())
	case w.pending[a.Strand][a.End]:
		return fmt.Errorf("%s is too short before it is extended", a.Strand.Name)
	}
	for i := range at {
		if f := at[i].on; f != nil && a.Strand.fixedIs(i) && !w.on[w.device(f)] {
			return fmt.Errorf("%s, whose lead it is, is not on the cart", f.Part.Designation)
		}
	}
	if err := w.slip(a.Strand, t, a.Under); err != nil {
		return err
	}
	at[a.End] = end{on: t}
	delete(w.guarded, t)
	return nil
}

// slip puts a lug where it belongs on a stud.
func (w *world) slip(s *Strand, t *wiring.Terminal, under []*Strand) error {
	if t.Form.Type != wiring.Stud {
		w.stack[t] = append(w.stack[t], s)
		return nil
	}
	final := w.finalStack(t)
	i := 0
	for _, there := range w.stack[t] {
		if slices.Index(final, there) < slices.Index(final, s) || !slices.Contains(final, there) {
			i++
		} else if !slices.Contains(under, there) {
			return fmt.Errorf("%s belongs under %s on %s", s.Name, there.Name, t.Ref())
		}
	}
	w.stack[t] = slices.Insert(slices.Clone(w.stack[t]), min(i, len(w.stack[t])), s)
	return nil
}

func (w *world) join(a Act) error {
	at := w.at[a.Strand]
	if at != nil && at[a.End].on != nil {
		return fmt.Errorf("%s is still on %s", a.Strand.Name, at[a.End].on.Ref())
	}
	p := w.pending[a.Strand]
	p[a.End] = false
	w.pending[a.Strand] = p
	return nil
}

func (w *world) take(d *Device) error {
	if !w.on[d] {
		return fmt.Errorf("%s is not on the cart", d.Designation)
	}
	for _, s := range w.strands {
		at := w.at[s]
		if at == nil {
			continue
		}
		for i := range at {
			if at[i].on == nil || w.device(at[i].on) != d || s.fixedNow(i) && at[1-i].on == nil {
				continue
			}
			if at[1-i].on != nil {
				return fmt.Errorf("%s still joins it to %s", s.Name, at[1-i].on.Ref())
			}
			if s.New != nil {
				return fmt.Errorf("%s is still on it", s.Name)
			}
		}
	}
	for _, s := range w.strands {
		if at := w.at[s]; at != nil && s.New == nil && (w.mine(at[0], d) || w.mine(at[1], d)) {
			delete(w.at, s)
		}
	}
	w.on[d] = false
	return nil
}

func (w *world) mine(e end, d *Device) bool { return e.on != nil && w.device(e.on) == d }

// mount puts a device on the cart: its fuses out, its leads bare, its capacitors empty, the
// covers on its posts.
func (w *world) mount(d *Device) error {
	if other := w.olds[wiring.Fold(d.Designation)]; other != nil && other != d && w.on[other] {
		return fmt.Errorf("the old %s is still in its place", d.Designation)
	}
	w.on[d] = true
	for _, e := range d.Elements {
		if f, ok := e.(*wiring.Fuse); ok && removable(d, f) {
			w.out[f] = true
		}
	}
	for _, t := range d.Terminals {
		w.guarded[t] = w.isPole(t)
	}
	for _, s := range w.strands {
		if s.New != nil && s.Old == nil && w.at[s] == nil && !ownCopper(s.New) {
			for i := range s.Is {
				if s.fixedIs(i) && w.device(s.Is[i].Terminal) == d {
					w.bring(s)
				}
			}
		}
	}
	return nil
}

// fit puts a fuse in. Every post of a battery that is on the cart must have its cover on by
// then.
func (w *world) fit(f *wiring.Fuse) error {
	for _, d := range w.devices {
		for _, t := range d.Terminals {
			if w.on[d] && d.New && w.isPole(t) && !w.guarded[t] {
				return fmt.Errorf("%s has no cover on", t.Ref())
			}
		}
	}
	w.out[f] = false
	return nil
}

// removable reports whether a fuse comes out without tools into the device: fuses in holders
// and blocks do, breakers and what is inside a pack do not.
func removable(d *Device, f *wiring.Fuse) bool {
	return f.Style != "breaker" && (d.Kind.Symbol == "fuse" || d.Kind.Symbol == "fuse-block")
}
