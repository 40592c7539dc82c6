package larder_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/assets"
	"ripplewright/internal/check/market"
	"ripplewright/internal/desk/larder"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/matter/mix"
	"ripplewright/internal/show/say"
)

var metric = say.Style{}

func find(t *testing.T, id string) *ingredient.Ingredient {
	t.Helper()
	in, ok := market.Library(t).Find(id)
	require.True(t, ok, id)
	return in
}

func sources(t *testing.T) string {
	t.Helper()
	text, err := assets.Library.ReadFile("library/SOURCES.md")
	require.NoError(t, err)
	return string(text)
}

func row(t *testing.T, in *ingredient.Ingredient, name string) say.TableRow {
	t.Helper()
	rows := larder.FigureRows(metric, in)
	i := slices.IndexFunc(rows, func(f say.TableRow) bool { return strings.TrimSpace(f.Name) == name })
	require.GreaterOrEqual(t, i, 0, name)
	return rows[i]
}

func TestUnknownIsShownAsUnknownWithItsBound(t *testing.T) {
	figure := func(name, unit string, cells ...string) say.TableRow {
		return say.TableRow{Name: name, Unit: unit, Cells: cells}
	}
	assert.Equal(t, figure("Calcium, mg", "", "unknown", "no limit"), row(t, find(t, "glucose_syrup_de42"), "Calcium, mg"))
	assert.Equal(t, figure("    Trans fat", "", "unknown", "43.85"), row(t, find(t, "cashew"), "Trans fat"))
	assert.Equal(t, figure("Water", "  record", "88.13", " "), row(t, find(t, "milk_whole"), "Water"))
	assert.Equal(t, figure("    Trans fat", "  estimate", "0.133", " "), row(t, find(t, "milk_whole"), "Trans fat"))
	for _, in := range market.Library(t).All() {
		unknown := 0
		for _, f := range larder.FigureRows(metric, in) {
			if f.Cells[0] == "unknown" {
				unknown++
			}
		}
		assert.Equal(t, len(in.Unknown()), unknown, "%s: each column has one row", in.ID)
	}
	assert.Len(t, larder.FigureRows(metric, find(t, "cashew")), int(ingredient.NumColumns))
}

func TestEveryGroupAndDatasetHasWords(t *testing.T) {
	text := sources(t)
	rows := map[string]int{}
	for _, in := range market.Library(t).All() {
		rows[in.Source]++
		assert.NotEqual(t, in.Group, larder.GroupName(in.Group), in.ID)
		title, terms := larder.Dataset(text, in.Source)
		assert.NotEmpty(t, title, "%s: SOURCES.md has no row for %s", in.ID, in.Source)
		if in.Source != "definition" && in.Source != "calculated" {
			assert.NotEmpty(t, terms, "%s: SOURCES.md has no terms of %s", in.ID, in.Source)
		}
		assert.NotContains(t, title+terms, "*")
	}
	for name, n := range rows {
		assert.Contains(t, text, fmt.Sprintf("| %s | %d |", name, n))
	}
	assert.Contains(t, text, fmt.Sprintf("composition of %d ingredients", len(market.Library(t).All())))
	title, _ := larder.Dataset(text, ingredient.OwnSource)
	assert.NotEmpty(t, title)
}

func TestASectionIsOfSentences(t *testing.T) {
	for _, in := range market.Library(t).All() {
		for _, s := range larder.Sections(metric, in, sources(t)) {
			require.NotEmpty(t, s.Lines, s.Title)
			for _, l := range s.Lines {
				assert.Equal(t, say.Capital(l), l, "%s: %s", in.ID, s.Title)
				if s.Title != "Source" {
					assert.Regexp(t, `[.?]$`, l, "%s: %s", in.ID, s.Title)
				}
				assert.NotRegexp(t, `(^|[ (])-[0-9]|\.\.$|NaN`, l, "%s: %s", in.ID, s.Title)
			}
		}
	}
}

// figs is a pack that the stall buys in, invented, as typed.
func figs(t *testing.T) *larder.Form {
	t.Helper()
	f := larder.FromPack()
	f.Name = "Crème of figs (mill)"
	for key, v := range map[string]string{"energy_kj": "1050", "fat": "0,5", "saturates": "0.1", "carbohydrate": "55", "sugars": "50", "protein": "2", "salt": "0"} {
		enter(t, f, key, v)
	}
	return f
}

func enter(t *testing.T, f *larder.Form, key, text string) {
	t.Helper()
	for _, e := range slices.Concat(f.Pack, f.Columns, f.Spoons, []*larder.Entry{f.Per}) {
		if e != nil && e.Key == key {
			e.Text = text
			return
		}
	}
	t.Fatalf("no field %q", key)
}

func TestAPackBecomesKnownEstimatedAndUnknown(t *testing.T) {
	f := figs(t)
	in, err := f.Shown()
	require.NoError(t, err)
	assert.Equal(t, []string{"estimate", "derived", "pack"}, []string{say.Basis(in, ingredient.Water), say.Basis(in, ingredient.Energy), say.Basis(in, ingredient.Fat)})
	assert.False(t, in.Cell(ingredient.CalciumMG).Known)
	assert.Contains(t, say.FiguresKnown(metric, in), "1 of them estimated by a named rule")
	var titles []string
	for _, s := range larder.Preview(metric, in) {
		titles = append(titles, s.Title)
	}
	assert.Equal(t, []string{"What the freezing model assumes", "How figures are made"}, titles)
	enter(t, f, "energy_kj", "2100")
	in, err = f.Shown()
	require.NoError(t, err)
	assert.Equal(t, "Look again", larder.Preview(metric, in)[0].Title, "twice the energy that its figures make")

	f.WithFibre = true
	enter(t, f, "density", "1.2")
	f.Polyol, f.Standing = mix.Xylitol, ingredient.Fruit
	f.ID, f.NameUS, f.Parts = "figs", " fig paste ", " figs, sugar "
	i := slices.IndexFunc(larder.Allergens[:], func(a larder.Allergen) bool { return a.Name == "Hazelnut" })
	f.Ticks[i] = true
	in, err = f.Made()
	require.NoError(t, err)
	assert.Equal(t, "bulk", in.DensityKind)
	assert.Equal(t, mix.Xylitol, in.Polyol)
	assert.Equal(t, ingredient.Fruit, in.Standing)
	assert.Equal(t, []string{"fig paste", "figs, sugar"}, []string{in.CommonName, in.Parts})
	assert.Equal(t, []string{"tree_nut:hazelnut"}, in.AllergensUS)
	assert.Equal(t, []string{"nuts:hazelnut"}, in.AllergensEU)
	assert.False(t, in.Pack.AvailableCarbohydrate)
}

func TestAFormThatNobodyTouchedMakesWhatItBeganWith(t *testing.T) {
	for _, in := range market.Library(t).All() {
		own := *in
		own.Own = true
		f := larder.FormOf(&own)
		got, err := f.Made()
		require.NoError(t, err, in.ID)
		assert.True(t, got.Equal(&own), in.ID)
	}
	f := figs(t)
	f.ID = "figs"
	in, err := f.Made()
	require.NoError(t, err)
	in = in.With(ingredient.Fat, ingredient.Known(2)).With(ingredient.Ash, ingredient.Known(1.5))
	got, err := larder.FormOf(in).Made()
	require.NoError(t, err)
	assert.True(t, got.Equal(in), "also what was set by hand beside the pack")
}

func TestACopyOfALibraryRowIsOnesOwn(t *testing.T) {
	s := larder.Shelves{All: market.Library(t)}
	milk := find(t, "milk_whole")
	f := larder.FormLike(milk, s)
	assert.Equal(t, "milk_whole_mine", f.ID)
	enter(t, f, "trans_fat", "0.2")
	enter(t, f, "calcium_mg", "")
	in, err := f.Made()
	require.NoError(t, err)
	assert.Equal(t, "after USDA SR28 NDB 01077", in.SourceID)
	assert.Equal(t, []string{"entered", "record"}, []string{say.Basis(in, ingredient.TransFat), say.Basis(in, ingredient.Fat)})
	assert.False(t, in.Cell(ingredient.CalciumMG).Known)
	assert.Equal(t, milk.Cell(ingredient.Lactose), in.Cell(ingredient.Lactose))
	assert.Equal(t, milk.AllergensUS, in.AllergensUS)
}

func TestTheIDFollowsTheNameUntilSomebodyTypesAnother(t *testing.T) {
	s := larder.Shelves{All: market.Library(t)}
	f := larder.FromPack()
	f.Name = "Crème of figs (mill)"
	assert.True(t, f.FollowName(s))
	assert.Equal(t, "creme_of_figs_mill", f.ID)
	assert.False(t, f.FollowName(s), "nothing new")
	f.Name = "Honey"
	assert.True(t, f.FollowName(s))
	assert.Equal(t, "honey_2", f.ID, "there is honey already")
	f.ID = "mine"
	f.Name = "Figs"
	assert.False(t, f.FollowName(s))
	assert.Equal(t, "mine", f.ID)
	kept := larder.FormOf(find(t, "honey"))
	kept.Name = "Heather honey"
	assert.False(t, kept.FollowName(s), "lines name it by its id")
}

func TestWhatCannotBeIsSaidAtItsField(t *testing.T) {
	for _, c := range []struct{ key, text, want string }{
		{"fat", "much", `Fat: "much" is not a number.`},
		{"fat", "−1", "Fat: −1 g is outside 0 to 100 g."},
		{"fat", "160", "Fat: 160 g in 100 g is more than there can be."},
		{"saturates", "3", "Saturated fat: the fatty acids sum to 3 g in 0.5 g."},
		{"density", "0", "Density: is 0; leave it out where there is none."},
		{"density", "4", "Density: 4 g/mL is outside 0 to 3 g/mL."},
		{"per", "", "Figures are per: 0 g is outside 1 to 1000 g."},
	} {
		f := figs(t)
		enter(t, f, c.key, c.text)
		_, err := f.Shown()
		require.Error(t, err, c.text)
		text, at := f.Fault(err)
		assert.Equal(t, c.want, text)
		require.NotNil(t, at, c.text)
		assert.Equal(t, c.key, at.Key)
	}
	f := figs(t)
	_, err := f.Made()
	text, at := f.Fault(err)
	assert.Equal(t, "Id: is missing.", text)
	assert.Nil(t, at)
	text, _ = f.Fault(&ingredient.FieldError{Line: 5, ID: "a", Field: "fatt", Err: fmt.Errorf("is no field")})
	assert.Equal(t, `Line 5: ingredient "a": fatt: is no field.`, text)
}

func TestShelvesKnowWhatIsWhose(t *testing.T) {
	figs := &ingredient.Ingredient{ID: "figs", Name: "Figs", Group: "own", Own: true}
	other := &ingredient.Ingredient{ID: "figs", Name: "Figs of the design", Group: "own", Own: true}
	lent := &ingredient.Ingredient{ID: "lent", Name: "Lent", Group: "fruit", Own: true, SourceID: "a neighbour"}
	s := larder.Shelves{All: market.Library(t).With([]*ingredient.Ingredient{other, lent}), Kept: []*ingredient.Ingredient{figs}, Design: []*ingredient.Ingredient{other, lent}}
	assert.Equal(t, []larder.CopyState{larder.CopyDiffers, larder.CopyAlone, larder.CopySame}, []larder.CopyState{s.Copy("figs"), s.Copy("lent"), s.Copy("honey")})
	assert.Equal(t, "figs · my own", s.Origin(other))
	assert.Equal(t, "lent · Fruit · in this design only · a neighbour", s.Origin(lent))
	assert.Equal(t, "milk_whole · Dairy · USDA SR28, NDB 01077", s.Origin(find(t, "milk_whole")))

	all := s.In(larder.AllGroups.String())
	assert.Len(t, all, len(s.All.All()))
	assert.True(t, all[0].Own && all[1].Own && !all[2].Own, "one's own come first")
	assert.Len(t, s.In(larder.OwnGroup.String()), 2)
	n := 0
	for _, g := range s.Groups()[2:] {
		for _, in := range s.In(g) {
			if !in.Own {
				assert.Equal(t, g, s.GroupOf(in))
				n++
			}
		}
	}
	assert.Equal(t, len(all)-2, n, "each of the library's is in one group")
	title, second := larder.Titled(find(t, "milk_whole"))
	assert.Equal(t, []string{"Whole milk", "Milk, whole, 3.25 % fat, vitamin D added"}, []string{title, second})
	assert.Less(t, larder.FirstGrams(find(t, "vanilla_extract")), larder.FirstGrams(find(t, "honey")))
}

func TestEveryChoiceStandsForAValue(t *testing.T) {
	for _, c := range larder.StandingChoices() {
		f := figs(t)
		f.ID, f.Standing = "figs", ingredient.Standing(c.Value)
		in, err := f.Made()
		require.NoError(t, err, c.Name)
		assert.Equal(t, c.Value, string(in.Standing))
	}
	for _, c := range larder.PolyolChoices() {
		f := larder.Form{Polyol: larder.PolyolNamed(c.Value)}
		assert.Equal(t, c.Value, f.PolyolName())
	}
	for _, c := range larder.GroupChoices() {
		assert.Equal(t, c.Name, larder.GroupName(c.Value))
	}
}
