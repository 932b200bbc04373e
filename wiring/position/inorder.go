package position

import (
	"context"
	"runtime"
	"sync"
)

// batch is how many numbers a worker takes at a time: enough that handing them over costs
// nothing beside the work, few enough that stopping early wastes little.
const batch = 32

// inOrder calls look for the numbers from 0 to count - 1, in several goroutines at once,
// and visit with each result in order, in the calling one. It ends when visit returns
// false or look an error. No more results are kept than the workers hold at a time.
func inOrder[T any](ctx context.Context, count int64, look func(context.Context, int64) (T, error), visit func(int64, T) bool) error {
	ctx, stop := context.WithCancel(ctx)
	workers := runtime.GOMAXPROCS(0)
	work := make(chan *lot[T])
	lots := make(chan *lot[T], 2*workers)
	var running sync.WaitGroup
	defer running.Wait()
	defer stop()
	for range workers {
		running.Go(func() {
			for l := range work {
				l.fill(ctx, look)
			}
		})
	}
	running.Go(func() { divide(ctx, count, work, lots) })
	for l := range lots {
		<-l.done
		for i, result := range l.results {
			if !visit(l.from+int64(i), result) {
				return nil
			}
		}
		if l.err != nil {
			return l.err
		}
	}
	return ctx.Err()
}

// divide hands out the numbers in lots, each of them to whoever visits, who takes them in
// order, and to a worker.
func divide[T any](ctx context.Context, count int64, work, lots chan<- *lot[T]) {
	defer close(lots)
	defer close(work)
	for from := int64(0); from < count; from += batch {
		l := &lot[T]{from: from, to: min(from+batch, count), done: make(chan struct{})}
		select {
		case <-ctx.Done():
			return
		case lots <- l:
		}
		work <- l
	}
}

// lot is a batch of numbers and what looking at them gave.
type lot[T any] struct {
	from, to int64
	results  []T // as many as there are before an error
	err      error
	done     chan struct{}
}

func (l *lot[T]) fill(ctx context.Context, look func(context.Context, int64) (T, error)) {
	defer close(l.done)
	l.results = make([]T, 0, l.to-l.from)
	for i := l.from; i < l.to; i++ {
		if l.err = ctx.Err(); l.err != nil {
			return
		}
		result, err := look(ctx, i)
		if err != nil {
			l.err = err
			return
		}
		l.results = append(l.results, result)
	}
}
