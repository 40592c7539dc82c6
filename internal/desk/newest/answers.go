package newest

import (
	"context"

	"ripplewright/internal/desk/mishap"
)

// Answers finds answers to questions away from the window's thread, of the
// newest question only. Its methods are for the window's thread, where done is
// called too.
type Answers[Q, A any] struct {
	post func(func())
	find func(context.Context, Q) (A, error)
	done func(Q, A, error)
	work Work
	last uint64 // number of the newest question, moved on by Stop too
}

// NewAnswers returns what finds answers by find and brings them to done by post.
func NewAnswers[Q, A any](post func(func()), find func(context.Context, Q) (A, error), done func(Q, A, error)) *Answers[Q, A] {
	return &Answers[Q, A]{post: post, find: find, done: done}
}

// Ask has an answer found to q, instead of to any question before it.
func (a *Answers[Q, A]) Ask(q Q) {
	a.last++
	number := a.last
	a.work.Ask(func(ctx context.Context) {
		v, err := mishap.Answer(func() (A, error) { return a.find(ctx, q) })
		if ctx.Err() != nil {
			return
		}
		a.post(func() {
			if number == a.last {
				a.done(q, v, err)
			}
		})
	})
}

// Stop drops the question asked last, unless it is answered.
func (a *Answers[Q, A]) Stop() {
	a.last++
	a.work.Stop()
}
