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
	"ripplewright/internal/food/onpack"
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

// Shelf is Library for an example, which has no test to fail.
func Shelf() *ingredient.Library {
	lib, err := library()
	if err != nil {
		panic(err)
	}
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

// Hazelnut is Honey with nuts, a note, tartar in the foam, served at −11 °C.
func Hazelnut() design.Design {
	d := Honey().WithLine(design.DensePart, 4, design.Line{Ingredient: "honey", Grams: 40, Note: "burnt to a dark amber"})
	d = d.WithLineAdded(design.DensePart, Line("hazelnut", 60)).WithLineAdded(design.FoamPart, Line("cream_of_tartar", 1))
	d.Name = "Hazelnut and burnt honey"
	d.Serving.TemperatureC = -11
	return d
}

// Demo is the demo that opens where no file is named.
func Demo(t testing.TB) design.Design {
	t.Helper()
	return Demos(t)[path.Base(assets.FirstDemo)]
}

// Demos are the demo designs that the program carries, by the name of their
// file.
func Demos(t testing.TB) map[string]design.Design {
	t.Helper()
	return designs(t, assets.Demos, "demos/*.yaml", func(err error) bool { require.NoError(t, err); return true })
}

// Hard are the designs of testdata/designs that open, by the name of their file.
func Hard(t testing.TB) map[string]design.Design {
	t.Helper()
	return designs(t, testdata.Designs, "designs/*.yaml", func(err error) bool { return err == nil })
}

func designs(t testing.TB, from fs.FS, pattern string, take func(error) bool) map[string]design.Design {
	t.Helper()
	names, err := fs.Glob(from, pattern)
	require.NoError(t, err)
	all := map[string]design.Design{}
	for _, name := range names {
		text, err := fs.ReadFile(from, name)
		require.NoError(t, err)
		if f, err := designfile.Decode(name, text); take(err) {
			all[path.Base(name)] = f.Design
		}
	}
	require.NotEmpty(t, all)
	return all
}

// LabelWords returns the words of labels that the program carries.
func LabelWords(t testing.TB) onpack.Words {
	t.Helper()
	words, err := onpack.OpenWords(assets.LabelWords)
	require.NoError(t, err)
	return words
}
