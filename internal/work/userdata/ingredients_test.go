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

// figPaste is invented: a paste the stall Saltmarsh Quay buys in.
func figPaste(t *testing.T) *ingredient.Ingredient {
	in, err := ingredient.FromPack("fig_paste", "Fig paste", ingredient.Pack{
		PerG: 100, Fat: ingredient.Known(0.5), Carbohydrate: ingredient.Known(62), Protein: ingredient.Known(2)})
	require.NoError(t, err)
	return in
}

func TestOwnIngredientsComeBackAsSaved(t *testing.T) {
	path := filepath.Join(t.TempDir(), "not", "there", "yet", "ingredients.yaml")
	list, err := userdata.LoadIngredients(path)
	require.NoError(t, err)
	assert.Empty(t, list)

	want := []*ingredient.Ingredient{figPaste(t)}
	data, err := userdata.Encode(want)
	require.NoError(t, err)
	require.NoError(t, userdata.Write(path, "ingredients", data))
	got, err := userdata.LoadIngredients(path)
	require.NoError(t, err)
	assert.Equal(t, want, got)
}

func TestFaultyFileNamesLineAndField(t *testing.T) {
	path := filepath.Join(t.TempDir(), "ingredients.yaml")
	require.NoError(t, os.WriteFile(path, []byte("version: 1\ningredients:\n  - id: a\n    name: A\n    fatt: 3\n"), 0o644))
	_, err := userdata.LoadIngredients(path)
	require.ErrorContains(t, err, `line 5: ingredient "a": fatt: is no field of an ingredient`)
	_, err = userdata.Decode([]byte("version: 2\n"))
	require.EqualError(t, err, "line 1: version: the file has version 2, this program knows 1")
	_, err = userdata.Decode([]byte("ingredients:\n- {id: a, name: A}\n- {id: a, name: B}\n"))
	require.EqualError(t, err, `line 3: ingredient "a": id: is given twice`)
}

func FuzzDecode(f *testing.F) {
	f.Add([]byte("version: 1\ningredients:\n- {id: a, name: A, fat: 3}\n"))
	f.Fuzz(func(t *testing.T, data []byte) {
		list, err := userdata.Decode(data)
		if err != nil {
			return
		}
		text, err := userdata.Encode(list)
		require.NoError(t, err)
		again, err := userdata.Decode(text)
		require.NoError(t, err)
		require.Equal(t, len(list), len(again))
	})
}
