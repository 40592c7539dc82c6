package onpack_test

import (
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/food/onpack"
)

// quay is a tub of our invented stall's honey ripple.
func quay() onpack.Food {
	return onpack.Food{
		Name:            "Frozen dairy dessert: custard with hazelnuts rippled with egg-white foam",
		Ingredients:     []onpack.Run{{Text: "Ingredients: whole "}, {Text: "milk", Strong: true}, {Text: ", sugar, "}, {Text: "egg", Strong: true}, {Text: " yolk."}},
		IngredientsText: "Ingredients: whole MILK, sugar, EGG yolk.",
		Contains:        "Contains: milk, egg, tree nuts (hazelnut).",
		Allergens:       []string{"milk", "eggs", "nuts:hazelnut"},
		HoldsML:         460, HoldsG: 285,
	}
}

var pint = onpack.Tub{TopMM: 85, BottomMM: 85, HeightMM: 83.4}

func states(all []onpack.Element) map[onpack.Key]onpack.State {
	m := map[onpack.Key]onpack.State{}
	for _, e := range all {
		m[e.Key] = e.State
	}
	return m
}

// What nobody told is asked for where the law wants it, and nowhere else: the
// tables in rules.go, read the other way round by hand.
func TestEachPlaceAndSaleAsksForItsElements(t *testing.T) {
	const all = "name net_quantity ingredients allergens nutrition maker date storage"
	for _, c := range []struct {
		place      onpack.Place
		sale       onpack.Sale
		due, given string // due: filled or to add; of these, what must be added
	}{
		{onpack.US, onpack.Shop, "name net_quantity ingredients allergens nutrition maker storage", "maker"},
		{onpack.US, onpack.Stall, "name net_quantity ingredients allergens nutrition maker storage", "maker"},
		{onpack.US, onpack.Scooped, "name allergens", ""},
		{onpack.EU, onpack.Shop, all, "maker date"},
		{onpack.DE, onpack.Shop, all, "name ingredients maker date"},
		{onpack.IE, onpack.Shop, all, "maker date"},
		{onpack.IT, onpack.Shop, all, "name ingredients maker date"},
		{onpack.UK, onpack.Shop, all, "maker date"},
		{onpack.EU, onpack.Stall, "name allergens", ""},
		{onpack.DE, onpack.Stall, "name net_quantity ingredients allergens maker date storage", "name ingredients maker date"},
		{onpack.IE, onpack.Stall, "name allergens", ""},
		{onpack.UK, onpack.Stall, "name ingredients allergens", ""},
		{onpack.DE, onpack.Scooped, "name allergens", "name"},
		{onpack.UK, onpack.Scooped, "name allergens", ""},
	} {
		p := onpack.Pack{Place: c.place, Sale: c.sale, Tub: pint}
		got := onpack.Elements(quay(), p, words(t))
		require.Len(t, got, len(onpack.Keys()))
		var due, add []string
		for _, e := range got {
			assert.NotEmpty(t, e.Text, "%s %s: %s says nothing", c.place, c.sale, e.Key)
			assert.NotEmpty(t, e.Section, "%s %s: %s", c.place, c.sale, e.Key)
			assert.NotEmpty(t, e.Class, "%s %s: %s", c.place, c.sale, e.Key)
			if e.State != onpack.NotNeeded {
				due = append(due, string(e.Key))
			}
			if e.State == onpack.Add {
				add = append(add, string(e.Key))
			}
		}
		assert.Equal(t, c.due, strings.Join(due, " "), "%s %s", c.place, c.sale)
		assert.Equal(t, c.given, strings.Join(add, " "), "%s %s: to add", c.place, c.sale)
	}
}

func TestWhatTheMakerSaysFillsTheLabel(t *testing.T) {
	p := onpack.Pack{Place: onpack.DE, Sale: onpack.Shop, Tub: pint, Languages: []string{"de", "en"}, Maker: "Saltmarsh Quay\n1 Pier Road",
		Made: time.Date(2026, 7, 14, 0, 0, 0, 0, time.UTC), Durability: onpack.Durability{Months: 6},
		Names: map[string]string{"de": "Gefrorene Süßspeise mit Haselnüssen"},
		Lists: map[string]string{"de": "Vollmilch, Zucker, Eigelb, Haselnüsse"}}
	got := onpack.Elements(quay(), p, words(t))
	assert.Empty(t, onpack.Missing(got))
	text := map[onpack.Key]string{}
	for _, e := range got {
		text[e.Key] = e.Text
	}
	assert.Equal(t, "460 ml", text[onpack.Quantity])
	assert.Equal(t, "Mindestens haltbar bis 14.01.2027 / Best before 14.01.2027", text[onpack.Date])
	assert.Equal(t, "Bei −18 °C lagern / Store at −18 °C", text[onpack.Storage])
	assert.Equal(t, "Milch, Eier, Haselnüsse / milk, eggs, hazelnuts", text[onpack.Allergens])
	assert.Equal(t, onpack.NotNeeded, states(got)[onpack.Lot], "the full date stands for the lot")
	for _, e := range got {
		if e.Key != onpack.Ingredients {
			continue
		}
		var strong []string
		for _, r := range e.Parts[0].Runs {
			if r.Strong {
				strong = append(strong, r.Text)
			}
		}
		assert.Equal(t, []string{"Vollmilch", "Eigelb", "Haselnüsse"}, strong)
	}

	p.Form = onpack.ByMonth
	got = onpack.Elements(quay(), p, words(t))
	assert.Equal(t, onpack.Filled, states(got)[onpack.Lot], "a month does not save the lot")
	assert.Contains(t, got[6].Text, "Mindestens haltbar bis Ende 12.2026")
	assert.Equal(t, "L26195", got[8].Text)
	p.Form, p.Lot = onpack.ByDay, "pier 9"
	got = onpack.Elements(quay(), p, words(t))
	assert.Equal(t, "pier 9", got[8].Text, "a lot that the maker wants stands there")
	assert.Equal(t, onpack.Filled, got[8].State)
}

// A translated list that leaves an allergen out is not taken.
func TestATranslatedListNamesEveryAllergen(t *testing.T) {
	p := onpack.Pack{Place: onpack.DE, Sale: onpack.Shop, Tub: pint, Names: map[string]string{"de": "Eis"},
		Lists: map[string]string{"de": "Vollmilch, Zucker, Eigelb"}}
	e := onpack.Elements(quay(), p, words(t))[3]
	assert.Equal(t, onpack.Add, e.State)
	assert.Contains(t, e.Text, "Haselnüsse")
	assert.NotContains(t, e.Text, "Milch")
	assert.NotContains(t, e.Text, "Eier")
	w := words(t)
	assert.False(t, w.NamesAllergen("de", "eggs", "Reis, Eis, Zucker"), "neither rice nor ice is egg")
	for _, lang := range w.Languages() {
		for _, a := range []string{"milk", "eggs", "nuts:hazelnut", "soybeans", "peanuts"} {
			term := map[string]string{"nuts:hazelnut": "hazelnuts"}[a]
			if term == "" {
				term = a
			}
			word, ok := w.In(lang, term)
			if ok {
				assert.True(t, w.NamesAllergen(lang, a, "x, "+word.Text+", y"), "%s: %s", lang, a)
				assert.False(t, w.NamesAllergen(lang, a, "x, y"), "%s: %s", lang, a)
			}
		}
	}
}

func TestSmallTubsMaySayLess(t *testing.T) {
	p := onpack.Pack{Place: onpack.UK, Sale: onpack.Shop, Tub: onpack.Tub{TopMM: 30, BottomMM: 28, HeightMM: 20}}
	got := states(onpack.Elements(quay(), p, words(t)))
	assert.Equal(t, onpack.NotNeeded, got[onpack.Nutrition], "under 25 cm²")
	assert.NotEqual(t, onpack.NotNeeded, got[onpack.Ingredients])
	p.Tub = onpack.Tub{TopMM: 22, BottomMM: 20, HeightMM: 14}
	got = states(onpack.Elements(quay(), p, words(t)))
	for _, k := range []onpack.Key{onpack.Ingredients, onpack.Maker, onpack.Storage} {
		assert.Equal(t, onpack.NotNeeded, got[k], "%s, under 10 cm²", k)
	}
	for _, k := range []onpack.Key{onpack.Name, onpack.Quantity, onpack.Allergens, onpack.Date} {
		assert.NotEqual(t, onpack.NotNeeded, got[k], "%s, under 10 cm²", k)
	}
	f := quay()
	for ml, want := range map[float64]onpack.State{200: onpack.Filled, 201: onpack.Filled} {
		f.HoldsML = ml
		e := onpack.Elements(f, onpack.Pack{Place: onpack.DE, Sale: onpack.Shop, Tub: pint}, words(t))[1]
		assert.Equal(t, want, e.State, "a quantity that may go stands there all the same")
	}
}

func TestAllergensThatNobodyStatedMustBeAdded(t *testing.T) {
	f := quay()
	f.Unstated = []string{"buckthorn purée"}
	for _, place := range onpack.Places() {
		for _, sale := range onpack.Sales() {
			e := onpack.Elements(f, onpack.Pack{Place: place, Sale: sale, Tub: pint}, words(t))[3]
			assert.Equal(t, onpack.Add, e.State, "%s %s", place, sale)
			assert.Contains(t, e.Text, "buckthorn purée")
		}
	}
}

// The languages that the words were read for.
func TestTheLanguages(t *testing.T) {
	w := words(t)
	assert.Subset(t, w.Languages(), []string{"en", "de", "fr", "it", "es", "nl", "pl", "pt", "sv", "cs", "sk", "hu", "et", "lt", "ro"})
	assert.NotContains(t, w.Languages(), "ga")
	assert.NotContains(t, w.Languages(), "mt")
	for _, bad := range []string{"", "xx", "ga", "en,en", "en,de,fr,it"} {
		_, err := w.ParseLanguages(bad)
		assert.Error(t, err, bad)
	}
	got, err := w.ParseLanguages("EN, de")
	require.NoError(t, err)
	assert.Equal(t, []string{"en", "de"}, got)
}

// Who sells little may leave the panel out, and nothing else.
func TestASmallSellerMayLeaveThePanelOut(t *testing.T) {
	for _, place := range onpack.Places() {
		p := onpack.Pack{Place: place, Sale: onpack.Shop, Tub: pint}
		with := states(onpack.Elements(quay(), p, words(t)))
		p.Exempt = true
		without := states(onpack.Elements(quay(), p, words(t)))
		assert.Equal(t, onpack.NotNeeded, without[onpack.Nutrition], place)
		with[onpack.Nutrition] = onpack.NotNeeded
		assert.Equal(t, with, without, place)
	}
}
