package written_test

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/check/market"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/food/written"
)

// germanNames are the German texts of the catalogue.
func germanNames(t testing.TB) map[string]string {
	files, err := filepath.Glob("../../show/tongue/catalogue/*.de.json")
	require.NoError(t, err)
	names := map[string]string{}
	for _, file := range files {
		data, err := os.ReadFile(file)
		require.NoError(t, err)
		require.NoError(t, json.Unmarshal(data, &names))
	}
	return names
}

// german returns a reader of German by the names of the catalogue.
func german(t testing.TB) *written.German {
	names := germanNames(t)
	return written.NewGerman(market.Shelf(), written.Eggs{System: "EU", Size: "M"}, func(in *ingredient.Ingredient) string {
		if name := names[in.Kitchen()]; name != "" {
			return name
		}
		return in.Kitchen()
	})
}

// Densities and eggs are those that the English lists are weighed by; EU eggs of size M and L.
func TestGermanListsAreReadOrAskedAbout(t *testing.T) {
	r := german(t)
	for title, list := range lists(t, "german.txt") {
		for _, e := range list {
			l, ok := r.Line(e.text)
			switch {
			case e.id == "-":
				assert.False(t, ok, "%s: %s", title, e.text)
			case !assert.True(t, ok, "%s: %s", title, e.text):
			case strings.HasPrefix(e.id, "?"):
				assert.False(t, l.Taken(), "%s: %q is taken for %+v", title, e.text, l)
				if e.id != "?" && assert.NotNil(t, l.Ingredient, e.text) {
					assert.Equal(t, e.id[1:], l.Ingredient.ID, e.text)
				}
			default:
				if assert.True(t, l.Taken(), "%s: %q is a doubt, %d", title, e.text, l.Doubt) {
					assert.Equal(t, e.id, l.Ingredient.ID, e.text)
					assert.InEpsilon(t, e.grams, l.Grams.Value, apart, e.text)
					assert.Equal(t, e.text, l.Text)
				}
			}
		}
	}
}

// The whole library is understood by its German names.
func TestEveryIngredientIsReadByItsGermanName(t *testing.T) {
	names, r := germanNames(t), german(t)
	for _, in := range market.Library(t).All() {
		name := names[in.Kitchen()]
		if strings.ContainsAny(name, "%(,") || strings.Contains(name, " oder ") {
			continue // a percentage or a remark, which the reader takes apart
		}
		l, ok := r.Line("12,5 g " + name)
		require.True(t, ok, name)
		require.NotNil(t, l.Ingredient, name)
		if l.Taken() {
			assert.Equal(t, in.ID, l.Ingredient.ID, name)
			assert.InDelta(t, 12.5, l.Grams.Value, 1e-9, name)
		} else {
			assert.Contains(t, l.Meanings, in.ID, name)
		}
	}
}

func FuzzGermanLines(f *testing.F) {
	for _, s := range []string{"250 g Vollmilch", "2 Eigelb", "1 ½ EL Zitronensaft (20 g)", "ein halber Liter Milch", "1/0 Tasse", "- 1) [ ] 5 %"} {
		f.Add(s)
	}
	r := german(f)
	f.Fuzz(func(t *testing.T, s string) {
		for _, l := range r.Read(s) {
			if l.Taken() && (l.Ingredient == nil || !l.Grams.Known || l.Basis == 0 || !(l.Grams.Value > 0 && l.Grams.Value <= 1e6)) {
				t.Fatalf("%q is taken for nothing", l.Text)
			}
		}
	})
}
