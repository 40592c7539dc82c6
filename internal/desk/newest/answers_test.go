package newest

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestOnlyTheNewestQuestionIsAnswered(t *testing.T) {
	posted := make(chan func(), 10)
	begun, let := make(chan int, 10), make(chan struct{})
	var got []int
	a := NewAnswers(func(f func()) { posted <- f },
		func(ctx context.Context, q int) (int, error) {
			begun <- q
			<-let
			return 10 * q, nil
		},
		func(q, v int, err error) { got = append(got, q, v) })
	a.Ask(1)
	assert.Equal(t, 1, <-begun)
	a.Ask(2)
	a.Ask(3)
	let <- struct{}{} // the first ends, overtaken
	assert.Equal(t, 3, <-begun)
	let <- struct{}{}
	(<-posted)()
	assert.Equal(t, []int{3, 30}, got)

	a.Ask(4)
	<-begun
	let <- struct{}{}
	late := <-posted
	a.Stop()
	late()
	assert.Len(t, got, 2, "an answer that comes after the stop is dropped")
}
