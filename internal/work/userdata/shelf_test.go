package userdata_test

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/work/userdata"
)

func builtIn() *ingredient.Library {
	return ingredient.NewLibrary([]*ingredient.Ingredient{{ID: "sugar", Name: "Sugar"}})
}

func named(in *ingredient.Ingredient, id, name string) *ingredient.Ingredient {
	c := *in
	c.ID, c.Name = id, name
	return &c
}

// The text is invented: what a maker of the stall Saltmarsh Quay wrote by hand.
const byHand = `# what the stall buys in
version: 1
ingredients:
  # the good one
  - id: fig_paste
    name: Fig paste # from the mill
    pack: {per: 100 g, fat: 0.5, carbohydrate: 62, protein: 2}
  - {id: rye_crumb, name: Rye crumb, fat: 3} # stale after a week
`

func TestTheShelfKeepsWhatAHandWroteAroundItsChange(t *testing.T) {
	path := filepath.Join(t.TempDir(), "ingredients.yaml")
	require.NoError(t, os.WriteFile(path, []byte(byHand), 0o644))
	s := userdata.NewShelf(builtIn(), path)
	require.NoError(t, s.Err())
	require.Len(t, s.Own(), 2)

	require.NoError(t, s.Put(named(figPaste(t), "date_paste", "Date paste"), ""))
	require.NoError(t, s.Put(named(s.Own()[0], "fig_paste", "Fig paste, smooth"), "fig_paste"))
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	for _, kept := range []string{"# what the stall buys in", "# the good one", "# stale after a week", "Fig paste, smooth", "id: date_paste", "per: 100 g"} {
		assert.Contains(t, string(text), kept)
	}
	require.NoError(t, s.Remove("rye_crumb"))
	again := userdata.NewShelf(builtIn(), path)
	require.NoError(t, again.Err())
	assert.Equal(t, s.Own(), again.Own())
	_, ok := again.Library().Find("rye_crumb")
	assert.False(t, ok)
	_, ok = again.Library().Find("sugar")
	assert.True(t, ok)
}

func TestTheShelfSeesWhatAnotherHandAddedMeanwhile(t *testing.T) {
	path := filepath.Join(t.TempDir(), "ingredients.yaml")
	one, two := userdata.NewShelf(builtIn(), path), userdata.NewShelf(builtIn(), path)
	require.NoError(t, one.Put(figPaste(t), ""))
	require.NoError(t, two.Put(named(figPaste(t), "date_paste", "Date paste"), ""))
	require.Len(t, two.Own(), 2)
	one.Read()
	assert.Equal(t, two.Own(), one.Own())
}

func TestTheShelfRefusesAnIDThatIsTaken(t *testing.T) {
	s := userdata.NewShelf(builtIn(), filepath.Join(t.TempDir(), "ingredients.yaml"))
	require.NoError(t, s.Put(figPaste(t), ""))
	for _, id := range []string{"fig_paste", "sugar"} {
		require.EqualError(t, s.Put(named(figPaste(t), id, "Again"), ""), `ingredient "`+id+`": id: is already another ingredient's`)
	}
	require.Error(t, s.Put(named(figPaste(t), "sugar", "Again"), "fig_paste"))
	require.NoError(t, s.Put(named(figPaste(t), "fig", "Renamed"), "fig_paste"))
	require.Len(t, s.Own(), 1)
	require.Error(t, s.Remove("fig_paste"))
}

func TestAFileBrokenByHandIsNeitherReadNorWritten(t *testing.T) {
	path := filepath.Join(t.TempDir(), "ingredients.yaml")
	broken := []byte("version: 1\ningredients:\n  - id: fig_paste\n    name: Fig paste\n    fatt: 3\n")
	require.NoError(t, os.WriteFile(path, broken, 0o644))
	s := userdata.NewShelf(builtIn(), path)
	require.ErrorContains(t, s.Err(), path+`: line 5: ingredient "fig_paste": fatt: is no field of an ingredient`)
	require.Empty(t, s.Own())
	require.ErrorContains(t, s.Put(named(figPaste(t), "date_paste", "Date paste"), ""), "line 5")
	now, err := os.ReadFile(path)
	require.NoError(t, err)
	require.Equal(t, broken, now)

	require.NoError(t, os.WriteFile(path, []byte(byHand), 0o644))
	s.Read()
	require.NoError(t, s.Err())
	require.Len(t, s.Own(), 2)
}

func TestAMachineWithoutAFolderSaysSo(t *testing.T) {
	s := userdata.NewShelf(builtIn(), "")
	require.NoError(t, s.Err())
	require.ErrorContains(t, s.Put(figPaste(t), ""), "no folder for settings")
}
