package mending

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/check/market"
	"ripplewright/internal/work/design"
)

func kitchen(design.Design) cold.Profile { return cold.Default() }

// hard is the stall's design at a temperature at which its custard is too hard.
func hard(t *testing.T, m *model.Model) (design.Design, *model.Result) {
	t.Helper()
	d := market.Honey()
	d.Serving.TemperatureC = -19
	r, err := m.Evaluate(d)
	require.NoError(t, err)
	require.False(t, r.Verdict.Good)
	return d, &r
}

func TestRemediesComeOfTheNewestDesignAndLeaveLockedLinesAlone(t *testing.T) {
	m := model.New(market.Library(t))
	posted := make(chan func(), 100)
	known := 0
	n := New(func(f func()) { posted <- f }, kitchen, func() { known++ })
	wait := func() {
		t.Helper()
		n.answers.Ask(n.last) // whatever is on its way
		require.Eventually(t, func() bool {
			select {
			case f := <-posted:
				f()
			default:
			}
			return n.Found() != nil
		}, 60*time.Second, time.Millisecond)
	}
	d, r := hard(t, m)
	n.Show(m, d, r)
	assert.Nil(t, n.Found())
	wait()
	require.NotEmpty(t, n.Found().List)
	assert.Positive(t, known)
	require.Eventually(t, func() bool {
		select {
		case f := <-posted:
			f()
		default:
		}
		return n.Found().List[0].Beside != nil
	}, 60*time.Second, time.Millisecond, "what it brings beside comes after it")
	before := n.Found()
	n.Show(m, d, r)
	assert.Same(t, before, n.Found(), "the same design is not looked at again")

	for i := range d.Dense.Lines {
		n.Lock(&d, design.DensePart, i, true)
	}
	assert.Nil(t, n.Found())
	wait()
	for _, p := range n.Found().List {
		for _, c := range p.Changes {
			assert.False(t, c.Ingredient != nil && c.Part == design.DensePart && c.Line >= 0, "%+v", c)
		}
	}
	moved := d.WithLineMoved(design.DensePart, 0, 2)
	assert.True(t, n.Locked(&moved, design.DensePart, 2), "a lock goes with its line")
}

func TestAGoodDesignNeedsNoRemedyAndNoWait(t *testing.T) {
	m := model.New(market.Library(t))
	n := New(func(func()) { t.Error("something was looked for") }, kitchen, func() {})
	d := market.Demo(t)
	r, err := m.Evaluate(d)
	require.NoError(t, err)
	require.True(t, r.Verdict.Good)
	n.Show(m, d, &r)
	require.NotNil(t, n.Found())
	assert.Empty(t, n.Found().List)
}
