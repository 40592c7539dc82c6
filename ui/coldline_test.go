package ui

import (
	"bytes"
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/balance"
	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/check/market"
	"ripplewright/internal/show/card"
	"ripplewright/internal/show/report"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
)

// How long a tub stays out is one answer, wherever it is asked.
func TestBenchCardAndCommandLineSayAlikeHowLongToLeaveItOut(t *testing.T) {
	m := model.New(market.Library(t))
	for name, d := range market.Demos(t) {
		r, err := m.Evaluate(d)
		require.NoError(t, err)
		a, err := cold.Plan(context.Background(), d, &r, cold.Default(), cold.Options{NoPictures: true})
		require.NoError(t, err)
		want := say.LeaveOut(say.Style{}, &a.Counter)

		assert.True(t, strings.HasPrefix(leaveOut(&a), want), name)
		path := filepath.Join(t.TempDir(), "card.md")
		require.NoError(t, card.Write(path, d, &r, card.Options{Cold: &a}))
		written, err := os.ReadFile(path)
		require.NoError(t, err)
		assert.Contains(t, string(written), want, name)
		var page bytes.Buffer
		require.NoError(t, report.Cold{Answer: a}.WriteText(&page))
		assert.Contains(t, page.String(), "Serving, counter: "+want, name)
	}
}

// Advice to serve a tub warmer than its freezer says how long it stays out, in
// the words of the line below it.
func TestTheBenchSaysHowToServeWarmer(t *testing.T) {
	d := market.Demo(t)
	d.Serving.TemperatureC = -18
	m := model.New(market.Library(t))
	r, err := m.Evaluate(d)
	require.NoError(t, err)
	// With its lines locked, nothing but the serving temperature is left.
	all := balance.Locks{Lines: map[balance.LineAt]bool{}, Settings: map[string]bool{"dense.overrun_percent": true}}
	for i := range d.Dense.Lines {
		all.Lines[balance.LineAt{Part: design.DensePart, Line: i}] = true
	}
	found := balance.Mend(context.Background(), m, d, &r, all)
	require.NotEmpty(t, found.List)
	require.Equal(t, "serving.temperature_c", found.List[0].Changes[0].Path)
	a, err := cold.Plan(context.Background(), d, &r, cold.Default(), cold.Options{NoPictures: true})
	require.NoError(t, err)

	assert.Contains(t, verdictView(&r, &found, nil, nil).Suggestion, "leave the tub out until it is at")
	out := say.OutFor(say.Usual, &a.Counter)
	assert.Contains(t, verdictView(&r, &found, &a, nil).Suggestion, "leave the tub out "+out)
	assert.Contains(t, leaveOut(&a), out)
	path := filepath.Join(t.TempDir(), "card.md")
	require.NoError(t, card.Write(path, d, &r, card.Options{Cold: &a, Remedies: &found}))
	written, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Contains(t, string(written), "leave the tub out "+out)
}
