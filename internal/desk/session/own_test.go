package session

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
)

// figPaste is invented, a pack that the stall Saltmarsh Quay buys in.
func figPaste(t *testing.T, sugars float64) *ingredient.Ingredient {
	k := ingredient.Known
	in, err := ingredient.FromPack("fig_paste", "Fig paste", ingredient.Pack{PerG: 100, AvailableCarbohydrate: true,
		Fat: k(0.5), Carbohydrate: k(sugars + 5), Sugars: k(sugars), Fibre: k(7), Protein: k(2), Salt: k(0.05)})
	require.NoError(t, err)
	return in
}

func withOwn(s *Session, own ...*ingredient.Ingredient) *model.Model {
	return model.New(s.Model().Library().With(own))
}

func notes(t *testing.T, s *Session) string {
	r, err := s.Result()
	require.NoError(t, err)
	var text strings.Builder
	for _, w := range r.Warnings {
		text.WriteString(w.Code + ": " + say.Warning(say.Style{}, w) + "\n")
	}
	return text.String()
}

func TestADesignSavedHereIsTheSameWhereTheOwnIngredientsAreMissing(t *testing.T) {
	here, _ := newSession(t)
	bare := here.Model()
	here.Use(withOwn(here, figPaste(t, 50)))
	here.Commit(here.Design().WithLineAdded(design.DensePart, design.Line{Ingredient: "fig_paste", Grams: 80}), "add")
	require.Len(t, here.Design().Own, 1)
	path := filepath.Join(t.TempDir(), "quay.yaml")
	require.NoError(t, here.Save(path, false))
	require.False(t, here.Dirty())
	want, err := here.Result()
	require.NoError(t, err)

	for name, m := range map[string]*model.Model{"nothing there": bare, "other figures there": withOwn(here, figPaste(t, 30))} {
		there := New(m, design.New())
		require.NoError(t, there.Open(path), name)
		got, err := there.Result()
		require.NoError(t, err, name)
		require.Equal(t, want.Dense.State, got.Dense.State, name)
		require.Equal(t, want.Blend, got.Blend, name)
		require.Equal(t, want.Nutrition, got.Nutrition, name)
		require.Equal(t, name == "other figures there",
			strings.Contains(notes(t, there), "own_figures_differ: Fig paste: this design brings its own figures, which differ from those on your own shelf"), name)
	}
	require.NotContains(t, notes(t, here), "own_figures_differ")
}

func TestTheCopyGoesWithItsLastLineAndComesBackByUndo(t *testing.T) {
	s, _ := newSession(t)
	s.Use(withOwn(s, figPaste(t, 50)))
	s.Commit(s.Design().WithLineAdded(design.DensePart, design.Line{Ingredient: "fig_paste", Grams: 80}), "add")
	s.Commit(s.Design().WithLineRemoved(design.DensePart, 4), "remove")
	require.Empty(t, s.Design().Own)
	require.True(t, s.Undo())
	require.Len(t, s.Design().Own, 1)
	require.True(t, s.Undo())
	require.Empty(t, s.Design().Own)
}

func TestSavingCompletesAFileThatCameWithoutItsIngredient(t *testing.T) {
	s, _ := newSession(t)
	s.Use(withOwn(s, figPaste(t, 50)))
	path := filepath.Join(t.TempDir(), "quay.yaml")
	require.NoError(t, os.WriteFile(path, []byte("ripplewright: 1\ndense: {lines: [{ingredient: fig_paste, grams: 80}]} # by hand\nfoam: {lines: []}\n"), 0o644))
	require.NoError(t, s.Open(path))
	require.NoError(t, s.Save("", false))
	require.False(t, s.Dirty())
	data, err := os.ReadFile(path)
	require.NoError(t, err)
	require.Contains(t, string(data), "# by hand")
	require.Contains(t, string(data), "name: Fig paste")
	require.NoError(t, s.Open(path))
}
