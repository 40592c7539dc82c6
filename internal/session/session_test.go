package session

import (
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"ripplewright/internal/design"
	"ripplewright/internal/designfile"
	"ripplewright/internal/ingredient"
	"ripplewright/internal/model"
)

// stall is an invented design of the Saltmarsh Quay stall.
func stall() design.Design {
	d := design.New()
	d.Name = "Quayside plain"
	d.Dense.Lines = []design.Line{{Ingredient: "milk", Grams: 500}, {Ingredient: "sugar", Grams: 100}}
	d.Foam.Lines = []design.Line{{Ingredient: "milk", Grams: 100}, {Ingredient: "sugar", Grams: 100}}
	return d
}

// newSession returns a session over two ingredients, with a clock to turn.
func newSession(t *testing.T) (*Session, *time.Time) {
	one := func(id string, water, sucrose float64) *ingredient.Ingredient {
		in := &ingredient.Ingredient{ID: id, Name: id}
		for c := range in.Cells {
			in.Cells[c] = ingredient.Known(0)
		}
		in.Cells[ingredient.Water] = ingredient.Known(water)
		for _, c := range []ingredient.Column{ingredient.Sucrose, ingredient.TotalSugars, ingredient.Carbohydrate} {
			in.Cells[c] = ingredient.Known(sucrose)
		}
		return in
	}
	m := model.New(ingredient.NewLibrary([]*ingredient.Ingredient{one("milk", 95, 5), one("sugar", 0, 100)}))
	s := New(m, stall())
	at := time.Date(2026, 7, 4, 9, 0, 0, 0, time.UTC)
	s.now = func() time.Time { return at }
	return s, &at
}

func withServing(d design.Design, c float64) design.Design {
	d.Serving.TemperatureC = c
	return d
}

func TestADragIsOneStep(t *testing.T) {
	s, at := newSession(t)
	before := s.Design()
	for c := -13.0; c > -18; c -= 0.5 {
		*at = at.Add(16 * time.Millisecond)
		s.Preview(withServing(s.Design(), c))
	}
	s.Commit(withServing(s.Design(), -18), "serving temperature")
	require.Equal(t, "serving temperature", s.UndoName())
	require.True(t, s.Undo())
	require.True(t, s.Design().Equal(before))
	require.False(t, s.Undo())
	require.True(t, s.Redo())
	require.Equal(t, -18.0, s.Design().Serving.TemperatureC)
}

func TestKeysInARowAreOneStepAndAPauseBeginsAnother(t *testing.T) {
	s, at := newSession(t)
	for range 5 {
		*at = at.Add(100 * time.Millisecond)
		s.Commit(withServing(s.Design(), s.Design().Serving.TemperatureC-0.5), "serving temperature")
	}
	*at = at.Add(2 * time.Second)
	s.Commit(withServing(s.Design(), -20), "serving temperature")
	require.True(t, s.Undo())
	require.Equal(t, -15.5, s.Design().Serving.TemperatureC)
	require.True(t, s.Undo())
	require.Equal(t, -13.0, s.Design().Serving.TemperatureC)
	require.False(t, s.Undo())
}

func TestAnErrorKeepsTheLastGoodResult(t *testing.T) {
	s, _ := newSession(t)
	good, err := s.Result()
	require.NoError(t, err)
	mass := good.Blend.MassG
	s.Preview(s.Design().WithGrams(design.DensePart, 0, -1))
	r, err := s.Result()
	require.ErrorContains(t, err, "dense.lines[0].grams")
	require.Equal(t, mass, r.Blend.MassG)
}

func TestSaveAndOpenGiveTheSameDesign(t *testing.T) {
	s, _ := newSession(t)
	path := filepath.Join(t.TempDir(), "quay.yaml")
	s.Commit(withServing(s.Design(), -15), "serving temperature")
	require.True(t, s.Dirty())
	require.NoError(t, s.Save(path, false))
	require.False(t, s.Dirty())
	want := s.Design()
	s.Start(design.New())
	require.Empty(t, s.Path())
	require.NoError(t, s.Open(path))
	require.True(t, s.Design().Equal(want))
	require.Equal(t, path, s.Path())
}

func TestAFileChangedOnDiskIsNotOverwrittenUnasked(t *testing.T) {
	s, _ := newSession(t)
	path := filepath.Join(t.TempDir(), "quay.yaml")
	require.NoError(t, s.Save(path, false))
	data, err := os.ReadFile(path)
	require.NoError(t, err)
	theirs := append(data, "# by another hand\n"...)
	require.NoError(t, os.WriteFile(path, theirs, 0o644))
	require.True(t, s.ChangedOnDisk())
	s.Commit(withServing(s.Design(), -16), "serving temperature")
	var changed *designfile.ChangedOnDiskError
	require.ErrorAs(t, s.Save("", false), &changed)
	now, err := os.ReadFile(path)
	require.NoError(t, err)
	require.Equal(t, theirs, now)
	require.NoError(t, s.Save("", true))
	require.False(t, s.Dirty())
}

func TestAFileAtFaultLeavesTheOpenDesignAlone(t *testing.T) {
	s, _ := newSession(t)
	before := s.Design()
	path := filepath.Join(t.TempDir(), "bad.yaml")
	require.NoError(t, os.WriteFile(path, []byte("ripplewright: 1\nnmae: x\ndense: {lines: []}\nfoam: {lines: []}\n"), 0o644))
	err := s.Open(path)
	require.ErrorContains(t, err, "bad.yaml:2")
	require.True(t, s.Design().Equal(before))
}
