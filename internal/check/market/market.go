// Package market is Saltmarsh Quay, an invented stall in a seaside town, whose
// shelf and designs are those of all tests.
package market

import (
	"io/fs"
	"path"
	"sync"
	"testing"

	"github.com/stretchr/testify/require"

	"ripplewright/assets"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/work/design"
	"ripplewright/internal/work/designfile"
	"ripplewright/testdata"
)

var library = sync.OnceValues(func() (*ingredient.Library, error) { return ingredient.Open(assets.Library) })

// Library is the program's own, read once. A library does not change.
func Library(t testing.TB) *ingredient.Library {
	t.Helper()
	lib, err := library()
	require.NoError(t, err)
	return lib
}

// Line is a line of a design: an ingredient and its grams.
func Line(id string, grams float64) design.Line { return design.Line{Ingredient: id, Grams: grams} }

// Plain is a custard of milk, cream, yolk and sugar with a foam of whites and
// cooked sugar, scaled to its tubs.
func Plain() design.Design {
	d := design.New()
	d.Name = "Quay custard"
	d.Dense.Lines = []design.Line{Line("milk_whole", 420), Line("cream_heavy", 180), Line("egg_yolk", 90), Line("sugar", 95)}
	d.Foam.Lines = []design.Line{Line("egg_white", 165)}
	d.Foam.Syrup.Lines = []design.Line{Line("sugar", 180), Line("water", 60)}
	return d
}

// Honey is Plain with honey in the custard.
func Honey() design.Design {
	d := Plain()
	d.Name = "Burnt honey"
	return d.WithLineAdded(design.DensePart, Line("honey", 40))
}

// Demos are the demo designs that the program carries, by the name of their
// file.
func Demos(t testing.TB) map[string]*designfile.File {
	t.Helper()
	return files(t, assets.Demos, "demos/*.yaml", true)
}

// Hard are the designs of testdata/designs that are meant to open, by the name
// of their file.
func Hard(t testing.TB) map[string]*designfile.File {
	t.Helper()
	return files(t, testdata.Designs, "designs/*.yaml", false)
}

func files(t testing.TB, from fs.FS, pattern string, must bool) map[string]*designfile.File {
	t.Helper()
	names, err := fs.Glob(from, pattern)
	require.NoError(t, err)
	all := map[string]*designfile.File{}
	for _, name := range names {
		text, err := fs.ReadFile(from, name)
		require.NoError(t, err)
		f, err := designfile.Decode(name, text)
		if must {
			require.NoError(t, err)
		}
		if err == nil {
			all[path.Base(name)] = f
		}
	}
	require.NotEmpty(t, all)
	return all
}
