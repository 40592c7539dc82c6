package ui

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
)

func TestMemoryIsGivenBackAtRestAndAtTimesWhileHandsWork(t *testing.T) {
	begin := time.Date(2026, 7, 4, 15, 0, 0, 0, time.UTC)
	at := func(s float64) time.Time { return begin.Add(time.Duration(s * float64(time.Second))) }
	var r rest
	assert.False(t, r.due(at(0)), "nothing has been done")
	r.worked(at(0))
	assert.False(t, r.due(at(1.9)))
	assert.True(t, r.due(at(2.1)))
	assert.False(t, r.due(at(60)), "once")

	var given []float64
	for s := 100.0; s < 131; s += 0.5 {
		r.worked(at(s))
		if r.due(at(s)) {
			given = append(given, s)
		}
	}
	assert.Equal(t, []float64{110.5, 121.5}, given, "hands that do not rest")
	assert.True(t, r.due(at(133)))
}
