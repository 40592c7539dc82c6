package userdata

import (
	"testing"

	"github.com/stretchr/testify/require"

	"ripplewright/internal/food/ingredient"
)

func FuzzEdit(f *testing.F) {
	f.Add([]byte("version: 1\ningredients:\n- {id: a, name: A, fat: 3} # why\n- {id: b, name: B}\n"))
	f.Add([]byte("# nothing yet\n"))
	f.Add([]byte("ingredients: []\n"))
	f.Add([]byte("ingredients:\n- &x {id: a, name: A, notes: &n words}\n- {id: b, name: *n}\n"))
	f.Fuzz(func(t *testing.T, data []byte) {
		before, err := Decode(data)
		if err != nil {
			return
		}
		in := &ingredient.Ingredient{ID: "quay_0", Name: "Added", Group: "own", Source: "own", Own: true}
		text, list, err := edit(data, in.ID, in)
		require.NoError(t, err)
		again, err := Decode(text)
		require.NoError(t, err)
		require.Equal(t, list, again)

		text, list, err = edit(text, in.ID, nil)
		require.NoError(t, err)
		again, err = Decode(text)
		require.NoError(t, err)
		require.Equal(t, list, again)
		rest := before[:0:0]
		for _, o := range before {
			if o.ID != in.ID {
				rest = append(rest, o)
			}
		}
		require.Len(t, again, len(rest))
		for i, o := range rest {
			require.True(t, o.Equal(again[i]), "%s is as it was", o.ID)
		}
	})
}
