package mishap

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestWhatPanicsIsCaughtAndToldOnce(t *testing.T) {
	var told []Mishap
	t.Cleanup(Tell(func(m Mishap) { told = append(told, m) }))
	after := false
	for name, run := range map[string]func(){
		"do":   func() { Do(func() { panic("spilt") }) },
		"func": Func(func() { panic("spilt") }),
		"with": func() { With(func(int) { panic("spilt") })(3) },
		"nil": func() {
			var m map[string]int
			Do(func() { m["a"] = 1 })
		},
	} {
		told = nil
		run()
		require.Len(t, told, 1, name)
	}
	require.ErrorIs(t, Try(func() { panic("spilt") }), ErrCaught)
	require.NoError(t, Try(func() { after = true }))
	assert.True(t, after)
	assert.Nil(t, Func(nil))
	assert.Nil(t, With[int](nil))
}

func TestAWorkerThatPanicsEndsAlone(t *testing.T) {
	told := make(chan Mishap, 1)
	t.Cleanup(Tell(func(m Mishap) { told <- m }))
	Go(func() { panic("spilt") })
	assert.Equal(t, "spilt", (<-told).Value)
}

func TestWithoutAListenerAPanicIsAPanic(t *testing.T) {
	Tell(func(Mishap) {})()
	assert.PanicsWithValue(t, "spilt", func() { Do(func() { panic("spilt") }) })
}

func spill() { panic("spilt " + strings.Repeat("milk ", 1000)) }

func TestAReportNamesThePlaceAndStaysShort(t *testing.T) {
	var m Mishap
	t.Cleanup(Tell(func(caught Mishap) { m = caught }))
	Do(spill)
	assert.Contains(t, m.Place(), "mishap_test.go:")
	first := m.Place()
	Do(spill)
	assert.Equal(t, first, m.Place(), "the same mishap again")
	text := m.Report("1.2")
	assert.Contains(t, text, "Ripplewright 1.2 on ")
	assert.Contains(t, text, "spill")
	assert.Less(t, strings.Count(text, "milk"), 100)
}
