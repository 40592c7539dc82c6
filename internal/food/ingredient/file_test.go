package ingredient_test

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/assets"
	"ripplewright/internal/check/market"
	"ripplewright/internal/food/ingredient"
)

func TestEmbeddedLibraryIsTheSourceTable(t *testing.T) {
	table, err := os.Open(filepath.Join("..", "..", "..", "assets", "library", "ingredients.csv"))
	require.NoError(t, err)
	defer table.Close()
	want, err := ingredient.ReadTable(table)
	require.NoError(t, err)
	got := market.Library(t).All()
	require.Len(t, got, len(want))
	for i := range want {
		assert.True(t, want[i].Equal(got[i]), "%s: run go run ./cmd/librarygen", want[i].ID)
	}
}

func TestReadNamesLineAndField(t *testing.T) {
	for _, c := range []struct{ name, in, want string }{
		{"word for a figure", "{\"id\":\"a\",\"name\":\"A\"}\n{\"id\":\"b\",\"name\":\"B\",\"fat\":\"much\"}", `line 2: ingredient "b": fat: "much" is not a number`},
		{"more than all of it", `{"id":"a","name":"A","fat":101}`, `line 1: ingredient "a": fat: 101 g is outside 0 to 100 g`},
		{"negative", `{"id":"a","name":"A","ash":-1}`, `line 1: ingredient "a": ash: −1 g is outside 0 to 100 g`},
		{"factor of nought", `{"id":"a","name":"A","nitrogen_factor":0}`, `line 1: ingredient "a": nitrogen_factor: is 0; leave it out where there is none`},
		{"unheard-of field", `{"id":"a","name":"A","phat":1}`, `line 1: ingredient "a": phat: is no field of an ingredient`},
		{"twice the id", "{\"id\":\"a\",\"name\":\"A\"}\n\n{\"id\":\"a\",\"name\":\"B\"}", `line 3: ingredient "a": id: is already that of line 1`},
		{"two objects", `{"id":"a","name":"A"} {}`, `line 1: goes on after the JSON object`},
		{"no id", `{"name":"A"}`, `line 1: id: is missing`},
		{"capitals", `{"id":"Milk","name":"A"}`, `line 1: id: "Milk" may hold only a–z, 0–9 and _`},
		{"no object", `[]`, `line 1: is not a JSON object: json: cannot unmarshal array into Go value of type map[string]interface {}`},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := ingredient.Read(bytes.NewBufferString(c.in))
			require.EqualError(t, err, c.want)
		})
	}
}

func FuzzRead(f *testing.F) {
	f.Add([]byte(`{"id":"a","name":"A","fat":1.5,"allergens_us":"milk; egg","polyol":"xylitol","compound":1}`))
	f.Add([]byte(`{"id":"a","name":"\u2028","notes":"a\nb"}`))
	f.Fuzz(func(t *testing.T, data []byte) {
		lib, err := ingredient.Read(bytes.NewReader(data))
		if err != nil {
			return
		}
		var b bytes.Buffer
		require.NoError(t, ingredient.Write(&b, lib.All()))
		again, err := ingredient.Read(&b)
		require.NoError(t, err)
		require.Len(t, again.All(), len(lib.All()))
		for i, in := range lib.All() {
			require.True(t, in.Equal(again.All()[i]))
		}
	})
}

func BenchmarkRead(b *testing.B) {
	data, err := assets.Library.ReadFile("library/ingredients.jsonl")
	require.NoError(b, err)
	b.ResetTimer()
	for i := 0; i < b.N; i++ {
		if _, err := ingredient.Read(bytes.NewReader(data)); err != nil {
			b.Fatal(err)
		}
	}
}
