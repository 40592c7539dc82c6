package compare

import (
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/work/design"
)

func line(id string, g float64) design.Line { return design.Line{Ingredient: id, Grams: g} }

func quay() design.Design {
	d := design.New()
	d.Dense.Lines = []design.Line{line("milk_whole", 420), line("cream_heavy", 180), line("sugar", 95)}
	return d
}

func TestLinesArePairedByWhatTheyAreOf(t *testing.T) {
	a := quay()
	b := a.WithGrams(design.DensePart, 0, 400).WithLineRemoved(design.DensePart, 1).WithLineAdded(design.FoamPart, line("egg_white", 150))
	d := Between(a, b)
	require.Len(t, d.Lines, 3)
	assert.Equal(t, LineChange{design.DensePart, &a.Dense.Lines[0], &b.Dense.Lines[0]}, d.Lines[0])
	assert.Nil(t, d.Lines[1].After)
	assert.Equal(t, "cream_heavy", d.Lines[1].Ingredient())
	assert.Nil(t, d.Lines[2].Before)
	assert.Equal(t, design.FoamPart, d.Lines[2].Part)
	assert.Empty(t, d.Reordered)

	moved := Between(a, a.WithLineMoved(design.DensePart, 0, 2))
	assert.Empty(t, moved.Lines)
	assert.Equal(t, []design.Part{design.DensePart}, moved.Reordered)

	twice := a.WithLineAdded(design.DensePart, line("sugar", 20))
	more := Between(twice, a)
	require.Len(t, more.Lines, 1)
	assert.Equal(t, 20.0, more.Lines[0].Before.Grams, "the sugar that stays is the one that is the same")
}

// TestNoDifferenceIsEquality: each setting, changed alone, is found alone.
func TestNoDifferenceIsEquality(t *testing.T) {
	for _, f := range design.Fields() {
		a, b := quay(), quay()
		switch x := f.At(&b).(type) {
		case *float64:
			*x++
		case *int:
			*x++
		case *int64:
			*x++
		case *string:
			*x += "x"
		}
		require.False(t, a.Equal(b), f.Path)
		d := Between(a, b)
		require.Len(t, d.Settings, 1, f.Path)
		assert.Equal(t, f.Path, d.Settings[0].Field.Path)
		assert.Empty(t, d.Lines)
	}
	rnd := rand.New(rand.NewSource(1))
	for range 2000 {
		a, b := quay(), quay()
		for range rnd.Intn(4) {
			d := []*design.Design{&a, &b}[rnd.Intn(2)]
			n := len(d.Dense.Lines)
			switch i := rnd.Intn(n + 1); {
			case i == n || n < 2:
				*d = d.WithLineAdded(design.DensePart, line([]string{"sugar", "honey"}[rnd.Intn(2)], float64(rnd.Intn(3))))
			case rnd.Intn(2) == 0:
				*d = d.WithLineMoved(design.DensePart, i, rnd.Intn(n))
			default:
				*d = d.WithLineRemoved(design.DensePart, i)
			}
		}
		require.Equal(t, a.Equal(b), Between(a, b).None(), "%v %v", a.Dense.Lines, b.Dense.Lines)
	}
}

func TestOwnIngredientsAreComparedById(t *testing.T) {
	k := ingredient.Known
	make := func(id string, sugars float64) *ingredient.Ingredient {
		in, err := ingredient.FromPack(id, "Fig paste", ingredient.Pack{PerG: 100, Fat: k(1), Carbohydrate: k(sugars), Sugars: k(sugars), Protein: k(2), Salt: k(0)})
		require.NoError(t, err)
		return in
	}
	a, b := quay(), quay()
	a.Own = []*ingredient.Ingredient{make("fig", 50), make("plum", 30)}
	b.Own = []*ingredient.Ingredient{make("fig", 40), make("sloe", 20)}
	d := Between(a, b).Own
	require.Len(t, d, 3)
	assert.Equal(t, []string{"fig", "plum", "sloe"}, []string{d[0].ID, d[1].ID, d[2].ID})
	assert.Nil(t, d[1].After)
	assert.Nil(t, d[2].Before)
}
