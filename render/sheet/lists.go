package sheet

import (
	"sync"

	"github.com/lugwright/lugwright/wiring/list"
	"github.com/lugwright/lugwright/wiring/meter"
	"github.com/lugwright/lugwright/wiring/settle"
)

// answers are what a book computes once, each when it is first asked for.
type answers struct {
	survey   func() (*meter.Survey, error)
	posts    func() ([]list.Post, error)
	reels    func() []list.Reel
	fittings func() []list.Fitting
	fuses    func() []list.FuseEntry
}

func (b *Book) prepare() {
	b.answers = answers{
		survey:   sync.OnceValues(func() (*meter.Survey, error) { return meter.New(b.Harness).Survey(b.ctx) }),
		posts:    sync.OnceValues(b.findPosts),
		reels:    sync.OnceValue(func() []list.Reel { return list.Reels(b.Harness, b.Handbook) }),
		fittings: sync.OnceValue(func() []list.Fitting { return list.Fittings(b.Harness, b.Handbook) }),
		fuses:    sync.OnceValue(func() []list.FuseEntry { return list.Fuses(b.Harness, b.Handbook) }),
	}
}

// Survey is what a meter reads in every state. The error is that of the context.
func (b *Book) Survey() (*meter.Survey, error) { return b.answers.survey() }

// Posts are the studs with the lugs on them, ordered by the largest currents of all states.
// The error is that of the context.
func (b *Book) Posts() ([]list.Post, error) { return b.answers.posts() }

func (b *Book) findPosts() ([]list.Post, error) {
	survey, err := b.Survey()
	if err != nil {
		return nil, err
	}
	var points []*settle.Point
	for _, s := range survey.Sheets {
		points = append(points, s.Point)
	}
	return list.Posts(b.Harness, b.Handbook, list.LargestAmps(points)), nil
}

// Reels is what is cut for the work.
func (b *Book) Reels() []list.Reel { return b.answers.reels() }

// Fittings is what the work puts on the ends of wires.
func (b *Book) Fittings() []list.Fitting { return b.answers.fittings() }

// Fuses are the fuses and the empty channels.
func (b *Book) Fuses() []list.FuseEntry { return b.answers.fuses() }
