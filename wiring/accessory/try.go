package accessory

import (
	"context"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/headroom"
	"github.com/lugwright/lugwright/wiring/rule"
	"github.com/lugwright/lugwright/wiring/rules"
)

// try judges the changed job: what is left, then what the rules find that was not there.
func (a *adding) try(ctx context.Context, text []byte) (*Plan, error) {
	h, err := read(a.load, text)
	if err != nil {
		return nil, err
	}
	p := &Plan{Part: h.Part(a.part), Text: text, Fuse: channelOf(h.Part(a.block.Designation), a.channel.Channel)}
	if a.control != "" {
		p.Switch = h.Part(a.control)
	}
	for _, n := range a.numbers {
		if w := h.Wire(n); w != nil {
			p.Wires = append(p.Wires, w)
		}
	}
	if err := p.room(ctx, h); err != nil {
		return nil, err
	}
	if p.Open, err = a.fresh(ctx, h); err != nil {
		return nil, err
	}
	return p, nil
}

// room refuses what asks too much of a reducer, a feed or the pack.
func (p *Plan) room(ctx context.Context, h *wiring.Harness) error {
	room, err := headroom.Of(ctx, h)
	if err != nil {
		return err
	}
	for _, r := range room.Reducers {
		left, known := r.Left()
		if known && left < 0 {
			return refusef("%s has no room: with it everything takes %.3g A for ever, and it gives %v", r.Converter.Ref(), float64(r.Continuous), r.Limit)
		}
		if peak, known := r.LeftAtPeak(); known && peak < 0 {
			return refusef("%s has no room: with it everything takes %.3g A at worst, and it gives %v", r.Converter.Ref(), float64(r.Peak), r.Limit)
		}
		if known && p.Reducer == "" {
			p.Left, p.Reducer = left, r.Converter.Ref()
		}
	}
	for _, b := range room.Blocks {
		for _, f := range b.Feeds {
			if left, known := f.Left(); known && left < 0 {
				return refusef("%s has no room: with it the channels take %.3g A, and it carries %v", f.Terminal.Ref(), float64(f.Amps), f.Limit)
			}
		}
	}
	for _, s := range room.Packs {
		if left, known := s.Left(); known && left < 0 {
			return refusef("%s has no room: with it everything takes %.3g A, and it gives %v for ever", s.Source.Part.Designation, float64(s.Amps), s.Continuous)
		}
	}
	return nil
}

// fresh lists the warnings that the job did not have before, and refuses an error.
func (a *adding) fresh(ctx context.Context, h *wiring.Harness) ([]diag.Finding, error) {
	old, err := rule.Run(ctx, a.before, rules.All(), rule.Options{})
	if err != nil {
		return nil, err
	}
	result, err := rule.Run(ctx, h, rules.All(), rule.Options{})
	if err != nil {
		return nil, err
	}
	known := map[string]bool{}
	for _, f := range old.Open(diag.Warning) {
		known[f.Rule+f.Message] = true
	}
	var open []diag.Finding
	for _, f := range result.Open(diag.Warning) {
		if known[f.Rule+f.Message] {
			continue
		}
		if f.Level == diag.Error {
			return nil, refusef("%s (%s): %s", f.Message, f.Rule, f.Detail)
		}
		open = append(open, f)
	}
	return open, nil
}

// channelOf is the fuse of a channel; nil if the block has none of that number.
func channelOf(block *wiring.Part, channel int) *wiring.Fuse {
	if block == nil {
		return nil
	}
	for _, e := range block.Elements {
		if f, ok := e.(*wiring.Fuse); ok && f.Channel == channel {
			return f
		}
	}
	return nil
}
