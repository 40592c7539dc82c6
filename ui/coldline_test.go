package ui

import (
	"bytes"
	"context"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/assets"
	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/show/card"
	"ripplewright/internal/show/report"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/designfile"
)

// How long a tub stays out is one answer, wherever it is asked.
func TestBenchCardAndCommandLineSayAlikeHowLongToLeaveItOut(t *testing.T) {
	f, err := assets.Library.Open("library/ingredients.jsonl")
	require.NoError(t, err)
	defer f.Close()
	lib, err := ingredient.Read(f)
	require.NoError(t, err)
	names, err := fs.Glob(assets.Demos, "demos/*.yaml")
	require.NoError(t, err)
	require.NotEmpty(t, names)
	for _, name := range names {
		text, err := assets.Demos.ReadFile(name)
		require.NoError(t, err)
		file, err := designfile.Decode(name, text)
		require.NoError(t, err)
		r, err := model.New(lib).Evaluate(file.Design)
		require.NoError(t, err)
		a, err := cold.Plan(context.Background(), file.Design, &r, cold.Default(), cold.Options{NoPictures: true})
		require.NoError(t, err)
		want := say.LeaveOut(say.Style{}, &a.Counter)

		assert.True(t, strings.HasPrefix(leaveOut(&a), want), name)
		path := filepath.Join(t.TempDir(), "card.md")
		require.NoError(t, card.Write(path, file.Design, &r, card.Options{Cold: &a}))
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
	f, err := assets.Library.Open("library/ingredients.jsonl")
	require.NoError(t, err)
	defer f.Close()
	lib, err := ingredient.Read(f)
	require.NoError(t, err)
	text, err := assets.Demos.ReadFile("demos/hazelnut.yaml")
	require.NoError(t, err)
	file, err := designfile.Decode("hazelnut", text)
	require.NoError(t, err)
	d := file.Design
	d.Serving.TemperatureC = -18
	r, err := model.New(lib).Evaluate(d)
	require.NoError(t, err)
	require.Equal(t, model.ServeAt, r.Verdict.Remedy.Kind)
	a, err := cold.Plan(context.Background(), d, &r, cold.Default(), cold.Options{NoPictures: true})
	require.NoError(t, err)

	assert.Contains(t, verdictView(&r, nil, nil).Suggestion, "leave the tub out until it is at")
	out := say.OutFor(say.Usual, &a.Counter)
	assert.Contains(t, verdictView(&r, &a, nil).Suggestion, "leave the tub out "+out)
	assert.Contains(t, leaveOut(&a), out)
	path := filepath.Join(t.TempDir(), "card.md")
	require.NoError(t, card.Write(path, d, &r, card.Options{Cold: &a}))
	written, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Contains(t, string(written), "leave the tub out "+out)
}
