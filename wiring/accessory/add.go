package accessory

import (
	"context"
	"fmt"
	"strings"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/job"
	"github.com/lugwright/lugwright/wiring/quantity"
)

// Request is what is to be added.
type Request struct {
	Kind         string
	Title, Place string
	Amps         quantity.Ampere // instead of the kind's own; 0: the kind's
	Watts        quantity.Watt   // the same as power
	Switch       string          // kind of its switch; empty: a rocker unless it has one itself; "none"
	SwitchPlace  string          // empty: dash, if the cart has one
	Length       quantity.Amount // from the block or the switch to it, and back; unknown: to be measured
	SwitchLength quantity.Amount // from the block to the switch
	Channel      int             // 0: the next free one
	Critical     bool            // held to the smaller limit of drop
}

// Plan is what was added.
type Plan struct {
	Part, Switch *wiring.Part // Switch: nil if there is none
	Fuse         *wiring.Fuse
	Wires        []*wiring.Wire
	Text         []byte         // of the job, changed
	Open         []diag.Finding // warnings that were not there before
	Left         quantity.Ampere
	Reducer      string // that Left is left on; empty: none feeds the block
}

// Refusal says why nothing is added.
type Refusal struct{ Why string }

// Error returns the reason.
func (e *Refusal) Error() string { return e.Why }

func refusef(format string, args ...any) error { return &Refusal{fmt.Sprintf(format, args...)} }

// Load reads a job whose own text is given.
type Load func(text []byte) (*wiring.Harness, []diag.Finding, error)

// Loader reads the text in the place of a file.
func Loader(file string, o job.Options) Load {
	return func(text []byte) (*wiring.Harness, []diag.Finding, error) {
		o.Text = text
		return job.Load(file, o)
	}
}

// Add puts a consumer on a job. Every byte of the text stays but for what is inserted. The
// error is a *[Refusal] if the cart has no room for it or the request makes no sense, else
// that of reading or of ctx.
func Add(ctx context.Context, text []byte, load Load, r Request) (*Plan, error) {
	h, err := read(load, text)
	if err != nil {
		return nil, err
	}
	a := &adding{request: r, text: text, load: load, before: h}
	if err := a.choose(); err != nil {
		return nil, err
	}
	draft, err := a.draft("auto", func(string) string { return "auto" })
	if err != nil {
		return nil, err
	}
	filled, err := read(load, draft)
	if err != nil {
		return nil, err
	}
	final, err := a.settle(filled, draft)
	if err != nil {
		return nil, err
	}
	return a.try(ctx, final)
}

func read(load Load, text []byte) (*wiring.Harness, error) {
	h, findings, err := load(text)
	if err != nil {
		return nil, err
	}
	if h == nil {
		for _, f := range findings {
			if f.Level == diag.Error {
				return nil, refusef("the job cannot be read: line %d: %s", f.At.Line, f.Message)
			}
		}
	}
	return h, nil
}

// adding is one call of Add.
type adding struct {
	request Request
	text    []byte
	load    Load
	before  *wiring.Harness

	block    *wiring.Part
	channel  *wiring.Fuse
	feed     *wiring.Terminal // of the channel
	negative *wiring.Terminal

	part, control string // designations; control: empty if there is no switch
	numbers       []string
	model         *wiring.Part // the device as its kind builds it
	plus, minus   string       // its supply terminals
	colour        string
}

// settle writes what was computed in the place of `auto`.
func (a *adding) settle(filled *wiring.Harness, draft []byte) ([]byte, error) {
	fuse := channelOf(filled.Part(a.block.Designation), a.channel.Channel)
	if fuse == nil || fuse.Rating == 0 {
		return nil, refusef("%s", a.whyNoFuse(draft))
	}
	return a.draft(fuse.Rating.String(), func(number string) string {
		if w := filled.Wire(number); w != nil {
			for _, p := range w.Pieces {
				if p.Auto && p.Size.Known() {
					return p.Size.String()
				}
			}
		}
		return "auto"
	})
}

// whyNoFuse is what the reader says of a rating that it cannot compute.
func (a *adding) whyNoFuse(draft []byte) string {
	_, findings, _ := a.load(draft) // it was read before
	for _, f := range findings {
		if strings.HasPrefix(f.Message, "the rating of "+a.channel.Ref()+" ") {
			return f.Message
		}
	}
	return "no fuse can be computed for " + a.request.Kind
}
