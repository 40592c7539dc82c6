package ui

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2/test"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

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

func TestABrokenOwnFileIsToldOfAtTheStart(t *testing.T) {
	b := shelfBed(t, strings.Replace(figs, "fat:", "fatt:", 1))
	b.tellShelf()
	// Where a line is broken depends on the length of the path.
	solid := strings.NewReplacer("\n", "", " ", "")
	for _, part := range []string{b.Shelf.Path(), "line 2", "fatt", "correct it by hand"} {
		assert.Contains(t, solid.Replace(b.dialogTexts()), solid.Replace(part))
	}
	fine := shelfBed(t, figs)
	fine.tellShelf()
	assert.Empty(t, fine.dialogTexts())
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
