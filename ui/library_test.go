package ui

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2/test"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/check/market"
	"ripplewright/internal/desk/session"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/work/design"
	"ripplewright/internal/work/userdata"
)

// figs is invented: a paste that the stall Saltmarsh Quay buys in.
const figs = "ingredients:\n- {id: fig_paste, name: Fig paste, pack: {fat: 0.5, carbohydrate: 55, sugars: 50, protein: 2}}\n"

// shelfBed is a window over a maker's file of that text.
func shelfBed(t *testing.T, text string) *bed {
	t.Helper()
	t.Setenv("LANGUAGE", "en")
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	path := filepath.Join(t.TempDir(), "ingredients.yaml")
	require.NoError(t, os.WriteFile(path, []byte(text), 0o644))
	b := &bed{t: t}
	shelf := userdata.NewShelf(market.Library(t), path)
	b.Window = New(Setup{App: test.NewTempApp(t), Shelf: shelf, Session: session.New(model.New(shelf.Library()), design.New())})
	t.Cleanup(b.win.Close)
	b.frame()
	return b
}

// solid takes away where a line is broken, which depends on the length of a path.
var solid = strings.NewReplacer("\n", "", " ", "")

func TestAnOwnFileThatANewerProgramWroteIsToldOfAndStays(t *testing.T) {
	b := shelfBed(t, "version: 9\n"+figs)
	b.greet()
	for _, part := range []string{b.Shelf.Path(), "line 1", "version 9", "The file stays as it is"} {
		assert.Contains(t, solid.Replace(b.dialogTexts()), solid.Replace(part))
	}
	assert.FileExists(t, b.Shelf.Path())
	fine := shelfBed(t, figs)
	fine.greet()
	assert.Empty(t, fine.dialogTexts())
}

// Each file is put aside once; what can be kept then is there at the next start.
func TestBrokenFilesOfTheMakersOwnArePutAside(t *testing.T) {
	t.Setenv("LANGUAGE", "en")
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	foods, err := userdata.IngredientsPath()
	require.NoError(t, err)
	prices, err := userdata.PricesPath()
	require.NoError(t, err)
	profiles, err := cold.ProfilesPath()
	require.NoError(t, err)
	for _, path := range []string{foods, prices, profiles} {
		require.NoError(t, userdata.Write(path, "", []byte("version: 1\n\tbroken: [\n")))
	}
	open := func() *bed {
		b := &bed{t: t}
		shelf := userdata.NewShelf(market.Library(t), foods)
		b.Window = New(Setup{App: test.NewTempApp(t), Shelf: shelf, Session: session.New(model.New(shelf.Library()), design.New())})
		t.Cleanup(b.win.Close)
		b.frame()
		b.greet()
		return b
	}
	b := open()
	assert.Len(t, b.Notices, 3)
	for _, part := range []string{"line 2", "kitchens cannot be read", "kept as " + strings.TrimSuffix(profiles, ".yaml") + " broken "} {
		assert.Contains(t, solid.Replace(b.dialogTexts()), solid.Replace(part))
	}
	added, err := ingredient.FromPack("quince_paste", "Quince paste", ingredient.Pack{PerG: 100})
	require.NoError(t, err)
	require.NoError(t, b.Shelf.Put(added, ""))
	require.NoError(t, b.Prices.SetCurrency("€"))
	attic := cold.Default()
	attic.Name = "The attic"
	require.NoError(t, b.kitchens.Keep(attic, ""))

	b = open()
	assert.Empty(t, b.Notices, "it is said once")
	assert.Empty(t, b.dialogTexts())
	assert.Len(t, b.Shelf.Own(), 1)
	assert.Equal(t, "€", b.Prices.Book().Currency)
	assert.True(t, b.kitchens.Own("The attic"))
}

func TestAChangeOfTheShelfReachesTheBenchAtOnce(t *testing.T) {
	b := shelfBed(t, figs)
	b.Commit(b.Design().WithLineAdded(design.DensePart, design.Line{Ingredient: "fig_paste", Grams: 50}), "add")
	b.frame()
	row := func() string { return b.bench.dense.lists[0].rows[0].called }
	assert.Equal(t, "Fig paste", row())
	require.Len(t, b.Design().Own, 1)

	renamed := *b.Shelf.Own()[0]
	renamed.Name = "Fig paste, coarse"
	added, err := ingredient.FromPack("quince_paste", "Quince paste", ingredient.Pack{PerG: 100})
	require.NoError(t, err)
	require.NoError(t, b.Shelf.Put(&renamed, "fig_paste"))
	require.NoError(t, b.Shelf.Put(added, ""))
	b.useLibrary(b.Shelf.Library())
	b.Commit(b.Design().WithOwnReplaced(&renamed), "new figures")
	b.frame()
	assert.Equal(t, "Fig paste, coarse", row())
	_, ok := b.library().Find("quince_paste")
	assert.True(t, ok, "the finder of the bench has it")
}
